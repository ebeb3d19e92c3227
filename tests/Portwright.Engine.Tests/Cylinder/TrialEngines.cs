using Portwright.Engine.Charge;
using Portwright.Engine.Cylinder;
using Portwright.Physics.Crank;

namespace Portwright.Engine.Tests.Cylinder;

/// <summary>Invented engines to try the cylinder on.</summary>
internal static class TrialEngines
{
    public const double Degree = Math.PI / 180;

    public static readonly CylinderSpace Space = new(0.09, new SliderCrank(0.08, 0.135), 10.5);

    public static readonly ChargeGas PerfectAir = ChargeGas.Constant(1.4, 287.05);

    /// <summary>Fired, with walls and real gases, fuel coming in as it burns.</summary>
    public static CylinderPlan Fired { get; } = new(Space, ChargeGas.Of(Fuel.Petrol, 1.1), 230 * Degree, 500 * Degree)
    {
        Burn = WiebeBurn.About(368 * Degree, 27 * Degree),
        HeatOfFresh = Fuel.Petrol.HeatPerAir(1.1),
        FuelPerFresh = 1.1 / Fuel.Petrol.AirForFuel,
        Walls = WallTemperatures.Usual,
    };

    /// <summary>Shut all round: no valve opens.</summary>
    public static CylinderPlan Shut(ChargeGas gas) => new(Space, gas, 0, 4 * Math.PI);

    /// <summary>A made-up flow: in during the intake stroke, out during the exhaust stroke, kg a radian of crank.</summary>
    public static ValveFlow Flow(CylinderPlan plan, CylinderState gas, double crank, double turn)
    {
        const double inward = 2e-4, outward = 1.9e-4;
        if (crank < Math.PI)
        {
            var mass = inward * Math.Sin(crank) * turn;
            return new(mass, mass * plan.Gas.Enthalpy(300, 0.02), 0.02 * mass);
        }

        if (crank < 3 * Math.PI) return ValveFlow.None;
        var leaving = outward * Math.Sin(crank) * turn;
        return new(leaving, leaving * plan.Gas.Enthalpy(gas.Temperature, gas.Burnt), leaving * gas.Burnt);
    }

    /// <summary>One revolution pair from 0 in equal steps.</summary>
    public static CylinderGas Cycle(CylinderPlan plan, int steps, double revolutionsASecond = 100, double temperature = 900, double pressure = 1.05e5, double burnt = 0.9)
    {
        CylinderGas gas = new(plan, revolutionsASecond, 0, pressure, temperature, burnt);
        Run(plan, gas, steps, revolutionsASecond);
        return gas;
    }

    public static void Run(CylinderPlan plan, CylinderGas gas, int steps, double revolutionsASecond)
    {
        double turn = 4 * Math.PI / steps, step = turn / (2 * Math.PI * revolutionsASecond);
        for (var i = 0; i < steps; i++)
        {
            var midway = gas.Midway(step);
            gas.Step(step, Flow(plan, midway, gas.Crank + turn / 2, turn));
        }
    }
}
