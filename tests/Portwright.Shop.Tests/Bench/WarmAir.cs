using Portwright.Physics.Metering;
using Portwright.Physics.TestPiece;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Units;

namespace Portwright.Shop.Tests.Bench;

/// <summary>Whose thermometer speaks for the air at the meter and in the plenum, and what it costs where none does.</summary>
public sealed class WarmAir
{
    private const double Area = 0.0011;

    public static TheoryData<string> Kinds => [.. Ranges.OfEachKind.Select(r => r.Name)];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void One_thermometer_speaks_for_plenum_and_meter_where_the_meter_takes_the_plenums_air(string kind)
    {
        foreach (var direction in new[] { FlowDirection.Blow, FlowDirection.Draw })
        {
            var bench = new SimulatedBench(Of(kind));
            var warm = bench.Room.Temperature + 8;
            bench.Warmth = (warm, warm);
            Assert.Equal(Area, Reduced(bench, direction, plenum: warm).EffectiveArea.Value, 1e-9 * Area);
            Assert.Equal(Area, Reduced(bench, direction, meter: warm).EffectiveArea.Value, 1e-9 * Area);
            Assert.Equal(Area, Reduced(bench, direction, meter: warm, plenum: warm).EffectiveArea.Value, 1e-9 * Area);
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_meter_before_the_blower_breathes_the_rooms_air_whatever_the_plenum_says(string kind)
    {
        var bench = new SimulatedBench(Of(kind) with { BlowInlet = MeterInlet.Room });
        var warm = bench.Room.Temperature + 8;
        bench.Warmth = (warm, null);
        Assert.Equal(Area, Reduced(bench, FlowDirection.Blow, plenum: warm).EffectiveArea.Value, 1e-9 * Area);

        // Its own thermometer reads the room's air and says nothing of the plenum: the port is then 8 K out, half a share of 294.
        var meterAlone = Reduced(bench, FlowDirection.Blow, meter: bench.Room.Temperature).EffectiveArea;
        // A display that restates by itself took no temperature from anybody.
        Assert.Equal(kind == "direct, restated" ? 0 : -0.0135, meterAlone.Value / Area - 1, 5e-4);
        Assert.True(Math.Abs(meterAlone.Value - Area) < 2 * meterAlone.StandardUncertainty, "The doubt does not allow for the blower's warmth.");
    }

    [Fact]
    public void Blown_air_nobody_took_the_temperature_of_costs_doubt_where_the_weather_does_not_cancel_and_it_is_said()
    {
        var readout = new SimulatedBench(Of("direct, actual"));
        var warm = readout.Room.Temperature + 5;
        readout.Warmth = (warm, warm);
        var unread = Reduced(readout, FlowDirection.Blow);
        Assert.Equal(0.0085, unread.EffectiveArea.Value / Area - 1, 3e-4);
        // 28 inH2O warm the air by 5.8 K even in an ideal blower: half of its share of 294 K.
        Assert.Equal(0.0098, Share(unread, "warmth of the blower"), 1e-4);
        Assert.Contains(unread.Remarks, r => r.StartsWith("The blower warms the air", StringComparison.Ordinal));
        Assert.DoesNotContain(Reduced(readout, FlowDirection.Blow, plenum: warm).Remarks, r => r.Contains("blower", StringComparison.Ordinal));
        Assert.DoesNotContain(Reduced(readout, FlowDirection.Draw).Remarks, r => r.Contains("blower", StringComparison.Ordinal));

        // A tenth of the test pressure warms the air by a tenth: under a quarter of a percent nobody is told.
        Assert.DoesNotContain(Reduced(readout, FlowDirection.Blow, testPressure: 6).Remarks, r => r.Contains("blower", StringComparison.Ordinal));
        Assert.Contains(Reduced(readout, FlowDirection.Blow, testPressure: 8).Remarks, r => r.Contains("blower", StringComparison.Ordinal));

        var series = Reduced(new SimulatedBench(Of("plate")), FlowDirection.Blow);
        Assert.True(Share(series, "warmth of the blower") < 1e-4, "In series the warmth cancels.");
        Assert.DoesNotContain(series.Remarks, r => r.Contains("blower", StringComparison.Ordinal));
    }

    [Fact]
    public void What_one_thermometer_says_for_both_is_half_a_kelvin_in_doubt()
    {
        var bench = new SimulatedBench(Of("plate"));
        var room = bench.Room.Temperature;
        const string between = "air between plenum and meter";
        // A plate's flow goes as the square root of its density: half of 0.5 K in 294.5 K.
        const double share = 0.5 * 0.5 / 294.5;
        Assert.Equal(share, Share(Reduced(bench, FlowDirection.Blow, plenum: room), between), 1e-5);
        Assert.Equal(share, Share(Reduced(bench, FlowDirection.Blow, meter: room), between), 1e-5);
        Assert.Equal(share, Share(Reduced(bench, FlowDirection.Draw, plenum: room), between), 1e-5);
        Assert.Equal(share, Share(Reduced(bench, FlowDirection.Blow), between), 1e-5);
        Assert.Equal(0, Share(Reduced(bench, FlowDirection.Draw), between));
        Assert.Equal(0, Share(Reduced(bench, FlowDirection.Blow, meter: room, plenum: room), between));
    }

    [Fact]
    public void The_blowers_warmth_is_one_cause_of_a_bench_and_cancels_between_two_cuts()
    {
        var bench = new SimulatedBench(Of("direct, actual"));
        var (first, second) = (Reduced(bench, FlowDirection.Blow).EffectiveArea, Reduced(bench, FlowDirection.Blow).EffectiveArea);
        Assert.DoesNotContain((first - second).Contributions, c => c.Source.StartsWith("warmth of the blower", StringComparison.Ordinal) && Math.Abs(c.Amount) > 1e-12);
    }

    private static RangeCard Of(string kind) => Ranges.OfEachKind.Single(r => r.Name == kind);

    private static double Share(Estimate area, string cause) =>
        Math.Abs(area.Contributions.Where(c => c.Source.StartsWith(cause, StringComparison.Ordinal)).Sum(c => c.Amount)) / area.Value;

    private static double Share(Shop.Reduction.ReducedReading reading, string cause) => Share(reading.EffectiveArea, cause);

    private static Shop.Reduction.ReducedReading Reduced(SimulatedBench bench, FlowDirection direction, double? meter = null, double? plenum = null, double testPressure = 28)
    {
        Typed? Kelvin(double? t) => t is { } k ? Typed.Of(k, "K") : null;
        var sweep = bench.Sweep(bench.Cut(0), direction, testPressure);
        bench.Add(new FlowReading(sweep, Typed.Of(0.005, "m"), bench.Shows(Area, direction, testPressure), MeterTemperature: Kelvin(meter), PlenumTemperature: Kelvin(plenum)));
        var ledger = bench.Ledger;
        return SweepReduction.Reduce(ledger, ledger.Get<Sweep>(sweep)).Curve.Points.Single().Readings.Single();
    }
}
