using Portwright.Physics.Air;
using Portwright.Physics.TestPiece;

namespace Portwright.Judging.Shops;

/// <summary>The stream in a section as the bench drives it.</summary>
/// <param name="Mean">Speed over the section, m/s.</param>
/// <param name="Density">kg/m3.</param>
/// <param name="Pressure">Static, Pa.</param>
/// <param name="Temperature">Static, K.</param>
public sealed record LocalAir(double Mean, double Density, double Pressure, double Temperature)
{
    /// <summary>J/(kg K), dry air.</summary>
    private const double HeatCapacity = 1005;

    /// <summary>
    /// Drawn, the air comes from rest in the room, less what the way has cost; blown, it has spent its pressure at the valve and leaves the port near the room's own.
    /// </summary>
    /// <param name="area">Effective area of the whole port, m2.</param>
    /// <param name="section">m2.</param>
    public static LocalAir Of(double area, double section, FlowDirection direction, AirState room, double testPressure)
    {
        var conditions = new TestConditions(room, testPressure, direction);
        var mass = area * Nozzle.MassFlux(conditions.TestPieceUpstream, conditions.TestPieceDownstreamPressure);
        var gas = room.GasConstant;
        var density = room.Density;
        double speed = 0, pressure = room.Pressure, temperature = room.Temperature;
        for (var i = 0; i < 30; i++)
        {
            speed = mass / (density * section);
            temperature = room.Temperature - speed * speed / (2 * HeatCapacity);
            // Entry and wall cost some hundredths of the velocity head on the way in.
            pressure = direction == FlowDirection.Draw
                ? room.Pressure * Math.Pow(temperature / room.Temperature, 3.5) - 0.04 * density * speed * speed / 2
                : room.Pressure;
            density = pressure / (gas * temperature);
        }

        return new LocalAir(speed, density, pressure, temperature);
    }

    /// <summary>What a pitot tube shows at a local speed (m/s) over the static pressure, Pa.</summary>
    public double Rise(double speed) => Pressure * (Math.Pow(1 + speed * speed / (2 * HeatCapacity * Temperature), 3.5) - 1);
}
