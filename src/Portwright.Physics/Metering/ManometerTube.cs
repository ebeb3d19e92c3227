using Portwright.Geometry.Schedules;
using Portwright.Physics.Air;

namespace Portwright.Physics.Metering;

/// <summary>A tube of liquid, vertical or inclined, with a well: differential pressure from the length along the tube.</summary>
/// <remarks>
/// Hydrostatics: dp = rho g L (sin(angle) + a/A), a/A the tube's section over the well's, by which the well falls while the tube rises (0 for a
/// wide well, or for a scale the maker has already shortened for it; 1 for a U-tube of even bore read on one leg from its rest mark, angle 90 degrees).
/// The weight of the air over the liquid (0.12 percent of water's) is left out.
/// </remarks>
public sealed record ManometerTube
{
    /// <summary>m/s2.</summary>
    public const double StandardGravity = 9.80665;

    /// <param name="fluidDensity">kg/m3.</param>
    /// <param name="angleFromHorizontal">rad, above 0 to pi/2 (vertical).</param>
    /// <param name="wellAreaRatio">Tube section over well section, 0 to 1, no unit.</param>
    /// <param name="gravity">m/s2, at the bench.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public ManometerTube(double fluidDensity, double angleFromHorizontal = Math.PI / 2, double wellAreaRatio = 0, double gravity = StandardGravity)
    {
        FluidDensity = Require.Positive(fluidDensity, nameof(fluidDensity), "kg/m3");
        if (!(angleFromHorizontal > 0 && angleFromHorizontal <= Math.PI / 2))
            Require.Refuse(angleFromHorizontal, nameof(angleFromHorizontal), "above 0 and up to pi/2 rad");
        AngleFromHorizontal = angleFromHorizontal;
        WellAreaRatio = Require.Between(wellAreaRatio, 0, 1, nameof(wellAreaRatio), "(no unit)");
        Gravity = Require.Between(gravity, 9.7, 9.9, nameof(gravity), "m/s2");
        PressurePerLength = fluidDensity * gravity * (Math.Sin(angleFromHorizontal) + wellAreaRatio);
    }

    /// <summary>A tube of pure water. Inches of water on a scale are as a rule those at 4 degC: a column at 25 degC shows 0.3 percent too much.</summary>
    /// <param name="temperature">Of the water, 273.15 to 313.15 K.</param>
    /// <param name="angleFromHorizontal">rad, above 0 to pi/2 (vertical).</param>
    /// <param name="wellAreaRatio">Tube section over well section, 0 to 1, no unit.</param>
    /// <param name="gravity">m/s2, at the bench.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static ManometerTube OfWater(double temperature, double angleFromHorizontal = Math.PI / 2, double wellAreaRatio = 0, double gravity = StandardGravity) =>
        new(WaterDensity.At(temperature - 273.15), angleFromHorizontal, wellAreaRatio, gravity);

    /// <summary>kg/m3.</summary>
    public double FluidDensity { get; }

    /// <summary>rad.</summary>
    public double AngleFromHorizontal { get; }

    /// <summary>Ratio of the tube's section to the well's.</summary>
    public double WellAreaRatio { get; }

    /// <summary>m/s2.</summary>
    public double Gravity { get; }

    /// <summary>Pa for each metre along the tube.</summary>
    public double PressurePerLength { get; }

    /// <summary>Pa from a length along the tube, m.</summary>
    /// <param name="length">m.</param>
    public double Differential(double length) => PressurePerLength * length;

    /// <summary>The length along the tube, m, that a differential (Pa) shows.</summary>
    /// <param name="differential">Pa.</param>
    public double Length(double differential) => differential / PressurePerLength;
}

/// <summary>A meter read as a length along a tube of liquid. Reading: that length, m.</summary>
public sealed record TubeRead(IDifferentialMeter Inner, ManometerTube Tube) : IMeter
{
    /// <param name="reading">Length along the tube, m.</param>
    public MeterFlow Flow(double reading, in AirState upstream) => Inner.FlowAtDifferential(Tube.Differential(reading), upstream);

    /// <summary>The differential across the meter at a reading, Pa.</summary>
    /// <param name="reading">Length along the tube, m.</param>
    public double Differential(double reading) => Math.Abs(Tube.Differential(reading));
}
