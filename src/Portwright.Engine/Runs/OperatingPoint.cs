namespace Portwright.Engine.Runs;

/// <summary>The engine at one speed once its cycles repeat. Pressures Pa, masses kg, energies J; of one cylinder on average unless it says otherwise.</summary>
/// <remarks>A calculation, no measurement: combustion, mixture and mechanical state are put in. Differences between two ports in one engine are firmer than power itself.</remarks>
public sealed record OperatingPoint
{
    /// <summary>1/s.</summary>
    public required double TurnsASecond { get; init; }

    /// <summary>Fresh gas that went in through the intake in a cycle, net, over what the displacement would hold of the outside air, no unit.</summary>
    public required double VolumetricEfficiency { get; init; }

    /// <summary>Mass in the cylinder when the intake shuts, kg.</summary>
    public required double TrappedMass { get; init; }

    /// <summary>Burnt share of it.</summary>
    public required double Residual { get; init; }

    /// <summary>Mass pushed back through the intake over mass that came in through it, no unit.</summary>
    public required double Reversion { get; init; }

    /// <summary>Fresh gas that left through the exhaust over fresh gas that came in; 0.7 percent is what the burn leaves, no unit.</summary>
    public required double FreshLost { get; init; }

    /// <summary>Pa.</summary>
    public required double PeakPressure { get; init; }

    /// <summary>Work of a whole cycle over displacement, Pa.</summary>
    public required double IndicatedPressure { get; init; }

    /// <summary>The part of it the gas exchange cost, negative where it costs, Pa.</summary>
    public required double PumpingPressure { get; init; }

    /// <summary>What the moving parts cost, Pa.</summary>
    public required double FrictionPressure { get; init; }

    /// <summary>N m, whole engine.</summary>
    public required double Torque { get; init; }

    /// <summary>W, whole engine.</summary>
    public required double Power { get; init; }

    /// <summary>Cycles run.</summary>
    public required int Cycles { get; init; }

    /// <summary>Largest change of a cylinder's charge or work from the last cycle but one to the last, relative, no unit.</summary>
    public required double LastChange { get; init; }

    /// <summary>Time steps taken.</summary>
    public required int Steps { get; init; }

    /// <summary>Whether the cycles came to repeat within the tolerance asked for.</summary>
    public required bool IsSettled { get; init; }

    /// <summary>All its figures are numbers: a cylinder that takes in nothing has no share of it pushed back.</summary>
    internal bool IsFinite => double.IsFinite(Reversion) && double.IsFinite(FreshLost) && double.IsFinite(Torque) && double.IsFinite(LastChange);

    /// <summary>Pa.</summary>
    public double BrakePressure => IndicatedPressure - FrictionPressure;

    /// <summary>1/min.</summary>
    public double RevolutionsAMinute => 60 * TurnsASecond;
}
