using Portwright.Physics.TestPiece;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Sheets;
using Portwright.Shop.Trials;
using Portwright.Shop.Units;

namespace Portwright.Shop.Tests.Reduction;

/// <summary>Nothing that was saved, however wrong, may take the sweep, the board or the sheet away.</summary>
public sealed class WhatCannotBeReduced
{
    [Fact]
    public void A_forgotten_decimal_point_is_left_out_and_the_sheet_still_prints()
    {
        var (bench, sweep) = Swept();
        var slip = bench.Add(new FlowReading(sweep, Typed.Of(0.004, "m"), new Typed(1250, "inH2O", "1250")));
        var reduced = SweepReduction.Reduce(bench.Ledger, bench.Ledger.Get<Sweep>(sweep));
        Assert.Equal(slip, Assert.Single(reduced.Refused).Reading.Id);
        Assert.Equal(2, reduced.Curve.Points.Count);
        Assert.Contains(reduced.Remarks, r => r.StartsWith("The reading 1250 at lift", StringComparison.Ordinal));
        Assert.DoesNotContain(reduced.Remarks, r => r.Contains("Parameter", StringComparison.Ordinal));
        Assert.Equal(2, PortSheet.Of(bench.Ledger, bench.PortId).Flow!.Curve.Points.Count);
        Assert.NotEmpty(JobBoard.Of(bench.Ledger, bench.JobId).Heads);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-28)]
    [InlineData(1e9)]
    public void A_test_pressure_that_cannot_be_is_refused_before_it_is_saved(double pressure)
    {
        var (bench, sweep) = Swept();
        var entry = Entry.About(Guid.NewGuid(), bench.JobId, new FlowReading(sweep, Typed.Of(0.004, "m"), Typed.Of(9, "inH2O"), "", Typed.Of(pressure, "inH2O")), DateTimeOffset.UnixEpoch);
        var why = Trial.Refuses(bench.Ledger, entry);
        Assert.NotNull(why);
        Assert.Contains("pressure", why, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void A_sound_reading_is_not_refused()
    {
        var (bench, sweep) = Swept();
        var entry = Entry.About(Guid.NewGuid(), bench.JobId, new FlowReading(sweep, Typed.Of(0.004, "m"), Typed.Of(9, "inH2O")), DateTimeOffset.UnixEpoch);
        Assert.Null(Trial.Refuses(bench.Ledger, entry));
    }

    [Fact]
    public void Weather_leak_morning_and_calibration_are_tried_too()
    {
        var (bench, sweep) = Swept();
        string? Refuses(Fact fact, Guid? job = null) => Trial.Refuses(bench.Ledger, Entry.About(Guid.NewGuid(), job, fact, DateTimeOffset.UnixEpoch));
        var hot = new WeatherReading(sweep, Typed.Of(101325, "Pa"), PressureKind.Station, null, Typed.Of(-300, "degC"), null);
        Assert.NotNull(Refuses(hot, bench.JobId));
        Assert.NotNull(Refuses(new LeakReading(sweep, bench.Range.Name, Typed.Of(4000, "inH2O"), Typed.Of(28, "inH2O")), bench.JobId));
        var plate = bench.ReadPlate("one", 0.001);
        var slip = plate with { Reading = Typed.Of(4000, "inH2O") };
        Assert.Null(Refuses(new MorningCheck(bench.BenchId, new DateOnly(2025, 3, 3), bench.Air(), null, [plate])));
        Assert.NotNull(Refuses(new MorningCheck(bench.BenchId, new DateOnly(2025, 3, 3), bench.Air(), null, [slip])));
        Assert.Null(Refuses(new Calibration(bench.BenchId, bench.Range.Name, new DateOnly(2025, 3, 3), [plate], bench.Air())));
        Assert.NotNull(Refuses(new Calibration(bench.BenchId, bench.Range.Name, new DateOnly(2025, 3, 3), [slip], bench.Air())));
    }

    [Fact]
    public void A_range_taken_off_the_card_leaves_a_remark_in_place_of_the_flow()
    {
        var (bench, sweep) = Swept();
        bench.Put(Amend.Correct(bench.Ledger.Get<BenchCard>(bench.BenchId), bench.Card with { Ranges = [bench.Range with { Name = "another" }] }, DateTimeOffset.UnixEpoch, ""));
        var reduced = SweepReduction.Reduce(bench.Ledger, bench.Ledger.Get<Sweep>(sweep));
        Assert.True(reduced.Curve.IsEmpty);
        Assert.Contains(reduced.Remarks, r => r.Contains("has no range named", StringComparison.Ordinal));
    }

    [Fact]
    public void Repeats_with_the_valve_shut_neither_fail_nor_spoil_the_other_lifts()
    {
        double Doubt(bool readShut)
        {
            var bench = new SimulatedBench(Ranges.OfEachKind[1], BenchDoubt.Unknown with { RepeatScatter = 0.002, RepeatDegrees = 10 }) { LeakArea = 4e-6 };
            var sweep = bench.Sweep(bench.Cut(0));
            bench.ReadLeak(sweep);
            foreach (var misread in (double[])[1, 1.001, 0.999])
            {
                bench.Read(sweep, 0.006, 0.0009, r => r * misread);
            }

            if (readShut)
            {
                // The leak alone: what is left after taking it off is the last digit of the scale, up and down.
                bench.Read(sweep, 0, 0);
                bench.Read(sweep, 0, 0, r => r * 1.3);
                bench.Read(sweep, 0, 0, r => r * 0.7);
            }

            return SweepReduction.Reduce(bench.Ledger, bench.Ledger.Get<Sweep>(sweep)).Curve.PointAt(0.006)!.Flow.StandardUncertainty;
        }

        // The slope at the lowest lift comes from the origin either way.
        Assert.Equal(Doubt(false), Doubt(true), Doubt(false) * 1e-6);
    }

    private static (SimulatedBench Bench, Guid Sweep) Swept()
    {
        var plate = new CheckPlate("one", 0.001, 2e-6, "certificate 12, invented");
        var bench = new SimulatedBench(Ranges.OfEachKind[0], plates: [plate]);
        var sweep = bench.Sweep(bench.Cut(0));
        bench.Read(sweep, 0.003, 0.0006);
        bench.Read(sweep, 0.006, 0.0009);
        Assert.Equal(FlowDirection.Draw, bench.Ledger.Get<Sweep>(sweep).Fact.Direction);
        return (bench, sweep);
    }
}
