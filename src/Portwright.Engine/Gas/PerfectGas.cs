namespace Portwright.Engine.Gas;

/// <summary>A gas with constant specific heats: p = rho R T, internal energy p/((k-1) rho).</summary>
public readonly record struct PerfectGas
{
    /// <summary>Dry air near room temperature: k = 1.4, R = 287.05 J/(kg K).</summary>
    public static readonly PerfectGas Air = new(1.4, 287.05);

    /// <param name="heatCapacityRatio">k, above 1 and below 2, no unit.</param>
    /// <param name="gasConstant">R, J/(kg K), above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public PerfectGas(double heatCapacityRatio, double gasConstant)
    {
        if (!(heatCapacityRatio > 1 && heatCapacityRatio < 2)) Require.Refuse(heatCapacityRatio, nameof(heatCapacityRatio), "above 1 and below 2");
        HeatCapacityRatio = heatCapacityRatio;
        GasConstant = Require.Positive(gasConstant, nameof(gasConstant), "J/(kg K)");
    }

    /// <summary>k, no unit.</summary>
    public double HeatCapacityRatio { get; }

    /// <summary>J/(kg K).</summary>
    public double GasConstant { get; }

    /// <summary>Specific heat at constant pressure, J/(kg K).</summary>
    public double HeatCapacity => HeatCapacityRatio / (HeatCapacityRatio - 1) * GasConstant;

    /// <summary>m/s.</summary>
    /// <param name="temperature">K.</param>
    public double SoundSpeed(double temperature) => Math.Sqrt(HeatCapacityRatio * GasConstant * temperature);

    /// <summary>kg/m3.</summary>
    /// <param name="pressure">Pa, above zero.</param>
    /// <param name="temperature">K.</param>
    public double Density(double pressure, double temperature) => pressure / (GasConstant * temperature);

    /// <summary>K.</summary>
    public double Temperature(in GasState state) => state.Pressure / (state.Density * GasConstant);

    /// <summary>Gas at a pressure (Pa), temperature (K), velocity (m/s) and burnt mass fraction.</summary>
    /// <param name="pressure">Pa, above zero.</param>
    /// <param name="temperature">K.</param>
    /// <param name="velocity">m/s.</param>
    /// <param name="burnt">Mass fraction of burnt gas, 0 to 1.</param>
    public GasState State(double pressure, double temperature, double velocity = 0, double burnt = 0) =>
        new(Density(pressure, temperature), velocity, pressure, burnt);
}
