using Portwright.Shop.Judgement;
using Portwright.Shop.Reduction;

namespace Portwright.Shop.Families;

/// <summary>One lift of a sweep against the port's other sweeps of the same cut: the port is the same, so that a slip stands out by more than a set-up bends a curve.</summary>
/// <param name="Off">Measured less the middle of the other sweeps, what all lifts share taken off, logarithm.</param>
/// <param name="Scatter">Standard deviation of a sound one.</param>
/// <param name="Others">Sweeps compared with.</param>
public sealed record AgainstOwnSweeps(double Off, double Scatter, int Others)
{
    /// <summary>Two set-ups of one port bend the curve against each other by so much at one lift, standard deviation of the logarithm: lean of the set-up, nought of the dial. Judgement.</summary>
    public const double Bend = 0.004;

    /// <summary>How well that is known, in degrees of freedom; judgement.</summary>
    public const double Degrees = 8;

    /// <summary>Likelihood ratio of a slip at this lift, in this sweep or another.</summary>
    public double Slip => RepeatsAtLift.SlipOfThePen.Ratio(Off, Scatter, Degrees);

    /// <summary>Likelihood ratio of air that has two minds at this lift.</summary>
    public double Unsteady => RepeatsAtLift.MoreScatter.Sizes.Average(s => Density.StudentOverItsMiddle(Off / s, Scatter, Degrees) / s) / Density.StudentOverItsMiddle(Off, Scatter, Degrees);

    /// <summary>Of every lift of a sweep; null where no other sweep covers it, or too few lifts are covered to know what they share.</summary>
    /// <param name="points">Of the sweep, by lift.</param>
    /// <param name="repeatScatter">By the bench card, a share.</param>
    /// <param name="others">The port's other sweeps.</param>
    public static IReadOnlyList<AgainstOwnSweeps?> Of(IReadOnlyList<LiftPoint> points, double repeatScatter, IReadOnlyList<FlowCurve> others)
    {
        ArgumentNullException.ThrowIfNull(points);
        ArgumentNullException.ThrowIfNull(others);
        var read = points.Select(p => others.Select(o => o.BareAreaAt(p.Lift)).OfType<double>().Where(a => a > 0).Select(a => Math.Log(a)).ToList()).ToList();
        double?[] over = [.. points.Select((p, k) => read[k].Count == 0 ? (double?)null : Math.Log(p.EffectiveArea.Value) - Family.Median(read[k]))];
        double[] known = [.. over.OfType<double>()];
        if (known.Length < FlowAgainstSisters.FewestLifts)
        {
            return [.. points.Select(_ => (AgainstOwnSweeps?)null)];
        }

        var level = Family.Median(known);
        return [.. points.Select((p, k) =>
        {
            if (over[k] is not { } here)
            {
                return null;
            }

            // Other sweeps that do not agree among themselves say less of this one.
            var (n, mean, doubt) = (read[k].Count, read[k].Average(), LiftDoubt.Of(p, repeatScatter));
            var apart = n < 2 ? 0 : read[k].Sum(a => (a - mean) * (a - mean)) / (n - 1);
            return new AgainstOwnSweeps(here - level, Math.Sqrt((Bend * Bend + doubt * doubt) * (1 + 1.0 / n) + apart / n), n);
        })];
    }
}
