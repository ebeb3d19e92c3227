using Portwright.Physics.Air;
using Portwright.Physics.TestPiece;
using Portwright.Shop.Units;

namespace Portwright.Shop.Bench;

/// <summary>
/// A test pressure at which the port would choke: a flow bench is far from it, and the number is in another unit than was meant.
/// </summary>
public static class ChokedPressure
{
    /// <summary>The sentence; null where the air before and behind the port stand as on any bench.</summary>
    /// <param name="shown">The test pressure as the porter typed it, with its unit.</param>
    /// <param name="testPressure">Pa.</param>
    public static string? Words(string shown, double testPressure, FlowDirection direction, in AirState room)
    {
        var ahead = direction == FlowDirection.Draw ? room.Pressure : room.Pressure + testPressure;
        var behind = ahead - testPressure;
        return Nozzle.IsChoked(ahead, room.HeatCapacityRatio, behind)
            ? FormattableString.Invariant(
                $"The test pressure {shown} would choke the port: {Math.Max(0, behind / ahead):0.00} of the pressure ahead of it would be left behind it, and under {Nozzle.CriticalPressureRatio(room.HeatCapacityRatio):0.00} no more air passes. Benches work at 10 to 60 inH2O (common practice): look at its unit.")
            : null;
    }

    /// <inheritdoc cref="Words(string, double, FlowDirection, in AirState)"/>
    public static string? Words(Typed testPressure, FlowDirection direction, in AirState room)
    {
        ArgumentNullException.ThrowIfNull(testPressure);
        return Words(testPressure.WithUnit, testPressure.Si(Dimension.Pressure), direction, room);
    }
}
