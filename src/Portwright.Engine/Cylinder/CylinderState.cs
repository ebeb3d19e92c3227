using Portwright.Engine.Charge;

namespace Portwright.Engine.Cylinder;

/// <summary>What flowed into the cylinder through its valves during a step; negative what flowed out.</summary>
/// <param name="Mass">kg.</param>
/// <param name="Enthalpy">Total enthalpy it carried, J, by the cylinder's own <see cref="ChargeGas"/>: kilograms times h at total temperature.</param>
/// <param name="BurntMass">kg.</param>
public readonly record struct ValveFlow(double Mass, double Enthalpy, double BurntMass)
{
    public static readonly ValveFlow None;

    public static ValveFlow operator +(ValveFlow a, ValveFlow b) => new(a.Mass + b.Mass, a.Enthalpy + b.Enthalpy, a.BurntMass + b.BurntMass);
}

/// <summary>State of the gas in the cylinder.</summary>
/// <param name="Pressure">Pa.</param>
/// <param name="Temperature">K.</param>
/// <param name="Burnt">Mass fraction.</param>
/// <param name="Volume">m3.</param>
public readonly record struct CylinderState(double Pressure, double Temperature, double Burnt, double Volume);

/// <summary>What the cylinder held when its intake closed.</summary>
/// <param name="Mass">kg, without fuel that comes in later.</param>
/// <param name="State">Its <see cref="CylinderState.Burnt"/> is the residual: burnt gas kept from the cycle before or drawn back in.</param>
public readonly record struct TrappedCharge(double Mass, CylinderState State);
