namespace Portwright.Shop.Units;

/// <summary>
/// The range a typed value must lie in, in SI. Wide enough for anything a cylinder-head shop meets; it catches
/// a slip of unit or point, it is no check of the physics. Bounds: common practice, no source.
/// </summary>
public static class TypedRange
{
    /// <summary>Least and greatest SI value taken.</summary>
    public static (double Least, double Greatest) Of(Dimension dimension) => dimension switch
    {
        Dimension.Length => (0, 100),
        Dimension.Lift => (0, 3 * 0.0254),
        Dimension.Elevation => (-500, 9000),
        Dimension.Pressure => (0, 1e6),
        Dimension.Barometer => (30e3, 115e3),
        Dimension.Temperature => (200, 3000),
        Dimension.VolumeFlow => (0, 10),
        Dimension.MassFlow => (0, 10),
        Dimension.Speed => (0, 2000),
        Dimension.Area => (0, 10),
        Dimension.Volume => (0, 1),
        Dimension.Angle => (-4 * Math.PI, 4 * Math.PI),
        Dimension.Fraction => (0, 2),
        Dimension.Ratio => (-1e6, 1e6),
        Dimension.Density => (0, 25e3),
        Dimension.RotationalSpeed => (0, 50e3 * Math.PI / 30),
        Dimension.Power => (0, 1e8),
        Dimension.Torque => (0, 1e6),
        Dimension.Viscosity => (0, 1e3),
        Dimension.Duration => (0, 1e8),
        Dimension.Count => (0, 1e6),
        _ => throw new ArgumentOutOfRangeException(nameof(dimension), dimension, "One of the dimensions listed in the enumeration."),
    };
}
