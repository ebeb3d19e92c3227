namespace Portwright.Engine.Gas;

/// <summary>Gas at one place of a pipe.</summary>
/// <param name="Density">kg/m3, above zero.</param>
/// <param name="Velocity">m/s, positive from the pipe's first end to its last.</param>
/// <param name="Pressure">Static, Pa, above zero.</param>
/// <param name="Burnt">Mass fraction of burnt gas, 0 to 1.</param>
public readonly record struct GasState(double Density, double Velocity, double Pressure, double Burnt = 0)
{
    /// <summary>m/s.</summary>
    /// <param name="heatCapacityRatio">k, no unit, above 1 and below 2.</param>
    public double SoundSpeed(double heatCapacityRatio) => Math.Sqrt(heatCapacityRatio * Pressure / Density);

    /// <summary>Mach number, zero or above.</summary>
    /// <param name="heatCapacityRatio">k, no unit, above 1 and below 2.</param>
    public double Mach(double heatCapacityRatio) => Velocity / SoundSpeed(heatCapacityRatio);
}
