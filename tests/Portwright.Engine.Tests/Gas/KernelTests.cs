using Portwright.Engine.Gas;
using Portwright.Engine.Gas.Ends;

namespace Portwright.Engine.Tests.Gas;

public sealed class KernelTests
{
    private static readonly PerfectGas Gas = PerfectGas.Air;

    /// <summary>One number at a time is the reference; sums inside a vector differ only in the last places.</summary>
    [Theory]
    [InlineData(4, 30), InlineData(4, 61), InlineData(8, 30), InlineData(8, 61), InlineData(8, 64), InlineData(8, 7), InlineData(4, 4)]
    public void Any_width_gives_what_one_number_at_a_time_gives(int lanes, int cells)
    {
        var (one, reference) = Rough(1, cells);
        var (wide, pipe) = Rough(lanes, cells);
        for (var i = 0; i < 300; i++)
        {
            var step = Math.Min(one.LongestStep, wide.LongestStep);
            one.Step(step);
            wide.Step(step);
        }

        for (var i = 0; i < cells; i++)
        {
            Assert.Equal(1, pipe[i].Density / reference[i].Density, 1e-10);
            Assert.Equal(1, pipe[i].Pressure / reference[i].Pressure, 1e-10);
            Assert.Equal(reference[i].Velocity, pipe[i].Velocity, 1e-8);
            Assert.Equal(reference[i].Burnt, pipe[i].Burnt, 1e-10);
        }
    }

    [Fact]
    public void A_step_allocates_nothing()
    {
        var (network, pipe) = Rough(0, 60);
        var other = new Pipe(PipeShape.Straight(0.2, 30, 0.03), Gas);
        network.Add(other).Join(PipeEnd.First(other), new Plenum(1e-3, Gas, new(120_000, 300)));
        for (var i = 0; i < 100; i++) network.Step();
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 1_000; i++) network.Step();
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        Assert.True(pipe[0].Density > 0);
    }

    [Fact]
    public void A_pipe_seen_from_its_other_end_is_the_same_pipe()
    {
        static double[] Pressures(bool turned)
        {
            var pipe = new Pipe(PipeShape.Cone(0.4, 50, turned ? 0.05 : 0.03, turned ? 0.03 : 0.05), Gas, new(3e-5));
            for (var i = 0; i < 50; i++)
            {
                var x = turned ? 49 - i : i;
                pipe[i] = Gas.State(101_325 + (x < 12 ? 60_000 : 0), 300 + x, turned ? -20 : 20);
            }

            var network = new PipeNetwork().Add(pipe).Join(turned ? PipeEnd.Last(pipe) : PipeEnd.First(pipe), new Room(new(101_325, 293.15)));
            network.Run(0.002);
            return [.. Enumerable.Range(0, 50).Select(i => pipe[turned ? 49 - i : i].Pressure)];
        }

        Assert.All(Pressures(false).Zip(Pressures(true)), pair => Assert.Equal(1, pair.First / pair.Second, 1e-10));
    }

    [Fact]
    public void Two_pipes_joined_flush_are_nearly_one_pipe()
    {
        static void Start(Pipe pipe, double offset)
        {
            for (var i = 0; i < pipe.Cells; i++) pipe[i] = Gas.State(101_325 + 8_000 * Math.Exp(-Math.Pow((pipe.Position(i) + offset - 0.25) / 0.05, 2)), 300);
        }

        Pipe whole = new(PipeShape.Straight(1, 200, 0.04), Gas), left = new(PipeShape.Straight(0.5, 100, 0.04), Gas), right = new(PipeShape.Straight(0.5, 100, 0.04), Gas);
        Start(whole, 0);
        Start(left, 0);
        Start(right, 0.5);
        new PipeNetwork().Add(whole).Run(0.0015);
        new PipeNetwork().Add(left, right).JoinAtOnePoint(PipeEnd.Last(left), PipeEnd.First(right)).Run(0.0015);
        for (var i = 0; i < 200; i++) Assert.Equal(whole[i].Pressure, (i < 100 ? left[i] : right[i - 100]).Pressure, 25.0);
    }

    private static (PipeNetwork Network, Pipe Pipe) Rough(int lanes, int cells)
    {
        var pipe = new Pipe(PipeShape.Of(0.5, cells, x => 1e-3 * (1 + 0.4 * Math.Sin(15 * x))), Gas, new(4e-5, BendLoss: 0.5, Temperature: 350));
        for (var i = 0; i < cells; i++) pipe[i] = Gas.State(i < cells / 3 ? 250_000 : 101_325, i < cells / 2 ? 700 : 300, 30, i % 2);
        var network = new PipeNetwork(lanes).Add(pipe)
            .Join(PipeEnd.First(pipe), new Room(new(180_000, 400, 1)), new() { AreaIntoPipe = 4e-4, AreaOutOfPipe = 5e-4 })
            .Join(PipeEnd.Last(pipe), new Room(new(101_325, 293.15)));
        return (network, pipe);
    }
}
