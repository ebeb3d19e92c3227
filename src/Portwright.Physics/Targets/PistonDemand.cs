using Portwright.Physics.Crank;
using Portwright.Physics.Valves;

namespace Portwright.Physics.Targets;

/// <summary>How much air the piston asks for, if the cylinder's air kept the density of the intake: volume flows, m3/s.</summary>
/// <remarks>J. B. Heywood, Internal Combustion Engine Fundamentals (1988), equations 2.9 and 2.11. Mean piston speed itself: <see cref="InletMachIndex.MeanPistonSpeed"/>.</remarks>
public static class PistonDemand
{
    public static readonly TargetRule Rule = new(
        "Piston demand", TargetBasis.Published, "Heywood, Internal Combustion Engine Fundamentals (1988), equations 2.9 and 2.11",
        "The air is taken to follow the piston without stretching: near the limit it lags, and a tuned runner pushes more in after bottom dead centre.");

    /// <summary>Mean over the piston's way down: piston area x mean piston speed, m3/s.</summary>
    /// <param name="bore">m, above zero.</param>
    /// <param name="stroke">m, above zero.</param>
    /// <param name="revolutionsASecond">1/s, zero or above.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double Mean(double bore, double stroke, double revolutionsASecond) =>
        PistonArea(bore) * InletMachIndex.MeanPistonSpeed(stroke, revolutionsASecond);

    /// <summary>At the moment the piston goes down fastest, m3/s; 1.6 to 1.67 of the mean for usual rods.</summary>
    /// <param name="bore">m, above zero.</param>
    /// <param name="revolutionsASecond">1/s, zero or above.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double Peak(double bore, SliderCrank crank, double revolutionsASecond) =>
        At(bore, crank, revolutionsASecond, Of(crank).FastestAngle);

    /// <summary>At a crank angle (rad after top dead centre), m3/s; below zero while the piston rises.</summary>
    /// <param name="bore">m, above zero.</param>
    /// <param name="revolutionsASecond">1/s, zero or above.</param>
    /// <param name="angle">rad after top dead centre.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double At(double bore, SliderCrank crank, double revolutionsASecond, double angle) =>
        PistonArea(bore) * Of(crank).Slope(angle) * 2 * Math.PI * Require.NotNegative(revolutionsASecond, nameof(revolutionsASecond), "1/s");

    /// <summary>pi/4 bore^2, m2.</summary>
    /// <param name="bore">m, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The bore is not above zero.</exception>
    public static double PistonArea(double bore) => Math.PI / 4 * Require.Positive(bore, nameof(bore), "m") * bore;

    private static SliderCrank Of(SliderCrank crank)
    {
        ArgumentNullException.ThrowIfNull(crank);
        return crank;
    }
}
