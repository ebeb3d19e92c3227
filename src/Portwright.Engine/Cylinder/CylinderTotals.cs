namespace Portwright.Engine.Cylinder;

/// <summary>Sums over steps of a <see cref="CylinderGas"/>.</summary>
/// <remarks>
/// To rounding: energy at the end less energy at the start = <see cref="Enthalpy"/> + <see cref="HeatSetFree"/> - <see cref="Work"/> - <see cref="HeatToWalls"/>; mass at the end less
/// mass at the start = <see cref="Mass"/> + <see cref="FuelMass"/>; burnt mass likewise = <see cref="BurntMass"/> + <see cref="FreshThatBurnt"/> + <see cref="FuelMass"/>.
/// </remarks>
public readonly record struct CylinderTotals
{
    /// <summary>Done on the piston by the gas over it, J; the air under the piston is left out.</summary>
    public double Work { get; init; }

    /// <summary>Part of <see cref="Work"/> done in the two strokes about top dead centre of gas exchange, J; usually below zero.</summary>
    public double PumpingWork { get; init; }

    /// <summary>Part of <see cref="Work"/> done in the compression and power strokes, J.</summary>
    public double PowerWork => Work - PumpingWork;

    /// <summary>J.</summary>
    public double HeatToWalls { get; init; }

    /// <summary>J.</summary>
    public double HeatSetFree { get; init; }

    /// <summary>Net mass taken in through the valves, kg.</summary>
    public double Mass { get; init; }

    /// <summary>Net enthalpy taken in through the valves, J.</summary>
    public double Enthalpy { get; init; }

    /// <summary>Net burnt mass taken in through the valves, kg; usually below zero.</summary>
    public double BurntMass { get; init; }

    /// <summary>Fresh gas that burnt, kg, without the fuel that came in with it.</summary>
    public double FreshThatBurnt { get; init; }

    /// <summary>Fuel that came in as it burnt, kg.</summary>
    public double FuelMass { get; init; }

    /// <summary>Highest pressure at the end of a step, Pa.</summary>
    public double PeakPressure { get; init; }
}
