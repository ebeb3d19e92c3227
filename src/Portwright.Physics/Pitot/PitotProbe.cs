using Portwright.Physics.Air;
using Portwright.Physics.TestPiece;

namespace Portwright.Physics.Pitot;

/// <summary>A pitot or pitot-static probe with its calibration factor on speed (alpha of ISO 3966; 1 for a well-made probe).</summary>
public sealed record PitotProbe
{
    /// <param name="factor">True speed over indicated speed, 0.5 to 1.5, no unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">The factor is not 0.5 to 1.5.</exception>
    public PitotProbe(double factor = 1) => Factor = Require.Between(factor, 0.5, 1.5, nameof(factor), "(no unit)");

    /// <summary>Ratio of true speed to indicated speed.</summary>
    public double Factor { get; }

    /// <param name="differential">Total less static pressure, zero or above, Pa.</param>
    /// <param name="staticPressure">At the probe's tip, Pa absolute.</param>
    /// <param name="total">The air the stream came from, at rest: room or plenum. Its temperature is the stream's total temperature.</param>
    public PitotReading Read(double differential, double staticPressure, in AirState total)
    {
        var k = total.HeatCapacityRatio;
        var r = total.GasConstant;
        var mach = PitotSpeed.Mach(differential, staticPressure, k);
        var staticTemperature = total.Temperature * IsentropicFlow.TemperatureRatio(mach, k);
        var speed = mach * Math.Sqrt(k * r * staticTemperature);
        var density = staticPressure / (r * staticTemperature);
        var incompressible = PitotSpeed.Incompressible(differential, density);
        return new(Factor * speed, Factor * mach,
            Factor * PitotSpeed.ExpansionFactor(differential, staticPressure, k) * incompressible,
            Factor * incompressible, density);
    }

    /// <summary>Isentropic speed, m/s: the figure to use.</summary>
    /// <param name="differential">Pa, zero or above.</param>
    /// <param name="staticPressure">Absolute, Pa, above zero.</param>
    public double Speed(double differential, double staticPressure, in AirState total) => Read(differential, staticPressure, total).Speed;
}

/// <summary>One pitot reading by three formulas.</summary>
/// <param name="Speed">Isentropic, m/s: right at every subsonic speed.</param>
/// <param name="Mach">Local Mach number.</param>
/// <param name="SpeedIso3966">With ISO 3966's expansion factor, m/s.</param>
/// <param name="SpeedIncompressible">sqrt(2 dp/rho) with the stream's own density, m/s.</param>
/// <param name="Density">Of the stream, kg/m3.</param>
public readonly record struct PitotReading(double Speed, double Mach, double SpeedIso3966, double SpeedIncompressible, double Density)
{
    /// <summary>True above Mach 0.25, where ISO 3966 no longer speaks and the isentropic relation stands alone.</summary>
    public bool LeavesIso3966 => Mach > PitotSpeed.Iso3966LargestMach;
}
