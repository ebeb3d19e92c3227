using Portwright.Physics.Crank;

namespace Portwright.Physics.Targets;

/// <summary>Air speed in a section of the port that the piston's demand asks for, the section a chosen speed needs, and the engine speed at which a section becomes the limit.</summary>
/// <remarks>
/// Continuity with air of one density. Two speeds are in use and must not be mixed: the mean over the piston's way down, and the peak when it goes down fastest, about 1.6 times as much.
/// A section shared by several cylinders that do not breathe at once carries the demand of one.
/// </remarks>
public static class SectionSpeed
{
    public static readonly TargetRule Rule = new(
        "Air speed in a section", TargetBasis.WorkedOut, "continuity, worked out here; piston speed by Heywood, Internal Combustion Engine Fundamentals (1988), equations 2.9 and 2.11",
        "Air of one density that follows the piston. The speed to choose is the porter's; no source is known for it.");

    public static readonly TargetRule LimitRule = NamedLimits.SectionMach.Rule;

    /// <summary>Speed by the mean demand, m/s.</summary>
    /// <param name="bore">m, above zero.</param>
    /// <param name="stroke">m, above zero.</param>
    /// <param name="revolutionsASecond">1/s, zero or above.</param>
    /// <param name="area">Of all ports of the cylinder together at this place, m2, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double Mean(double bore, double stroke, double revolutionsASecond, double area) =>
        PistonDemand.Mean(bore, stroke, revolutionsASecond) / Area(area);

    /// <summary>Speed when the piston goes down fastest, m/s.</summary>
    /// <param name="bore">m, above zero.</param>
    /// <param name="revolutionsASecond">1/s, zero or above.</param>
    /// <param name="area">m2, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double Peak(double bore, SliderCrank crank, double revolutionsASecond, double area) =>
        PistonDemand.Peak(bore, crank, revolutionsASecond) / Area(area);

    /// <summary>Section that a chosen mean speed (m/s, above zero) needs, m2.</summary>
    /// <param name="bore">m, above zero.</param>
    /// <param name="stroke">m, above zero.</param>
    /// <param name="revolutionsASecond">1/s, zero or above.</param>
    /// <param name="meanSpeed">m/s, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double AreaForMean(double bore, double stroke, double revolutionsASecond, double meanSpeed) =>
        PistonDemand.Mean(bore, stroke, revolutionsASecond) / Require.Positive(meanSpeed, nameof(meanSpeed), "m/s");

    /// <summary>Section that a chosen peak speed (m/s, above zero) needs, m2.</summary>
    /// <param name="bore">m, above zero.</param>
    /// <param name="revolutionsASecond">1/s, zero or above.</param>
    /// <param name="peakSpeed">m/s, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double AreaForPeak(double bore, SliderCrank crank, double revolutionsASecond, double peakSpeed) =>
        PistonDemand.Peak(bore, crank, revolutionsASecond) / Require.Positive(peakSpeed, nameof(peakSpeed), "m/s");

    /// <summary>Engine speed at which the mean speed in a section reaches a chosen value, 1/s.</summary>
    /// <param name="bore">m, above zero.</param>
    /// <param name="stroke">m, above zero.</param>
    /// <param name="area">m2, above zero.</param>
    /// <param name="meanSpeed">m/s, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double RevolutionsASecondForMean(double bore, double stroke, double area, double meanSpeed) =>
        Require.Positive(meanSpeed, nameof(meanSpeed), "m/s") * Area(area) / PistonDemand.Mean(bore, stroke, 1);

    /// <summary>Engine speed at which the section becomes the limit, 1/s: the peak speed reaches a Mach number.</summary>
    /// <param name="bore">m, above zero.</param>
    /// <param name="area">m2, above zero.</param>
    /// <param name="speedOfSound">Of the air at rest before the port, m/s, above zero.</param>
    /// <param name="mach">Above zero, 1 at most, no unit.</param>
    /// <remarks>The peak speed is counted with the density before the port, as the demand is; the true Mach number in the section is a little higher.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double LimitRevolutionsASecond(double bore, SliderCrank crank, double area, double speedOfSound, double mach)
    {
        if (!(mach > 0 && mach <= 1)) Require.Refuse(mach, nameof(mach), "above 0 and 1 at most");
        return mach * Require.Positive(speedOfSound, nameof(speedOfSound), "m/s") * Area(area) / PistonDemand.Peak(bore, crank, 1);
    }

    private static double Area(double area) => Require.Positive(area, nameof(area), "m2");
}
