using Portwright.Engine.Gas;
using Portwright.Engine.Gas.Ends;

namespace Portwright.Engine.Tests.Gas;

public sealed class ConservationTests
{
    /// <summary>A vessel, a valve, three pipes that meet and two blind ends: what sloshes about for a million steps is neither made nor lost.</summary>
    [Fact]
    public void Mass_energy_and_burnt_gas_are_kept_over_a_million_steps()
    {
        var gas = PerfectGas.Air;
        Pipe first = new(PipeShape.Cone(0.3, 8, 0.03, 0.04), gas), second = new(PipeShape.Straight(0.25, 6, 0.035), gas), third = new(PipeShape.Straight(0.2, 5, 0.03), gas);
        first.Fill(gas.State(180_000, 600, 0, 1));
        second.Fill(gas.State(150_000, 500, 0, 0.8));
        var plenum = new Plenum(5e-4, gas, new(101_325, 300));
        var valve = new Opening { AreaIntoPipe = 4e-4, AreaOutOfPipe = 3e-4 };
        var network = new PipeNetwork().Add(first, second, third)
            .Join(PipeEnd.First(second), plenum, valve)
            .JoinAtOnePoint(PipeEnd.Last(first), PipeEnd.Last(second), PipeEnd.First(third));
        Pipe[] pipes = [first, second, third];
        double mass = plenum.Mass + pipes.Sum(p => p.Mass), energy = plenum.Energy + pipes.Sum(p => p.Energy), burnt = plenum.BurntMass + pipes.Sum(p => p.BurntMass);
        var moved = 0.0;
        for (var i = 0; i < 1_000_000; i++)
        {
            network.Step();
            moved += Math.Abs(valve.MassFlow);
        }

        Assert.True(moved > 0);
        Assert.Equal(1, (plenum.Mass + pipes.Sum(p => p.Mass)) / mass, 1e-11);
        Assert.Equal(1, (plenum.Energy + pipes.Sum(p => p.Energy)) / energy, 1e-11);
        Assert.Equal(1, (plenum.BurntMass + pipes.Sum(p => p.BurntMass)) / burnt, 1e-11);
        // Without friction it never quite comes to rest, but burnt gas has reached the vessel.
        Assert.InRange(plenum.Gas.Burnt, 0.02, 0.8);
    }

    [Fact]
    public void What_the_room_takes_is_what_the_pipe_lost()
    {
        var gas = PerfectGas.Air;
        var pipe = new Pipe(PipeShape.Cone(0.5, 40, 0.05, 0.03), gas, new(2e-5, BendLoss: 0.2));
        pipe.Fill(gas.State(300_000, 900, 0, 0.7));
        Room left = new(new(101_325, 293.15)), right = new(new(95_000, 293.15));
        double mass = pipe.Mass, energy = pipe.Energy, burnt = pipe.BurntMass;
        var network = new PipeNetwork().Add(pipe).Join(PipeEnd.First(pipe), left).Join(PipeEnd.Last(pipe), right, new() { AreaIntoPipe = 2e-4, AreaOutOfPipe = 4e-4 });
        network.Run(0.02);
        Assert.Equal(mass, pipe.Mass + left.MassTaken + right.MassTaken, 1e-13 * mass);
        Assert.Equal(energy, pipe.Energy + left.EnergyTaken + right.EnergyTaken, 1e-12 * energy);
        Assert.Equal(burnt, pipe.BurntMass + left.BurntMassTaken + right.BurntMassTaken, 1e-13 * burnt);
        Assert.True(right.MassTaken > 0.1 * mass);
    }
}
