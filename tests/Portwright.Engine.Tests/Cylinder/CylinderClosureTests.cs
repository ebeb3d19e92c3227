using CsCheck;
using Portwright.Engine.Cylinder;
using static Portwright.Engine.Tests.Cylinder.TrialEngines;

namespace Portwright.Engine.Tests.Cylinder;

public sealed class CylinderClosureTests
{
    [Fact]
    public void Mass_burnt_mass_and_energy_close_to_rounding_with_flow_burning_fuel_and_walls() =>
        Gen.Select(Gen.Int[300, 3000], Gen.Double[10, 150], Gen.Double[350, 1200], Gen.Double[0, 1]).Sample((steps, turns, temperature, burnt) =>
        {
            CylinderGas gas = new(Fired, turns, 0, 1.05e5, temperature, burnt);
            double mass = gas.Mass, burntMass = gas.BurntMass, energy = gas.Energy;
            Run(Fired, gas, steps, turns);

            var sum = gas.Totals;
            Assert.Equal(gas.Mass - mass, sum.Mass + sum.FuelMass, 1e-12 * mass);
            Assert.Equal(gas.BurntMass - burntMass, sum.BurntMass + sum.FreshThatBurnt + sum.FuelMass, 1e-12 * mass);
            var whole = Math.Abs(sum.Enthalpy) + sum.HeatSetFree + Math.Abs(sum.Work) + Math.Abs(sum.HeatToWalls);
            Assert.Equal(gas.Energy - energy, sum.Enthalpy + sum.HeatSetFree - sum.Work - sum.HeatToWalls, 1e-12 * whole);
        }, iter: 40);

    [Fact]
    public void Fuel_comes_in_with_the_fresh_gas_that_burns()
    {
        var sum = Cycle(Fired, 720).Totals;

        Assert.True(sum.FreshThatBurnt > 1e-4);
        Assert.Equal(Fired.FuelPerFresh * sum.FreshThatBurnt, sum.FuelMass, 1e-15);
        Assert.Equal(Fired.HeatOfFresh * sum.FreshThatBurnt, sum.HeatSetFree, 1e-9);
    }

    [Fact]
    public void Pumping_and_power_strokes_make_up_the_work()
    {
        CylinderGas gas = new(Fired, 100, 0, 1.05e5, 900, 0.9);
        const int steps = 1440;
        double turn = 4 * Math.PI / steps, step = turn / (2 * Math.PI * 100), pumping = 0, power = 0;
        for (var i = 0; i < steps; i++)
        {
            var before = gas.Totals.Work;
            var flow = Flow(Fired, gas.Midway(step), gas.Crank + turn / 2, turn);
            gas.Step(step, flow);
            if (i is < steps / 4 or >= 3 * steps / 4) pumping += gas.Totals.Work - before;
            else power += gas.Totals.Work - before;
        }

        Assert.Equal(pumping, gas.Totals.PumpingWork, 1e-9);
        Assert.Equal(power, gas.Totals.PowerWork, 1e-9);
        Assert.True(power > 0);
    }

    [Fact]
    public void What_was_trapped_is_the_state_when_the_intake_closed()
    {
        CylinderGas gas = new(Fired, 100, 0, 1.05e5, 900, 0.9);
        const int steps = 720;
        double turn = 4 * Math.PI / steps, step = turn / (2 * Math.PI * 100);
        while (gas.Crank < Fired.IntakeCloses) gas.Step(step, Flow(Fired, gas.Midway(step), gas.Crank + turn / 2, turn));
        var (mass, state) = (gas.Mass, gas.State);
        while (gas.Crank < 3 * Math.PI) gas.Step(step, ValveFlow.None);

        Assert.Equal(mass, gas.Trapped.Mass);
        Assert.Equal(state, gas.Trapped.State);
        Assert.InRange(gas.Trapped.State.Burnt, 0.02, 0.3);
        Assert.True(gas.State.Burnt > 0.98);
    }

    [Fact]
    public void No_step_allocates()
    {
        CylinderGas gas = new(Fired, 100, 0, 1.05e5, 900, 0.9);
        Run(Fired, gas, 720, 100);
        var before = GC.GetAllocatedBytesForCurrentThread();
        Run(Fired, gas, 720, 100);

        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
    }

    [Fact]
    public void More_flowing_out_than_was_there_is_refused()
    {
        CylinderGas gas = new(Fired, 100, 0, 1e5, 900);

        Assert.Throws<ArithmeticException>(() => gas.Step(1e-5, new(-2 * gas.Mass, 0, 0)));
        Assert.Throws<ArgumentOutOfRangeException>(() => gas.Step(0, ValveFlow.None));
    }
}
