using Portwright.Physics.Air;
using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Web.Shell;

/// <summary>A state of air in a few words.</summary>
public static class AirWords
{
    public static string Of(StandardAir air, UnitSystem units) =>
        $"{Print.Number(air.Pressure, Dimension.Barometer, units)}, {Print.Number(air.Temperature, Dimension.Temperature, units)}, "
            + (air.RelativeHumidity > 0 ? $"{Print.Number(air.RelativeHumidity, Dimension.Fraction, units, 0)} humidity" : "dry");

    public static string Of(AirCard air, UnitSystem units) => Of(air.Air(), units);
}
