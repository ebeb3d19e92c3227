using Portwright.Physics.Statistics;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;

namespace Portwright.Shop.Bench;

/// <summary>
/// How benches move: a sound one shifts from day to day by its card's drift, one that moved (a plug out, fluid off zero, a seal that went) by
/// anything up to some percent.
/// </summary>
internal static class BenchShift
{
    /// <summary>One check in so many finds a bench that moved: our own judgement, no source.</summary>
    public const double ChecksToAMove = 50;

    /// <summary>Standard deviation of the shift of a bench that moved, as a share of the flow: our own judgement, no source.</summary>
    public const double MovedBy = 0.02;

    /// <summary>So many times what a sound bench's readings differ by, and more, matter: less than that every result carries in its doubt already.</summary>
    public const double MattersBeyond = 2;

    /// <summary>No bench is known better than to a millionth.</summary>
    private const double Floor = 1e-6;

    /// <summary>The least shift worth speaking of, as a share of the flow.</summary>
    /// <param name="days">Each brings its own drift: 1 for a shift within a day, which a day's drift may hide; 2 for one between days.</param>
    public static double Matters(BenchDoubt doubt, int days) => MattersBeyond * Math.Sqrt(days * doubt.Drift * doubt.Drift + doubt.RepeatScatter * doubt.RepeatScatter);

    /// <summary>The mean weighted by each one's own doubt.</summary>
    public static Estimate Weighted(IReadOnlyList<Estimate> estimates)
    {
        var weights = estimates.Select(e => 1 / Math.Max(e.Variance, Floor * Floor)).ToArray();
        var sum = weights.Sum();
        return Estimate.Combine([.. estimates.Select((e, i) => (weights[i] / sum, e))]);
    }

    /// <summary>Probability that a shift of this mean and spread lies beyond the limit on either side (normal).</summary>
    public static double Beyond(double mean, double spread, double limit) =>
        Student.Cdf((mean - limit) / spread, double.PositiveInfinity) + Student.Cdf((-mean - limit) / spread, double.PositiveInfinity);
}
