using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Web.Pages;

/// <summary>Valve and seat in a sentence.</summary>
internal static class ValveWords
{
    public static string Of(ValveData? valve, UnitSystem units) => valve is null
        ? "Not written down: no window and no discharge coefficients."
        : $"valve {Print.Number(valve.HeadDiameter, Dimension.Length, units)}, throat {Print.Number(valve.ThroatDiameter, Dimension.Length, units)}, "
            + $"seat {Print.Number(valve.SeatAngle, Dimension.Angle, units, 0)} by {Print.Number(valve.SeatWidth, Dimension.Length, units)}, stem {Print.Number(valve.StemDiameter, Dimension.Length, units)}.";
}
