using System.Collections.Immutable;
using Portwright.Physics.Statistics;

namespace Portwright.Physics.Uncertainty;

/// <summary>
/// Compares two sweeps over the same lifts: at each lift, over bands, and as a whole, with the chance of a false alarm
/// in each of the three held at the level of one comparison (Holm).
/// </summary>
/// <remarks>
/// A mean over a range of lift is the mean of the straight lines between the tested lifts, so a closely tested stretch does
/// not count for more. It is one linear combination of all the readings, its shared causes carried along: a set-up
/// moves the whole curve, and does not average out over the lifts.
/// </remarks>
public static class CurveComparison
{
    /// <param name="points">Lifts rising, each tested before and after; at least 1.</param>
    /// <param name="bands">Low, mid and high third of the tested range if not given. Bands without a tested stretch are left out.</param>
    /// <param name="level">Confidence level, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">No points, lifts not rising, or a band without width.</exception>
    public static CurveDifference Compare(IReadOnlyList<LiftPair> points, IReadOnlyList<LiftBand>? bands = null, double level = 0.95)
    {
        if (points.Count == 0) throw new ArgumentException("A comparison needs at least 1 lift.", nameof(points));
        for (var i = 1; i < points.Count; i++)
        {
            if (!(points[i].Lift > points[i - 1].Lift))
                throw new ArgumentException($"Lifts must rise: {points[i].Lift} follows {points[i - 1].Lift}.", nameof(points));
        }
        var (first, last) = (points[0].Lift, points[^1].Lift);
        bands ??= first < last ? LiftBand.Thirds(first, last) : [];
        if (bands.FirstOrDefault(b => !(b.To > b.From)) is { } empty)
            throw new ArgumentException($"Band '{empty.Name}' must end above its start.", nameof(bands));

        var lifts = Held([.. points.Select(p => Comparison.Compare(p.Before, p.After, level))]);
        var simultaneous = 1 - (1 - level) / points.Count;
        var tested = bands.Where(b => b.From < last && b.To > first).ToArray();
        var means = Held([.. tested.Select(b => MeanOver(points, Math.Max(b.From, first), Math.Min(b.To, last), level))]);
        return new(
            [.. points.Zip(lifts, (p, d) => new LiftDifference(p.Lift, d, d.NoiseHalfWidth, d.Of.Expanded(simultaneous)))],
            MeanOver(points, first, last, level),
            [.. tested.Zip(means, (b, d) => new BandDifference(b, Math.Max(b.From, first), Math.Min(b.To, last), d))]);
    }

    /// <summary>Weights of the tested lifts in the mean of the straight lines between them over a stretch; they add to 1.</summary>
    internal static double[] MeanWeights(ReadOnlySpan<double> x, double from, double to)
    {
        var weights = new double[x.Length];
        if (x.Length == 1)
        {
            weights[0] = 1;
            return weights;
        }
        for (var i = 0; i + 1 < x.Length; i++)
        {
            var (a, b) = (Math.Max(from, x[i]), Math.Min(to, x[i + 1]));
            if (b <= a) continue;
            var share = (b - a) / (to - from);
            var along = ((a + b) / 2 - x[i]) / (x[i + 1] - x[i]);
            weights[i] += share * (1 - along);
            weights[i + 1] += share * along;
        }
        return weights;
    }

    private static Difference MeanOver(IReadOnlyList<LiftPair> points, double from, double to, double level)
    {
        var weights = MeanWeights([.. points.Select(p => p.Lift)], from, to);
        var before = points.Select((p, i) => (weights[i], p.Before)).Where(t => t.Item1 != 0).ToArray();
        var after = points.Select((p, i) => (weights[i], p.After)).Where(t => t.Item1 != 0).ToArray();
        return Comparison.Compare(Estimate.Combine(before), Estimate.Combine(after), level);
    }

    /// <summary>One family of comparisons. Those without known scatter are no comparisons and do not count.</summary>
    private static ImmutableArray<Difference> Held(Difference[] family)
    {
        var judged = family.Where(Comparison.IsJudged).ToArray();
        var adjusted = HolmAdjustment.Adjust([.. judged.Select(d => d.PValue)]);
        var next = 0;
        return [.. family.Select(d => Comparison.IsJudged(d) ? Comparison.Adjusted(d, adjusted[next++]) : d)];
    }
}
