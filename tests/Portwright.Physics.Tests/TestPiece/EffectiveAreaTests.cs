using CsCheck;
using Portwright.Physics.Air;
using Portwright.Physics.Metering;
using Portwright.Physics.TestPiece;
using Portwright.Physics.Tests.Metering;

namespace Portwright.Physics.Tests.TestPiece;

/// <summary>The effective area is the invariant: weather, test pressure and direction come and go, it stays.</summary>
public sealed class EffectiveAreaTests
{
    public static TheoryData<string> Meters => BenchMeters.Names;

    private static readonly Gen<TestConditions> AnyTest = Gen.Select(
        Weather.Any, Gen.Double[200, 16_000], Gen.Enum<FlowDirection>(), Gen.Double[-4, 25], Gen.Double[-4, 25], Gen.Int[0, 3],
        (room, dp, way, plenum, meter, inlet) => new TestConditions(room, dp, way, room.Temperature + plenum, room.Temperature + meter,
            inlet == 3 || (MeterInlet)inlet == MeterInlet.Room && way == FlowDirection.Draw ? null : (MeterInlet)inlet));

    /// <summary>Heywood's equation C.8 as printed, apart from the program's own way of writing it.</summary>
    private static double PrintedMassFlux(in AirState up, double down)
    {
        double k = up.HeatCapacityRatio, r = down / up.Pressure;
        return up.Pressure / Math.Sqrt(up.GasConstant * up.Temperature)
            * Math.Sqrt(2 * k / (k - 1) * (Math.Pow(r, 2 / k) - Math.Pow(r, (k + 1) / k)));
    }

    /// <summary>What stands on the meter: a display that restates shows the volume of standard air that the area would pass at the pressure it restates at, whatever air and pressure it is read in.</summary>
    private static double Shows(IMeter meter, double area, double factor, in TestConditions c)
    {
        if (meter is not DirectReadout { RestatedIn: { } air, RestatedAt: var at }) return MeterReading.For(meter, area / factor * PrintedMassFlux(c.TestPieceUpstream, c.TestPieceDownstreamPressure), c);
        var (ahead, behind) = c.Direction == FlowDirection.Draw ? (air.Pressure, air.Pressure - at) : (air.Pressure + at, air.Pressure);
        return area / factor * PrintedMassFlux(AirState.Dry(ahead, air.Temperature), behind) / air.Density;
    }

    [Theory, MemberData(nameof(Meters))]
    public void A_known_area_is_recovered_in_any_weather_at_any_test_pressure_both_ways(string name)
    {
        var (meter, size) = BenchMeters.All[name];
        Gen.Select(AnyTest, Gen.Double[0.02, 0.6], Gen.Double[0, 0.05], Gen.Double[0.9, 1.1]).Sample((c, share, leakShare, factor) =>
        {
            double area = share * size, leak = leakShare * size;
            var massFlow = (area + leak) * PrintedMassFlux(c.TestPieceUpstream, c.TestPieceDownstreamPressure);
            var reading = Shows(meter, area + leak, factor, c);
            var got = TestPieceReduction.EffectiveArea(meter, reading, factor, c, leak);
            Assert.Equal(area, got.EffectiveArea, area * 1e-9);
            Assert.Equal(massFlow, got.MassFlow, massFlow * 1e-12);
        });
    }

    [Theory, MemberData(nameof(Meters))]
    public void A_day_of_drifting_weather_leaves_no_trend(string name)
    {
        var (meter, size) = BenchMeters.All[name];
        var area = 0.4 * size;
        foreach (var way in Enum.GetValues<FlowDirection>())
        {
            foreach (var room in Weather.OneDay)
            {
                var c = new TestConditions(room, 6974.49, way);
                var reading = Shows(meter, area, 1, c);
                Assert.Equal(area, TestPieceReduction.EffectiveArea(meter, reading, 1, c).EffectiveArea, area * 1e-9);
            }
        }
    }

    /// <summary>The counter-test: reduced with the morning's air, the same readings do drift, so the test above can fail.</summary>
    [Fact]
    public void A_readout_reduced_with_the_mornings_air_drifts_with_the_weather()
    {
        var areas = ReducedWithMorningAir(DirectReadout.ActualAtMeter);
        Assert.True(Math.Abs(areas[^1] / areas[0] - 1) > 0.04, $"{areas[0]:R} to {areas[^1]:R}");
    }

    /// <summary>What a plate in series shows is a ratio of differentials: even the wrong air hardly hurts. That is physics, not a switch.</summary>
    [Theory]
    [InlineData("percent of flow")]
    [InlineData("plate between plenums")]
    public void Weather_nearly_cancels_for_a_plate_in_series(string name)
    {
        var areas = ReducedWithMorningAir(BenchMeters.All[name].Meter);
        Assert.All(areas, a => Assert.Equal(areas[0], a, areas[0] * 1e-3));
    }

    [Fact]
    public void Weather_does_not_cancel_for_a_laminar_element()
    {
        var areas = ReducedWithMorningAir(BenchMeters.All["laminar element"].Meter);
        Assert.True(Math.Abs(areas[^1] / areas[0] - 1) > 0.005, $"{areas[0]:R} to {areas[^1]:R}");
    }

    private static List<double> ReducedWithMorningAir(IMeter meter)
    {
        const double area = 0.0004, dp = 6974.49;
        var morning = new TestConditions(Weather.OneDay[0], dp, FlowDirection.Draw);
        return
        [
            .. Weather.OneDay.Select(room =>
            {
                var reading = TestPieceReduction.ReadingFor(meter, area, 1, new TestConditions(room, dp, FlowDirection.Draw));
                return TestPieceReduction.EffectiveArea(meter, reading, 1, morning).EffectiveArea;
            }),
        ];
    }

    [Fact]
    public void Leak_is_subtracted_as_its_own_effective_area() =>
        Gen.Select(AnyTest, Gen.Double[1e-6, 1e-4]).Sample((c, leak) =>
        {
            var meter = PlenumPlate.Round(0.05, 0.61);
            // A blanked port: all that flows is the leak, whatever the test pressure and direction.
            var reading = TestPieceReduction.ReadingFor(meter, 0, 1, c, leak);
            Assert.Equal(leak, TestPieceReduction.EffectiveArea(meter, reading, 1, c).EffectiveArea, leak * 1e-9);
            Assert.Equal(0, TestPieceReduction.EffectiveArea(meter, reading, 1, c, leak).EffectiveArea, leak * 1e-9);
        });

    /// <summary>Two restrictions one after the other pass one mass flow; together they are less than either.</summary>
    [Fact]
    public void Mass_is_conserved_through_two_restrictions_in_series() =>
        Gen.Select(Weather.Any, Gen.Double[1e-4, 2e-3], Gen.Double[1e-4, 2e-3], Gen.Double[500, 30_000]).Sample((room, first, second, dp) =>
        {
            double far = room.Pressure - dp, low = far, high = room.Pressure;
            for (var i = 0; i < 200; i++)
            {
                var middle = (low + high) / 2;
                if (first * Nozzle.MassFlux(room, middle) > second * Nozzle.MassFlux(room.At(middle, room.Temperature), far)) low = middle;
                else high = middle;
            }
            var between = room.At(high, room.Temperature);
            var flow = first * Nozzle.MassFlux(room, high);
            Assert.Equal(flow, second * Nozzle.MassFlux(between, far), flow * 1e-9);
            var both = EffectiveArea.From(flow, room, far);
            Assert.True(both < Math.Min(first, second) * (1 + 1e-9));
        });

    [Fact]
    public void Scatter_below_zero_is_the_same_flow_backwards()
    {
        var c = new TestConditions(Weather.OneDay[0], 7000, FlowDirection.Draw);
        foreach (var (meter, _) in BenchMeters.All.Values)
            Assert.Equal(0, TestPieceReduction.EffectiveArea(meter, 0.01, 1, c).MassFlow + TestPieceReduction.EffectiveArea(meter, -0.01, 1, c).MassFlow, 1e-18);
    }

    [Fact]
    public void Leaving_the_range_of_the_air_formula_is_said()
    {
        var plate = PlenumPlate.Round(0.05, 0.61);
        var mild = new TestConditions(AirState.Dry(101_325, 293.15), 7000, FlowDirection.Draw);
        var hot = new TestConditions(AirState.Dry(101_325, 305.15), 7000, FlowDirection.Draw);
        Assert.Equal(MeterLimits.None, TestPieceReduction.EffectiveArea(plate, 1000, 1, mild).Limits);
        Assert.Equal(MeterLimits.AirRange, TestPieceReduction.EffectiveArea(plate, 1000, 1, hot).Limits);
    }

    [Fact]
    public void Reducing_a_reading_allocates_nothing()
    {
        var c = new TestConditions(Weather.OneDay[0], 7000, FlowDirection.Blow);
        IMeter meter = new OrificePlate(0.1023, 0.060, OrificeTaps.Flange);
        double sum = TestPieceReduction.EffectiveArea(meter, 2000, 1, c).EffectiveArea;
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 1000; i++) sum += TestPieceReduction.EffectiveArea(meter, 2000 + i, 1, c).EffectiveArea;
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        Assert.True(sum > 0);
    }

    [Fact]
    public void A_test_without_test_pressure_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new TestConditions(Weather.OneDay[0], 0, FlowDirection.Draw));
}
