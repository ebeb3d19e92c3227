using Portwright.Physics.Statistics;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Units;

namespace Portwright.Shop.Tests.Bench;

public sealed class MorningTests
{
    private const double PlateArea = 0.00100;

    private static readonly CheckPlate Plate = new("number one", PlateArea, PlateArea * 0.002, "certificate 12, invented");

    [Fact]
    public void A_calibration_finds_what_the_meter_really_must_be_multiplied_by()
    {
        var bench = Bench();
        bench.TrueFactor = 1.034;
        var calibration = Calibrate(bench, new DateOnly(2025, 3, 3));
        var ledger = bench.Ledger;
        var factor = MeterFactor.Fit(ledger.Get<Calibration>(calibration), ledger.Get<BenchCard>(bench.BenchId));
        Assert.Equal(1.034, factor.Factor.Value, 1e-9);
        Assert.True(factor.Factor.StandardUncertainty >= 0.002 * 1.034, "no surer than the plate's certificate");
    }

    [Fact]
    public void A_better_calibration_improves_every_old_test()
    {
        var bench = Bench();
        bench.TrueFactor = 1.03;
        var sweep = bench.Sweep(bench.Cut(0));
        bench.Read(sweep, 0.006, 0.0009);
        double Area() => SweepReduction.Reduce(bench.Ledger, bench.Ledger.Get<Sweep>(sweep)).Curve.Points[0].EffectiveArea.Value;
        Assert.Equal(0.0009 / 1.03, Area(), 1e-9);
        Calibrate(bench, new DateOnly(2025, 3, 20));
        Assert.Equal(0.0009, Area(), 1e-9);
    }

    [Fact]
    public void Mornings_like_the_others_are_go_and_a_bench_three_percent_off_is_stop()
    {
        var bench = Bench();
        Calibrate(bench, new DateOnly(2025, 3, 3));
        var random = new Random(4);
        for (var day = 4; day < 24; day++)
        {
            bench.TrueFactor = 1 + 0.001 * (random.NextDouble() - 0.5);
            Check(bench, new DateOnly(2025, 3, day));
        }

        Assert.Equal(ChartAnswer.Go, BenchMorning.Of(bench.Ledger, bench.BenchId, new DateOnly(2025, 3, 23))!.Answer);

        bench.TrueFactor = 1.03;
        Check(bench, new DateOnly(2025, 3, 24));
        var stopped = BenchMorning.Of(bench.Ledger, bench.BenchId, new DateOnly(2025, 3, 24))!;
        Assert.Equal(ChartAnswer.Stop, stopped.Answer);
        Assert.Contains(stopped.Words, w => w.Contains("3.0 percent under its certificate", StringComparison.Ordinal));
    }

    [Fact]
    public void A_bad_calibration_is_caught_on_the_first_morning_after_it()
    {
        var bench = Bench();
        Calibrate(bench, new DateOnly(2025, 3, 3));
        for (var day = 4; day < 14; day++)
        {
            Check(bench, new DateOnly(2025, 3, day));
        }

        // The wrong plate was put up: the card says "number one", the hole was four percent larger.
        bench.Add(new Calibration(bench.BenchId, bench.Range.Name, new DateOnly(2025, 3, 14), [bench.ReadPlate("number one", PlateArea * 1.04)], bench.Air()));
        Check(bench, new DateOnly(2025, 3, 15));
        var morning = BenchMorning.Of(bench.Ledger, bench.BenchId, new DateOnly(2025, 3, 15))!;
        Assert.Equal(ChartAnswer.Stop, morning.Answer);
        Assert.Contains(morning.Words, w => w.Contains("3.9 percent under its certificate", StringComparison.Ordinal));
    }

    [Fact]
    public void A_leak_read_with_the_calibration_is_taken_off_the_plate()
    {
        var bench = Bench();
        bench.TrueFactor = 1.034;
        bench.LeakArea = PlateArea * 0.004;
        MeterFactor Fit(PlateReading? leak)
        {
            var id = bench.Add(new Calibration(
                bench.BenchId, bench.Range.Name, new DateOnly(2025, 3, 3), [bench.ReadPlate("number one", PlateArea)], bench.Air(), Leak: leak));
            return MeterFactor.Fit(bench.Ledger.Get<Calibration>(id), bench.Ledger.Get<BenchCard>(bench.BenchId));
        }

        var tested = Fit(bench.ReadPlate("", 0));
        var untested = Fit(null);
        Assert.Equal(1.034, tested.Factor.Value, 1e-9);
        Assert.Empty(tested.Remarks);
        Assert.Equal(1.034 / 1.004, untested.Factor.Value, 1e-9);
        Assert.Contains(untested.Remarks, r => r.Contains("without a leak test", StringComparison.Ordinal));
        Assert.True(Math.Abs(untested.Factor.Value - 1.034) < untested.Factor.Expanded(), "the doubt allows for the leak nobody measured");
    }

    [Fact]
    public void A_calibration_made_after_a_sweep_is_used_with_the_meters_own_doubt_and_said_so()
    {
        var bench = Bench();
        Calibrate(bench, new DateOnly(2025, 3, 20));
        var ledger = bench.Ledger;
        var card = ledger.Get<BenchCard>(bench.BenchId);
        var before = MeterFactor.At(BenchMoment.EndOf(new DateOnly(2025, 3, 3)), card, bench.Range, ledger);
        var after = MeterFactor.At(BenchMoment.EndOf(new DateOnly(2025, 3, 20)), card, bench.Range, ledger);
        Assert.Equal(after.Factor.Value, before.Factor.Value);
        Assert.True(before.Factor.StandardUncertainty >= bench.Range.Accuracy);
        Assert.True(after.Factor.StandardUncertainty < before.Factor.StandardUncertainty);
        Assert.Contains(before.Remarks, r => r.Contains("after this day", StringComparison.Ordinal));
        Assert.DoesNotContain(after.Remarks, r => r.Contains("after this day", StringComparison.Ordinal));
    }

    [Fact]
    public void A_plate_read_three_times_one_morning_is_one_point_on_its_chart_and_surer()
    {
        Estimate Ratio(int times)
        {
            var bench = Bench();
            Calibrate(bench, new DateOnly(2025, 3, 3));
            bench.Add(new MorningCheck(
                bench.BenchId, new DateOnly(2025, 3, 4), bench.Air(), bench.ReadPlate("", 0.000001), [.. Enumerable.Repeat(bench.ReadPlate("number one", PlateArea), times)]));
            var morning = BenchMorning.Of(bench.Ledger, bench.BenchId, new DateOnly(2025, 3, 4))!;
            return Assert.Single(Assert.Single(morning.Charts).Points).Ratio;
        }

        Assert.True(Ratio(3).StandardUncertainty < Ratio(1).StandardUncertainty);
    }

    [Fact]
    public void A_plate_just_outside_its_doubt_asks_for_a_look_and_one_far_outside_is_a_stop()
    {
        ChartAnswer At(double off)
        {
            var bench = Bench();
            Calibrate(bench, new DateOnly(2025, 3, 3));
            bench.TrueFactor = 1 + off;
            Check(bench, new DateOnly(2025, 3, 4));
            return BenchMorning.Of(bench.Ledger, bench.BenchId, new DateOnly(2025, 3, 4))!.Answer;
        }

        var sound = Bench();
        Calibrate(sound, new DateOnly(2025, 3, 3));
        Check(sound, new DateOnly(2025, 3, 4));
        var doubt = BenchMorning.Of(sound.Ledger, sound.BenchId, new DateOnly(2025, 3, 4))!.Mornings[0].PlateRatio[0].Ratio.StandardUncertainty;
        Assert.Equal(ChartAnswer.Look, At(2.5 * doubt));
        Assert.Equal(ChartAnswer.Stop, At(4.5 * doubt));
    }

    [Fact]
    public void A_morning_without_a_leak_test_asks_for_a_look()
    {
        var bench = Bench();
        bench.Add(new MorningCheck(bench.BenchId, new DateOnly(2025, 3, 3), bench.Air(), null, [bench.ReadPlate("number one", PlateArea)]));
        var morning = BenchMorning.Of(bench.Ledger, bench.BenchId, new DateOnly(2025, 3, 3))!;
        Assert.Equal(ChartAnswer.Look, morning.Answer);
        Assert.Contains(morning.Words, w => w.StartsWith("The leak test was not made", StringComparison.Ordinal));
    }

    [Fact]
    public void A_leak_that_is_always_there_measured_and_taken_off_asks_for_nothing_and_one_that_grew_for_a_look()
    {
        // Read on a display that shows flow itself: a fifth of two percent of the plate is its doubt.
        var bench = new SimulatedBench(Ranges.OfEachKind[7], BenchDoubt.Unknown with { Drift = 0.001, RepeatScatter = 0.001 }, [Plate]) { LeakArea = 0.02 * PlateArea };
        bench.Add(new Calibration(bench.BenchId, bench.Range.Name, new DateOnly(2025, 3, 3), [.. Enumerable.Repeat(bench.ReadPlate("number one", PlateArea), 3)], bench.Air(), Leak: bench.ReadPlate("", 0)));
        IReadOnlyList<string> On(int day, double leak)
        {
            bench.LeakArea = leak * PlateArea;
            bench.Add(new MorningCheck(bench.BenchId, new DateOnly(2025, 3, day), bench.Air(), bench.ReadPlate("", 0), [bench.ReadPlate("number one", PlateArea)]));
            return [.. BenchMorning.Of(bench.Ledger, bench.BenchId, new DateOnly(2025, 3, day))!.Words.Where(w => w.StartsWith("The leak", StringComparison.Ordinal))];
        }

        for (var day = 4; day < 9; day++)
        {
            Assert.Empty(On(day, 0.02 + 0.0005 * (day % 2)));
        }

        Assert.Contains("was 2.0 at the checks before: it changed", Assert.Single(On(9, 0.035)), StringComparison.Ordinal);
        Assert.Contains("it changed", Assert.Single(On(10, 0.002)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_leak_whose_doubt_alone_is_half_a_percent_of_the_plate_asks_for_a_look()
    {
        string[] With(double leak)
        {
            var bench = new SimulatedBench(Ranges.OfEachKind[7], BenchDoubt.Unknown, [Plate]) { LeakArea = leak * PlateArea };
            bench.Add(new MorningCheck(bench.BenchId, new DateOnly(2025, 3, 4), bench.Air(), bench.ReadPlate("", 0), [bench.ReadPlate("number one", PlateArea)]));
            return [.. BenchMorning.Of(bench.Ledger, bench.BenchId, new DateOnly(2025, 3, 4))!.Words.Where(w => w.StartsWith("The leak", StringComparison.Ordinal))];
        }

        Assert.Empty(With(0.023));
        Assert.Contains("that doubt is in every flow", Assert.Single(With(0.027)), StringComparison.Ordinal);
    }

    private static SimulatedBench Bench() => new(Ranges.OfEachKind[1] with { Resolution = 0.0005 }, BenchDoubt.Unknown with { Drift = 0.001, RepeatScatter = 0.001 }, [Plate]);

    private static Guid Calibrate(SimulatedBench bench, DateOnly date) => bench.Add(new Calibration(
        bench.BenchId, bench.Range.Name, date, [.. Enumerable.Repeat(bench.ReadPlate("number one", PlateArea), 3)], bench.Air()));

    private static void Check(SimulatedBench bench, DateOnly date) => bench.Add(new MorningCheck(
        bench.BenchId, date, bench.Air(), bench.ReadPlate("", 0.000001), [bench.ReadPlate("number one", PlateArea)]));
}
