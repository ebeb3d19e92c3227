namespace Portwright.Engine.Gas.Ends;

/// <summary>Gas at rest beyond a pipe's end.</summary>
/// <param name="Pressure">Pa, above zero.</param>
/// <param name="Temperature">K, above zero.</param>
/// <param name="Burnt">Mass fraction of burnt gas.</param>
public readonly record struct GasAtRest(double Pressure, double Temperature, double Burnt = 0);

/// <summary>Something that gives gas to pipes and takes it from them: the room, a plenum, a cylinder.</summary>
/// <remarks>This is the wall between pipes and what they are joined to: whoever keeps the gas of a volume says its state and takes what flowed.</remarks>
public abstract class Reservoir
{
    /// <summary>The gas in the middle of a step of <paramref name="step"/> seconds that begins now. It may be asked several times before a step is taken.</summary>
    /// <param name="step">s, above zero.</param>
    public abstract GasAtRest Midway(double step);

    /// <summary>Takes what flowed in during a step; negative what flowed out.</summary>
    /// <param name="mass">kg.</param>
    /// <param name="energy">Total enthalpy that came with it, J, counted from 0 K with the pipe's constant specific heat.</param>
    /// <param name="burntMass">kg.</param>
    /// <param name="step">s.</param>
    public abstract void Take(double mass, double energy, double burntMass, double step);
}

/// <summary>The air around: it does not change.</summary>
/// <param name="air">Its state.</param>
/// <exception cref="ArgumentOutOfRangeException">A pressure or temperature that is not above zero, or a burnt fraction that is not 0 to 1.</exception>
public sealed class Room(GasAtRest air) : Reservoir
{
    public GasAtRest Air { get; } = new(
        Require.Positive(air.Pressure, nameof(air.Pressure), "Pa"),
        Require.Positive(air.Temperature, nameof(air.Temperature), "K"),
        Require.Between(air.Burnt, 0, 1, nameof(air.Burnt), "(no unit)"));

    /// <summary>All mass taken so far, kg.</summary>
    public double MassTaken { get; private set; }

    /// <summary>All energy taken so far, J.</summary>
    public double EnergyTaken { get; private set; }

    /// <summary>All burnt gas taken so far, kg.</summary>
    public double BurntMassTaken { get; private set; }

    /// <param name="step">s, above zero.</param>
    public override GasAtRest Midway(double step) => Air;

    public override void Take(double mass, double energy, double burntMass, double step)
    {
        MassTaken += mass;
        EnergyTaken += energy;
        BurntMassTaken += burntMass;
    }
}
