using Portwright.Engine.Charge;
using Portwright.Engine.Cylinder;
using Portwright.Engine.Gas;
using Portwright.Engine.Gas.Ends;

namespace Portwright.Engine.Runs;

/// <summary>A cylinder as one of its pipes sees it: where gas with temperature-dependent heat capacity meets the pipe's constant one.</summary>
/// <remarks>What flows keeps its mass, composition and total temperature; its enthalpy is counted by each side's own heat capacity.</remarks>
internal sealed class CylinderMouth(RunningCylinder cylinder, ChargeGas charge, PerfectGas pipe) : Reservoir
{
    /// <summary>What flowed in since <see cref="Clear"/>; negative what flowed out.</summary>
    public ValveFlow Flow { get; private set; }

    /// <summary>Mass that has come in through this mouth in the cycle, kg.</summary>
    public double MassIn { get; private set; }

    /// <summary>Mass that has left through it, kg.</summary>
    public double MassOut { get; private set; }

    /// <summary>Burnt mass that has come in and gone out, kg.</summary>
    public (double In, double Out) Burnt { get; private set; }

    public override GasAtRest Midway(double step)
    {
        var gas = cylinder.Midway(step);
        return new(gas.Pressure, gas.Temperature, gas.Burnt);
    }

    public override void Take(double mass, double energy, double burntMass, double step)
    {
        if (mass == 0) return;
        var burnt = Math.Clamp(burntMass / mass, 0, 1);
        var temperature = energy / (mass * pipe.HeatCapacity);
        Flow += new ValveFlow(mass, mass * charge.Enthalpy(temperature, burnt), burntMass);
        if (mass > 0) (MassIn, Burnt) = (MassIn + mass, (Burnt.In + burntMass, Burnt.Out));
        else (MassOut, Burnt) = (MassOut - mass, (Burnt.In, Burnt.Out - burntMass));
    }

    public void Clear() => Flow = ValveFlow.None;

    public void ClearCycle() => (MassIn, MassOut, Burnt) = (0, 0, (0, 0));
}
