using Portwright.Physics.Valves;

namespace Portwright.Physics.Targets;

/// <summary>Taylor's inlet Mach index turned round: what area, or what engine speed, keeps it at a chosen value. The index itself: <see cref="InletMachIndex"/>.</summary>
/// <remarks>C. F. Taylor, The Internal Combustion Engine in Theory and Practice, vol. 1, ch. 6; J. C. Livengood and J. D. Stanitz, NACA TN 915 (1943); both from memory.</remarks>
public static class MachTargets
{
    public static readonly TargetRule Rule = NamedLimits.InletMachKnee.Rule;

    /// <summary>Mean effective area of a cylinder's inlet valves over their event that gives the index at this engine speed, m2.</summary>
    /// <param name="bore">m, above zero.</param>
    /// <param name="stroke">m, above zero.</param>
    /// <param name="revolutionsASecond">1/s, zero or above.</param>
    /// <param name="speedOfSound">m/s, above zero.</param>
    /// <param name="index">Above zero, no unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double MeanArea(double bore, double stroke, double revolutionsASecond, double speedOfSound, double index) =>
        PistonDemand.Mean(bore, stroke, revolutionsASecond)
        / (Require.Positive(index, nameof(index), "(no unit)") * Require.Positive(speedOfSound, nameof(speedOfSound), "m/s"));

    /// <summary>Engine speed at which the index reaches a value, 1/s.</summary>
    /// <param name="bore">m, above zero.</param>
    /// <param name="stroke">m, above zero.</param>
    /// <param name="meanEffectiveArea">m2, above zero.</param>
    /// <param name="speedOfSound">m/s, above zero.</param>
    /// <param name="index">Taylor's inlet Mach index, no unit, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double RevolutionsASecond(double bore, double stroke, double meanEffectiveArea, double speedOfSound, double index) =>
        Require.Positive(index, nameof(index), "(no unit)") / InletMachIndex.Of(bore, stroke, 1, meanEffectiveArea, speedOfSound);
}
