using Portwright.Engine.Charge;

namespace Portwright.Engine.Cylinder;

/// <summary>What one cylinder is made of and does every cycle.</summary>
/// <param name="IntakeCloses">Crank angle from which both valves are shut, rad, 0 to 4 pi.</param>
/// <param name="ExhaustOpens">Crank angle until which both are shut, rad, above <paramref name="IntakeCloses"/> and up to 4 pi.</param>
public sealed record CylinderPlan(CylinderSpace Space, ChargeGas Gas, double IntakeCloses, double ExhaustOpens)
{
    /// <summary>Null: the cylinder is motored.</summary>
    public WiebeBurn? Burn { get; init; }

    /// <summary>
    /// Heat each kilogram of fresh gas sets free when it burns, J/kg, times the share that finds air: <see cref="Fuel.HeatPerAir"/> where fresh gas is air and the fuel comes in as it
    /// burns (<see cref="FuelPerFresh"/>), <see cref="Fuel.HeatPerCharge"/> where fresh gas is air and fuel together.
    /// </summary>
    public double HeatOfFresh { get; init; }

    /// <summary>Fuel that comes in with each kilogram of fresh gas as it burns, kg, zero or above: richness / <see cref="Fuel.AirForFuel"/> where fresh gas is air.</summary>
    /// <remarks>
    /// It comes in liquid at 298.15 K, that is with no enthalpy, and leaves as burnt gas. So its vapour takes no room from the air (about 2 percent with petrol, 12 with methanol, less
    /// where part is still liquid when the intake closes) and its evaporation cools nothing: both errors partly cancel.
    /// </remarks>
    public double FuelPerFresh { get; init; }

    /// <summary>Null: no heat passes the walls.</summary>
    public WallTemperatures? Walls { get; init; }

    /// <summary>Factor on the heat to the walls; 1 as Woschni has it, no unit.</summary>
    public double WallHeatScale { get; init; } = 1;

    /// <param name="crank">Crank angle, rad, 0 to 4 pi.</param>
    public bool IsShut(double crank) => crank >= IntakeCloses && crank < ExhaustOpens;
}
