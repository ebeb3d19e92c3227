using Portwright.Physics.Statistics;
using Portwright.Physics.Targets;
using Portwright.Physics.Uncertainty;

namespace Portwright.Shop.Words;

/// <summary>Confidence of a finding: computed from the uncertainties, never chosen.</summary>
public static class Confidence
{
    /// <summary>A finding is stated from this probability on.</summary>
    public const double Stated = 0.9;

    /// <summary>Said so from this probability on: nothing read could make it surer.</summary>
    public const double AsGoodAsCertain = 0.995;

    /// <summary>Probability that a quantity lies above a limit: Student's distribution with the effective degrees of freedom (JCGM 100:2008, G.3).</summary>
    public static double Above(Estimate value, double limit)
    {
        ArgumentNullException.ThrowIfNull(value);
        var u = value.StandardUncertainty;
        return Above(value.Value - limit, u, DegreesOf(value, u));
    }

    /// <summary>Probability that a quantity lies below a limit.</summary>
    public static double Below(Estimate value, double limit) => 1 - Above(value, limit);

    /// <summary>Parts an edge without a sharp line is cut into.</summary>
    private const int Parts = 200;

    /// <summary>Probability that a quantity lies above a limit that is itself known to no more than a range: anywhere in it alike, the mean of <see cref="Above(Estimate, double)"/> over it.</summary>
    public static double Above(Estimate value, UsualRange edge)
    {
        if (!(edge.HalfWidth > 0)) return Above(value, edge.Middle);
        // A result of many sweeps has hundreds of causes: they are gone through once, not for every part.
        var u = value.StandardUncertainty;
        var degrees = DegreesOf(value, u);
        return Enumerable.Range(0, Parts).Average(i => Above(value.Value - (edge.Low + (edge.High - edge.Low) * (i + 0.5) / Parts), u, degrees));
    }

    private static double Above(double over, double u, double degrees) => u > 0 ? Student.Cdf(over / u, degrees) : over > 0 ? 1 : over < 0 ? 0 : 0.5;

    private static double DegreesOf(Estimate value, double u) => u > 0 ? value.EffectiveDegreesOfFreedom : double.PositiveInfinity;

    /// <summary>Probability that a quantity lies below such a limit.</summary>
    public static double Below(Estimate value, UsualRange edge) => 1 - Above(value, edge);

    /// <summary>Probability that at least one of two things is so, their doubts being apart from each other.</summary>
    public static double Either(double one, double other) => 1 - (1 - one) * (1 - other);

    /// <summary>In words a porter weighs: <c>97 in 100</c>, and past 995 in 1,000 <c>as good as certain</c>.</summary>
    public static string Words(double confidence) => confidence >= AsGoodAsCertain ? "as good as certain" : InHundred(confidence);

    /// <summary><c>97 in 100</c>, rounded down, never 100.</summary>
    public static string InHundred(double probability) => FormattableString.Invariant($"{Math.Clamp(Math.Floor(100 * probability + 1e-9), 0, 99):0} in 100");
}
