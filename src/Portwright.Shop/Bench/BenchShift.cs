using Portwright.Physics.Statistics;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;

namespace Portwright.Shop.Bench;

/// <summary>
/// How far a bench is off, as a likelihood: a sound bench shifts from day to day by its card's drift, one that moved (the wrong plate's
/// calibration, a plug out, fluid off zero) by anything up to some percent. Which of the two it was is weighed by how often benches move.
/// </summary>
internal static class BenchShift
{
    /// <summary>One check in so many finds a bench that moved: our own judgement, no source.</summary>
    public const double ChecksToAMove = 50;

    /// <summary>Standard deviation of the shift of a bench that moved, as a share of the flow: our own judgement, no source.</summary>
    public const double MovedBy = 0.02;

    /// <summary>So many times drift and repeat scatter of the bench card together, and more, matter: less than that every result carries in its doubt already.</summary>
    public const double MattersBeyond = 2;

    /// <summary>No bench is known better than to a millionth: keeps the likelihood of an exact one finite.</summary>
    private const double Floor = 1e-6;

    /// <summary>The least shift worth speaking of, as a share of the flow.</summary>
    public static double Matters(BenchDoubt doubt) => MattersBeyond * Math.Sqrt(doubt.Drift * doubt.Drift + doubt.RepeatScatter * doubt.RepeatScatter);

    /// <summary>
    /// One shift from several plates of one check, weighted by their own doubts; what they share stays shared in its doubt. The day's drift
    /// is taken out: it is what is asked for.
    /// </summary>
    /// <param name="ratios">Measured over certified effective area, at least one.</param>
    /// <param name="day">Name of the cause that is the day's drift.</param>
    public static Estimate Of(IReadOnlyList<Estimate> ratios, string day)
    {
        var without = ratios.Select(r => new Estimate(r.Value - 1, [.. r.Contributions.Where(c => c.Source != day)])).ToArray();
        return Weighted(without);
    }

    /// <summary>The mean weighted by each one's own doubt.</summary>
    public static Estimate Weighted(IReadOnlyList<Estimate> estimates)
    {
        var weights = estimates.Select(e => 1 / Math.Max(e.Variance, Floor * Floor)).ToArray();
        var sum = weights.Sum();
        return Estimate.Combine([.. estimates.Select((e, i) => (weights[i] / sum, e))]);
    }

    /// <summary>Probability that the bench is off by more than what matters.</summary>
    /// <param name="shift">As a share, with the doubt of what it was read from.</param>
    /// <param name="drift">Standard deviation of a sound bench's shift, as a share.</param>
    /// <param name="matters">As a share.</param>
    public static double Chance(Estimate shift, double drift, double matters)
    {
        var (sound, moved) = (Math.Max(shift.Variance + drift * drift, Floor * Floor), shift.Variance + drift * drift + MovedBy * MovedBy);
        var off = AsNormal(shift, sound);
        var log = Math.Log(ChecksToAMove - 1) + LogDensity(off, sound) - LogDensity(off, moved);
        var isMoved = 1 / (1 + Math.Exp(Math.Min(log, 700)));
        return isMoved * Beyond(off, shift.Variance, drift * drift + MovedBy * MovedBy, matters)
            + (1 - isMoved) * Beyond(off, shift.Variance, drift * drift, matters);
    }

    /// <summary>A shift whose doubt is itself badly known is as surprising as a smaller one whose doubt is known: the normal deviate of the same two-sided probability.</summary>
    private static double AsNormal(Estimate shift, double variance)
    {
        var u = Math.Sqrt(variance);
        var degrees = double.IsInfinity(shift.EffectiveDegreesOfFreedom) || shift.Variance == 0
            ? double.PositiveInfinity
            : shift.EffectiveDegreesOfFreedom * Math.Pow(variance / shift.Variance, 2);
        var p = Student.TwoSidedP(shift.Value / u, degrees);
        return p is <= 1e-15 or >= 1 ? shift.Value : Math.CopySign(u * Student.TwoSidedFactor(1 - p, double.PositiveInfinity), shift.Value);
    }

    private static double LogDensity(double value, double variance) => -0.5 * (value * value / variance + Math.Log(variance));

    /// <summary>Probability that the true shift lies beyond the limit on either side, from what was read and how such shifts scatter (both normal).</summary>
    private static double Beyond(double read, double readVariance, double shiftVariance, double limit)
    {
        var total = readVariance + shiftVariance;
        if (total <= 0)
        {
            return 0;
        }

        var mean = read * shiftVariance / total;
        var sd = Math.Max(Math.Sqrt(readVariance * shiftVariance / total), Floor);
        return Student.Cdf((mean - limit) / sd, double.PositiveInfinity) + Student.Cdf((-mean - limit) / sd, double.PositiveInfinity);
    }
}
