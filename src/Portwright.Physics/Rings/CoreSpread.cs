using Portwright.Physics.Uncertainty;

namespace Portwright.Physics.Rings;

/// <summary>How far core speeds of a section lie apart: from the readings, with what is known of ports before any reading.</summary>
/// <remarks>
/// A handful of readings estimates a spread poorly, and readings that happen to agree do not make the air between them even. A tenth of the mean with
/// the weight of two readings stands in for what is known beforehand (judgement, no source): s^2 = (2 (mean/10)^2 + SS)/(2 + n - 1), a scaled
/// inverse chi-square prior, with 2 + n - 1 degrees of freedom.
/// </remarks>
internal static class CoreSpread
{
    public const double UsualShare = 0.1;

    public const double UsualDegreesOfFreedom = 2;

    public static RepeatScatter Of(CoreField core)
    {
        var dof = DegreesOfFreedom(core);
        return new(Math.Sqrt(Squares(core) / dof), dof);
    }

    /// <summary>Logarithm of the likelihood of the readings with mean and spread integrated out, but for a constant.</summary>
    public static double LogLikelihood(CoreField core) => -0.5 * (DegreesOfFreedom(core) * Math.Log(Squares(core)) + core.Kriging.LogDeterminant);

    private static double DegreesOfFreedom(CoreField core) => UsualDegreesOfFreedom + core.Kriging.Count - 1;

    private static double Squares(CoreField core) => UsualDegreesOfFreedom * Math.Pow(UsualShare * core.Mean, 2) + core.SumOfSquares;
}
