namespace Portwright.Engine.Gas.Ends;

/// <summary>A vessel of constant volume in which the gas comes to rest and mixes at once.</summary>
public sealed class Plenum : Reservoir
{
    private readonly PerfectGas _gas;
    private double _massRate, _energyRate, _burntRate;

    /// <param name="volume">m3, above zero.</param>
    /// <param name="gas">The same gas as in the pipes joined to it.</param>
    /// <param name="start">What it holds at first.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public Plenum(double volume, PerfectGas gas, GasAtRest start)
    {
        Volume = Require.Positive(volume, nameof(volume), "m3");
        _gas = gas;
        Mass = gas.Density(Require.Positive(start.Pressure, nameof(start.Pressure), "Pa"), Require.Positive(start.Temperature, nameof(start.Temperature), "K")) * volume;
        Energy = start.Pressure * volume / (gas.HeatCapacityRatio - 1);
        BurntMass = Require.Between(start.Burnt, 0, 1, nameof(start.Burnt), "(no unit)") * Mass;
    }

    /// <summary>m3.</summary>
    public double Volume { get; }

    /// <summary>kg.</summary>
    public double Mass { get; private set; }

    /// <summary>Internal energy, J.</summary>
    public double Energy { get; private set; }

    /// <summary>kg.</summary>
    public double BurntMass { get; private set; }

    public GasAtRest Gas => At(0);

    /// <summary>Half a step ahead along the last step's rates: second order in time without a second pass.</summary>
    /// <param name="step">s, above zero.</param>
    public override GasAtRest Midway(double step) => At(0.5 * step);

    public override void Take(double mass, double energy, double burntMass, double step)
    {
        Mass += mass;
        Energy += energy;
        BurntMass += burntMass;
        (_massRate, _energyRate, _burntRate) = (mass / step, energy / step, burntMass / step);
    }

    private GasAtRest At(double ahead)
    {
        double mass = Mass + ahead * _massRate, energy = Energy + ahead * _energyRate, burnt = BurntMass + ahead * _burntRate;
        // A step long enough to empty half the vessel is looked at without guessing ahead.
        if (!(mass > 0.5 * Mass && energy > 0.5 * Energy)) (mass, energy, burnt) = (Mass, Energy, BurntMass);
        var pressure = (_gas.HeatCapacityRatio - 1) * energy / Volume;
        return new(pressure, pressure * Volume / (mass * _gas.GasConstant), Math.Clamp(burnt / mass, 0, 1));
    }
}
