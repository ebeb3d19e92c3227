using CsCheck;
using Portwright.Engine.Gas;
using Portwright.Engine.Gas.Ends;

namespace Portwright.Engine.Tests.Gas;

public sealed class StillGasTests
{
    [Theory]
    [InlineData(1), InlineData(4), InlineData(8)]
    public void Gas_at_rest_in_a_tapered_rough_pipe_stays_at_rest_to_the_last_bit(int lanes)
    {
        var pipe = new Pipe(
            PipeShape.Of(0.4, 61, x => 1.2e-3 * (1 + 0.5 * Math.Sin(20 * x) + x)), PerfectGas.Air, new(5e-5, BendLoss: 0.3, Temperature: 400));
        // One pressure, three temperatures, two compositions.
        for (var i = 0; i < pipe.Cells; i++) pipe[i] = PerfectGas.Air.State(101_325, 300 + 200 * (i / 20), 0, i / 31);
        var network = new PipeNetwork(lanes).Add(pipe);
        var before = Enumerable.Range(0, pipe.Cells).Select(i => pipe[i]).ToArray();
        for (var i = 0; i < 5_000; i++) network.Step();
        Assert.All(Enumerable.Range(0, pipe.Cells), i =>
        {
            Assert.Equal(0.0, pipe[i].Velocity);
            Assert.Equal(before[i].Density, pipe[i].Density);
            Assert.Equal(before[i].Pressure, pipe[i].Pressure, 1e-10);
            Assert.Equal(before[i].Burnt, pipe[i].Burnt, 1e-15);
        });
    }

    [Fact]
    public void Pipe_open_to_the_room_at_the_room_s_pressure_does_not_stir() => Gen.Select(Gen.Double[5e4, 3e5], Gen.Double[250, 1200]).Sample((p, t) =>
    {
        var pipe = new Pipe(PipeShape.Cone(0.3, 20, 0.03, 0.05), PerfectGas.Air);
        pipe.Fill(PerfectGas.Air.State(p, t));
        var network = new PipeNetwork().Add(pipe).Join(PipeEnd.First(pipe), new Room(new(p, 293))).Join(PipeEnd.Last(pipe), new Room(new(p, t)), new() { AreaIntoPipe = 3e-4, AreaOutOfPipe = 2e-4 });
        for (var i = 0; i < 300; i++) network.Step();
        // A last place of pressure is worth 1e-14 of the speed of sound.
        Assert.All(Enumerable.Range(0, 20), i => Assert.True(Math.Abs(pipe[i].Velocity) < 1e-9, $"{pipe[i]}"));
    }, iter: 20);
}
