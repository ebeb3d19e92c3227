using Portwright.Physics.Uncertainty;

namespace Portwright.Physics.Statistics;

/// <summary>
/// Difference of the means of two sets of repeats whose scatter may differ (B. L. Welch, Biometrika 34 (1947) 28-35).
/// Knows nothing of shared causes or set-ups: two cuts are compared with <see cref="Comparison"/>.
/// </summary>
/// <param name="Difference">Mean after less mean before.</param>
/// <param name="StandardUncertainty">Of the difference.</param>
/// <param name="DegreesOfFreedom">By Welch-Satterthwaite.</param>
public sealed record WelchTest(double Difference, double StandardUncertainty, double DegreesOfFreedom)
{
    public double T => Difference / StandardUncertainty;

    /// <summary>Two-sided chance of a difference this large when there is none.</summary>
    public double PValue => Student.TwoSidedP(T, DegreesOfFreedom);

    /// <exception cref="ArgumentException">A set has fewer than 2 readings, or neither shows any scatter.</exception>
    public static WelchTest Of(ReadOnlySpan<double> before, ReadOnlySpan<double> after)
    {
        var (a, b) = (RepeatScatter.Of(before), RepeatScatter.Of(after));
        var va = a.StandardDeviation * a.StandardDeviation / before.Length;
        var vb = b.StandardDeviation * b.StandardDeviation / after.Length;
        if (va + vb == 0) throw new ArgumentException("Neither set shows any scatter.", nameof(after));
        var dof = (va + vb) * (va + vb) / (va * va / a.DegreesOfFreedom + vb * vb / b.DegreesOfFreedom);
        return new(RepeatScatter.Mean(after) - RepeatScatter.Mean(before), Math.Sqrt(va + vb), dof);
    }
}
