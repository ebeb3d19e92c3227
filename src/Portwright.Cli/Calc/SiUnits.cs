using System.Globalization;
using Portwright.Shop.Units;

namespace Portwright.Cli.Calc;

/// <summary>The SI unit a dimension is worked in: as printed, and as the end of a JSON key.</summary>
internal static class SiUnits
{
    public static string Name(Dimension dimension) => dimension switch
    {
        Dimension.Length or Dimension.Lift or Dimension.Elevation => "m",
        Dimension.Pressure or Dimension.Barometer => "Pa",
        Dimension.Temperature => "K",
        Dimension.VolumeFlow => "m3/s",
        Dimension.MassFlow => "kg/s",
        Dimension.Speed => "m/s",
        Dimension.Area => "m2",
        Dimension.Volume => "m3",
        Dimension.Angle => "rad",
        Dimension.Density => "kg/m3",
        Dimension.RotationalSpeed => "rad/s",
        Dimension.Power => "W",
        Dimension.Torque => "N m",
        Dimension.Viscosity => "Pa s",
        Dimension.Duration => "s",
        _ => "",
    };

    public static string Key(string key, Dimension dimension)
    {
        var unit = Name(dimension).Replace('/', '_').Replace(' ', '_').ToLowerInvariant();
        return unit.Length == 0 ? key : key + "_" + unit;
    }

    /// <summary>Six figures and the SI unit.</summary>
    public static string Text(double si, Dimension dimension) =>
        !double.IsFinite(si) ? Print.Nothing : (si.ToString("G6", CultureInfo.InvariantCulture).Replace("E", "e", StringComparison.Ordinal) + " " + Name(dimension)).TrimEnd();
}
