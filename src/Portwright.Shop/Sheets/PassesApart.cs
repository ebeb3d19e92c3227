using Portwright.Physics.Uncertainty;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Words;

namespace Portwright.Shop.Sheets;

/// <summary>What a port flowed with the valve closing less what it flowed with the valve opening, in one set-up at one test pressure: lash in the lift screw, or a stream that stays where it was.</summary>
/// <param name="Both">The lifts read both ways (m, rising), opening before closing, m3/s restated.</param>
/// <param name="Curves">Closing less opening. Bench, day and set-up cancel; each way has set its lifts and scattered by itself.</param>
public sealed record PassesApart(IReadOnlyList<LiftPair> Both, CurveDifference Curves)
{
    /// <summary>Null where no lift was read both ways.</summary>
    public static PassesApart? Of(RunWalk walk, ReducedSweep sweep)
    {
        ArgumentNullException.ThrowIfNull(walk);
        ArgumentNullException.ThrowIfNull(sweep);
        var reduced = sweep.Curve.Points.SelectMany(p => p.Readings).ToDictionary(r => r.Reading.Id);
        var groups = LiftGroups.Of(
            walk.Steps.Where(s => s.Step.TestPressure is null).SelectMany(s => s.Readings.Where(r => reduced.ContainsKey(r.Id)).Select(r => (Way: walk.Run.WayOf(s.Step), Reduced: reduced[r.Id]))),
            r => r.Reduced.Lift);
        var leak = sweep.LeakArea?.Value ?? 0;
        var doubt = sweep.Bench.Fact.Doubt;
        var scatter = PooledScatter.WithCard(
            groups.SelectMany(g => g.Items.GroupBy(r => r.Way).Select(w => w.Select(r => r.Reduced.EffectiveArea.Value + leak).ToArray())), doubt.RepeatScatter, doubt.RepeatDegrees);
        var slopes = LiftGroups.Slopes([.. groups.Select(g => (g.Lift, g.Items.Average(r => r.Reduced.EffectiveArea.Value)))]);
        var both = groups
            .Select((g, i) => (g.Lift, Slope: slopes[i], Opening: Of(g.Items, PassWay.Opening), Closing: Of(g.Items, PassWay.Closing)))
            .Where(g => g is { Opening.Count: > 0, Closing.Count: > 0, Lift: > 0 })
            .Select(g => new LiftPair(g.Lift, Flow(g.Opening, g.Lift, g.Slope, "opening"), Flow(g.Closing, g.Lift, g.Slope, "closing")))
            .ToList();
        return both.Count == 0 ? null : new(both, CurveComparison.Compare(both));

        static List<ReducedReading> Of(List<(PassWay Way, ReducedReading Reduced)> items, PassWay way) => [.. items.Where(r => r.Way == way).Select(r => r.Reduced)];

        Estimate Flow(List<ReducedReading> readings, double lift, double slope, string way)
        {
            var mean = Estimate.Mean([.. readings.Select(r => r.EffectiveArea)]);
            var count = readings.Count;
            var area = mean
                .With(new Contribution($"{Sources.Repeat(walk.Sweep.Id, lift)} {way}", (mean.Value + leak) * scatter.StandardDeviation / Math.Sqrt(count), scatter.DegreesOfFreedom, ContributionKind.Repeat, Sources.RepeatPool(walk.Sweep.Id), count))
                .With(new Contribution($"{Sources.LiftSetting(walk.Sweep.Id, lift)} {way}", slope * doubt.Lift, double.PositiveInfinity, ContributionKind.Geometry));
            var curve = sweep.Curve;
            return LiftPoint.Of(lift, readings, area, curve.Direction, curve.RestatedAt, curve.Air).Flow;
        }
    }

    /// <summary>Where they part by more than their doubt, the lift that shows it most; null where they agree.</summary>
    public LiftDifference? Most => Curves.Lifts.Where(l => l.Difference.Verdict == Verdict.Real).MaxBy(l => Math.Abs(l.Difference.Of.Value) / l.Difference.Of.StandardUncertainty);

    /// <summary>In one sentence.</summary>
    public Sentence Words => Most is { } most
        ? $"At {Quantity.Lift(most.Lift)} closing flows {Less(most.Difference.Of)} than opening{Elsewhere}: {Look}"
        : Curves.WholeCurve.Verdict == Verdict.Real
            ? (Sentence)$"Over all lifts closing flows {Less(Curves.WholeCurve.Of)} than opening: {Look}"
            : $"Opening and closing agree within their doubt.";

    private const string Look = "look for lash in the lift screw. If it is tight, the stream stays where it was.";

    private static Sentence Less(Estimate difference) => $"{Quantity.Flow(difference.Scale(Math.Sign(difference.Value)))} {(difference.Value < 0 ? "less" : "more")}";

    private string Elsewhere => Curves.Lifts.Count(l => l.Difference.Verdict == Verdict.Real) - 1 is > 0 and var more ? FormattableString.Invariant($", and {more} other {(more == 1 ? "lift parts" : "lifts part")} too") : "";
}
