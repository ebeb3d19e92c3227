using Portwright.Engine.Gas;
using Portwright.Engine.Gas.Ends;
using Xunit;

namespace Portwright.Engine.Tests.Gas;

public sealed class CollectorTests
{
    private static readonly PerfectGas Gas = PerfectGas.Air;

    // Borda and Carnot: the loss of a sudden enlargement is (1 - A1/A2)^2 dynamic heads of the narrow pipe (Idelchik, Handbook of Hydraulic Resistance, diagram 4-1, from memory).
    [Theory]
    [InlineData(0.3)]
    [InlineData(0.5)]
    [InlineData(0.8)]
    public void One_pipe_into_a_wider_one_loses_what_a_sudden_enlargement_does(double share)
    {
        var (narrow, wide) = Steady(1, share, 0);
        double head = 0.5 * narrow.Density * narrow.Velocity * narrow.Velocity;
        var loss = (narrow.Pressure + head - wide.Pressure - 0.5 * wide.Density * wide.Velocity * wide.Velocity) / head;
        // Slow air (Mach 0.1): compressible terms are a few thousandths of a head.
        Assert.InRange(narrow.Mach(1.4), 0.03, 0.15);
        Assert.Equal((1 - share) * (1 - share), loss, 0.01);
    }

    [Fact]
    public void Two_pipes_alongside_into_their_own_section_lose_nothing()
    {
        var (narrow, wide) = Steady(2, 0.5, 0);
        var head = 0.5 * narrow.Density * narrow.Velocity * narrow.Velocity;
        Assert.Equal(0, (narrow.Pressure - wide.Pressure) / head, 0.01);
    }

    [Fact]
    public void From_the_side_all_of_the_stream_s_own_speed_is_lost()
    {
        // p - p_c = rho u_c^2, with the collector's own speed alone.
        var (narrow, wide) = Steady(2, 0.5, Math.PI / 2);
        Assert.Equal(wide.Density * wide.Velocity * wide.Velocity, narrow.Pressure - wide.Pressure, 0.02 * wide.Density * wide.Velocity * wide.Velocity);
    }

    [Fact]
    public void Mass_and_energy_that_go_in_come_out_while_waves_run_both_ways()
    {
        var (network, pipes) = Made(3, 0.4, 0.2, 400);
        // Closed at all outer ends: shot off with three pressures.
        for (var i = 0; i < pipes.Length; i++) pipes[i].Fill(Gas.State(100_000 + 40_000 * i, 300 + 50 * i, 0, i == 2 ? 1 : 0));
        double mass = pipes.Sum(p => p.Mass), energy = pipes.Sum(p => p.Energy), burnt = pipes.Sum(p => p.BurntMass);
        for (var i = 0; i < 4_000; i++) network.Step();
        Assert.Equal(mass, pipes.Sum(p => p.Mass), 1e-12 * mass);
        Assert.Equal(energy, pipes.Sum(p => p.Energy), 1e-12 * energy);
        Assert.Equal(burnt, pipes.Sum(p => p.BurntMass), 1e-12 * mass);
    }

    [Fact]
    public void Gas_at_rest_stays_at_rest()
    {
        var (network, pipes) = Made(3, 0.4, 0.2, 20);
        foreach (var p in pipes) p.Fill(Gas.State(101_325, 300));
        for (var i = 0; i < 200; i++) network.Step();
        Assert.All(pipes, p => Assert.InRange(Math.Abs(p[p.Cells / 2].Velocity), 0, 1e-10));
    }

    private static (GasState Narrow, GasState Wide) Steady(int feeding, double share, double angle)
    {
        var (network, pipes) = Made(feeding, share, angle, 20);
        foreach (var pipe in pipes[1..]) network.Join(PipeEnd.First(pipe), new Room(new(101_325, 293.15)));
        network.Join(PipeEnd.Last(pipes[0]), new Room(new(100_700, 293.15)));
        network.Run(0.6);
        return (pipes[1][pipes[1].Cells - 1], pipes[0][0]);
    }

    /// <summary>The collector first, then those that feed it, each of a share of its section.</summary>
    private static (PipeNetwork Network, Pipe[] Pipes) Made(int feeding, double share, double angle, int cells)
    {
        var collector = new Pipe(PipeShape.Straight(0.2, cells, 0.06), Gas, null, "collector");
        Pipe[] pipes = [.. Enumerable.Range(1, feeding).Select(i => new Pipe(PipeShape.Straight(0.2, cells, 0.06 * Math.Sqrt(share)), Gas, null, $"pipe {i}"))];
        var network = new PipeNetwork();
        network.Add([collector, .. pipes]);
        network.Collect(PipeEnd.First(collector), angle, [.. pipes.Select(PipeEnd.Last)]);
        return (network, [collector, .. pipes]);
    }
}
