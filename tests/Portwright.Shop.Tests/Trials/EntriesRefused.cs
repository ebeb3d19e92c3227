using Portwright.Physics.TestPiece;
using Portwright.Shop.Record;
using Portwright.Shop.Trials;
using Portwright.Shop.Units;

namespace Portwright.Shop.Tests.Trials;

/// <summary>What cannot be is refused while the porter still stands before the gauge; what only surprises is not.</summary>
public sealed class EntriesRefused
{
    [Theory]
    [InlineData(0, true)]
    [InlineData(-0.001, true)]
    [InlineData(0.0001, false)]
    [InlineData(0.0499, false)]
    [InlineData(0.0501, true)]
    public void A_wall_is_thicker_than_nothing_and_thinner_than_two_inches(double metres, bool refused) =>
        Assert.Equal(refused, Refuses(_ => new WallPoint(Guid.Empty, Guid.Empty, 6, Typed.Of(metres, "m"))) is not null);

    [Theory]
    [InlineData(0, true)]
    [InlineData(-1, true)]
    [InlineData(1, false)]
    public void A_port_holds_more_than_nothing(double cc, bool refused) => Assert.Equal(refused, Refuses(_ => new VolumeReading(Guid.Empty, Typed.Of(cc, "cc"))) is not null);

    /// <summary>A ball in the port takes flow, never all of it: a reading at the leak is a slip.</summary>
    [Theory]
    [InlineData(0.0005, false)]
    [InlineData(0.00001, false)]
    [InlineData(-0.00001, true)]
    public void A_reading_with_the_ball_in_lies_over_the_leak(double area, bool refused) => Assert.Equal(refused, Refuses(bench =>
    {
        var cut = bench.Cut(0);
        bench.ReadLeak(bench.Sweep(cut));
        var setting = new BenchSetting(bench.BenchId, FlowDirection.Draw, Typed.Of(0.010, "m"), Typed.Of(28, "inH2O"), bench.Range.Name);
        var check = bench.Add(new BallCheck(cut, setting, Typed.Of(0.5, "in"), bench.Air()));
        return new BallReading(check, null, null, bench.Shows(area, FlowDirection.Draw));
    }) is not null);

    /// <summary>A plate that reads no more than the leak gives no factor.</summary>
    [Theory]
    [InlineData(0.001, false)]
    [InlineData(-0.00001, true)]
    public void A_calibration_reads_more_than_the_leak(double area, bool refused) => Assert.Equal(refused, Refuses(bench => new Calibration(
        bench.BenchId, bench.Range.Name, bench.Today, [bench.ReadPlate("number one", area)], bench.Air(), Leak: bench.ReadPlate("", 0))) is not null);

    /// <summary>Drawn through a port air is as fast as sound where the test pressure is 0.47 of the room's (1 - 0.528): no bench comes near it, a slip of the pen does.</summary>
    [Theory]
    [InlineData(0.46, false)]
    [InlineData(0.48, true)]
    public void A_test_pressure_that_chokes_any_port_is_refused(double share, bool refused) => Assert.Equal(refused, Refuses(bench =>
    {
        var sweep = bench.Sweep(bench.Cut(0));
        bench.ReadLeak(sweep);
        return new FlowReading(sweep, Typed.Of(0.010, "m"), bench.Shows(0.001, FlowDirection.Draw), "", Typed.Of(share * bench.Room.Pressure, "Pa"));
    }) is not null);

    private static string? Refuses(Func<SimulatedBench, Fact> fact)
    {
        var bench = new SimulatedBench(Ranges.OfEachKind[7], plates: [new CheckPlate("number one", 0.001, 1e-6, "certificate 12, invented")]) { LeakArea = 5e-5 };
        var made = fact(bench);
        return Trial.Refuses(bench.Ledger, Entry.About(Guid.CreateVersion7(), bench.JobId, made, SimulatedBench.Morning.AddHours(5)));
    }
}
