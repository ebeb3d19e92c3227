using Portwright.Physics.Uncertainty;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;

namespace Portwright.Shop.Reduction;

/// <summary>The readings of a sweep gathered by lift, with the doubts that belong to the sweep and not to one reading.</summary>
internal static class SweepPoints
{
    /// <param name="leakArea">m2: the meter sees port and leak together, and its scatter is a share of both.</param>
    public static List<LiftPoint> Of(
        IReadOnlyList<ReducedReading> reduced, double leakArea, Kept<Sweep> sweep, Kept<BenchCard> bench, DateOnly day)
    {
        var doubt = bench.Fact.Doubt;
        var groups = LiftGroups.Of(reduced, r => r.Lift);
        var scatter = PooledScatter.WithCard(
            groups.Select(g => g.Items.Select(r => r.EffectiveArea.Value + leakArea).ToArray()), doubt.RepeatScatter, doubt.RepeatDegrees);
        var slopes = LiftGroups.Slopes([.. groups.Select(g => (g.Lift, g.Items.Average(r => r.EffectiveArea.Value)))]);
        var points = new List<LiftPoint>(groups.Count);
        for (var i = 0; i < groups.Count; i++)
        {
            var (lift, items) = groups[i];
            var mean = Estimate.Mean([.. items.Select(r => r.EffectiveArea)]);
            var metered = mean.Value + leakArea;
            var area = mean
                .With(new Contribution(Sources.Repeat(sweep.Id, lift), metered * scatter.StandardDeviation / Math.Sqrt(items.Count), scatter.DegreesOfFreedom, ContributionKind.Repeat, Sources.RepeatPool(sweep.Id), items.Count))
                .With(new Contribution(Sources.SetUp(sweep), mean.Value * doubt.SetUpScatter, doubt.SetUpDegrees ?? double.PositiveInfinity, ContributionKind.SetUp, Sources.SetUpPool(bench.Id)))
                .With(new Contribution(Sources.Day(bench.Id, day), mean.Value * doubt.Drift, double.PositiveInfinity, ContributionKind.Drift))
                .With(new Contribution(Sources.LiftSetting(sweep.Id, lift), slopes[i] * doubt.Lift, double.PositiveInfinity, ContributionKind.Geometry));
            points.Add(LiftPoint.Of(lift, items, area, sweep.Fact.Direction, bench.Fact.RestatedAt, bench.Fact.StandardAir.Air()));
        }

        return points;
    }
}
