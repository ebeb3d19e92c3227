using Portwright.Engine.Runs;
using Portwright.Physics.Statistics;
using Portwright.Shop.Bench;
using Portwright.Shop.Ports;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Tests.Words;
using Portwright.Shop.Words;

namespace Portwright.Shop.Tests.Bench;

/// <summary>A day at the bench has a morning, a noon and an evening: what came first counts for what came after.</summary>
public sealed class OrderWithinADay
{
    private const double PlateArea = 0.00100;
    private const double PortArea = 0.0009;

    private static readonly CheckPlate Plate = new("number one", PlateArea, PlateArea * 0.002, "certificate 12, invented");

    /// <summary>The meter passes 3 percent more than it shows from the start; the first calibration knows it, the noon's is made after something moved it to 5.</summary>
    [Fact]
    public void A_sweep_read_before_a_calibration_of_the_same_day_keeps_the_factor_it_was_read_with_and_one_after_it_takes_the_new_one()
    {
        var bench = Bench();
        bench.TrueFactor = 1.03;
        Calibrate(bench);
        bench.NextDay();
        bench.At(9);
        var cut = bench.Cut(0);
        var before = Sweep(bench, cut);
        bench.At(12, 40);
        bench.TrueFactor = 1.05;
        Calibrate(bench);
        bench.At(14);
        var after = Sweep(bench, cut);

        Assert.Equal(PortArea, Area(bench, before), 1e-9);
        Assert.Equal(PortArea, Area(bench, after), 1e-9);
        var factors = SweepReduction.Reduce(bench.Ledger, bench.Ledger.Get<Sweep>(before)).Factors;
        Assert.Equal(" at 12:40", Assert.Single(factors).Factor.Since?.Clock);
        Assert.Null(Assert.Single(SweepReduction.Reduce(bench.Ledger, bench.Ledger.Get<Sweep>(after)).Factors).Factor.Since);
    }

    [Fact]
    public void The_sheet_says_which_factor_of_which_time()
    {
        var bench = Bench();
        bench.At(7, 30);
        Calibrate(bench);
        bench.At(9);
        Sweep(bench, bench.Cut(0));
        bench.At(12, 40);
        Calibrate(bench);
        var said = PortDocument.Of(PortAtCut.Of(new Reductions(bench.Ledger), bench.PortId, null, new NoRuns())).Parts.Single(p => p.Key == "bench");
        var range = said.Blocks.OfType<Values>().Single().Rows.Single(v => v.Key.StartsWith("range-1", StringComparison.Ordinal)).Value.Us();
        Assert.Contains("calibrated 3 Mar 2025 at 07:30", range, StringComparison.Ordinal);
        Assert.Contains("calibrated again at 12:40, after these readings", range, StringComparison.Ordinal);
    }

    [Fact]
    public void A_mornings_stop_stands_after_a_calibration_of_the_same_day_and_what_is_known_since_is_said_beside_it()
    {
        var bench = Bench();
        Calibrate(bench);
        bench.NextDay();
        bench.At(7, 50);
        bench.TrueFactor = 1.03;
        Check(bench);
        var given = BenchMorning.Of(bench.Ledger, bench.BenchId, bench.Today)!;
        Assert.Equal(ChartAnswer.Stop, given.Answer);
        bench.At(12, 40);
        Calibrate(bench);
        var stands = BenchMorning.Of(bench.Ledger, bench.BenchId, bench.Today)!;
        Assert.Equal(ChartAnswer.Stop, stands.Answer);
        Assert.Equal(given.Words, stands.Words.SkipLast(1));
        Assert.Contains("was calibrated at 12:40 since: with that factor the same reading of plate number one is 0.0 percent", stands.Words[^1], StringComparison.Ordinal);
        Assert.Equal(given.Mornings[^1].PlateRatio[0].Ratio.Value, stands.Mornings[^1].PlateRatio[0].Ratio.Value);
    }

    [Fact]
    public void The_check_after_the_calibration_is_judged_with_its_factor()
    {
        var bench = Bench();
        Calibrate(bench);
        bench.NextDay();
        bench.TrueFactor = 1.03;
        Check(bench);
        Calibrate(bench);
        Check(bench);
        var noon = BenchMorning.Of(bench.Ledger, bench.BenchId, bench.Today)!;
        Assert.Equal(1 / 1.03, noon.Mornings[0].PlateRatio[0].Ratio.Value, 1e-9);
        Assert.Equal(1, noon.Mornings[1].PlateRatio[0].Ratio.Value, 1e-9);
    }

    [Fact]
    public void The_check_that_speaks_for_a_sweep_is_the_last_before_it_and_the_days_first_where_there_is_none()
    {
        var bench = Bench();
        Calibrate(bench);
        bench.NextDay();
        var cut = bench.Cut(0);
        var first = Sweep(bench, cut);
        Check(bench);
        var second = Sweep(bench, cut);
        bench.TrueFactor = 1.03;
        Check(bench);
        var third = Sweep(bench, cut);
        var ledger = bench.Ledger;
        ChartAnswer At(Guid sweep) => BenchMorning.Of(ledger, bench.BenchId, SweepReduction.Reduce(ledger, ledger.Get<Sweep>(sweep)).When)!.Answer;
        Assert.NotEqual(ChartAnswer.Stop, At(first));
        Assert.NotEqual(ChartAnswer.Stop, At(second));
        Assert.Equal(ChartAnswer.Stop, At(third));
    }

    [Fact]
    public void A_calibration_typed_in_the_evening_that_says_it_was_made_before_work_holds_for_the_whole_day()
    {
        double After(bool beforeWork)
        {
            var bench = Bench();
            Calibrate(bench);
            bench.NextDay();
            bench.TrueFactor = 1.03;
            var sweep = Sweep(bench, bench.Cut(0));
            bench.At(19);
            bench.Add(Calibration(bench) with { BeforeWork = beforeWork });
            return Area(bench, sweep);
        }

        Assert.Equal(PortArea, After(true), 1e-9);
        Assert.Equal(PortArea / 1.03, After(false), 1e-9);
    }

    [Fact]
    public void What_was_typed_on_another_day_goes_by_its_date_and_the_sheet_says_that_the_order_is_not_known()
    {
        var bench = Bench();
        Calibrate(bench);
        bench.NextDay();
        bench.TrueFactor = 1.03;
        var day = bench.Today;
        var live = Sweep(bench, bench.Cut(0));
        bench.NextDay();
        bench.Add(Calibration(bench) with { Date = day });
        // A file of that day brought in the day after.
        var imported = bench.Sweep(bench.Cut(1));
        var kept = bench.Ledger.Get<Sweep>(imported);
        bench.Put(Amend.Correct(kept, kept.Fact with { Date = day }, SimulatedBench.Morning.AddDays(2), "", "dated"));
        bench.Read(imported, 0.006, PortArea);
        foreach (var sweep in (Guid[])[live, imported])
        {
            Assert.Equal(PortArea, Area(bench, sweep), 1e-9);
            Assert.Contains(
                SweepReduction.Reduce(bench.Ledger, bench.Ledger.Get<Sweep>(sweep)).Remarks, r => r.Contains("which came first is not known", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void A_first_calibration_at_noon_is_used_before_it_with_the_meters_own_doubt_and_said_so()
    {
        var bench = Bench();
        bench.TrueFactor = 1.03;
        var sweep = Sweep(bench, bench.Cut(0));
        bench.At(12, 40);
        Calibrate(bench);
        Assert.Equal(PortArea, Area(bench, sweep), 1e-9);
        var reduced = SweepReduction.Reduce(bench.Ledger, bench.Ledger.Get<Sweep>(sweep));
        Assert.Contains(reduced.Remarks, r => r.Contains("first calibrated on this day at 12:40, after this was read", StringComparison.Ordinal));
        Assert.True(reduced.Factors[0].Factor.Factor.StandardUncertainty >= bench.Range.Accuracy);
    }

    private static SimulatedBench Bench() => new(Ranges.OfEachKind[1] with { Resolution = 0.0005 }, BenchDoubt.Unknown with { Drift = 0.001, RepeatScatter = 0.001 }, [Plate]);

    private static Calibration Calibration(SimulatedBench bench) =>
        new(bench.BenchId, bench.Range.Name, bench.Today, [.. Enumerable.Repeat(bench.ReadPlate("number one", PlateArea), 3)], bench.Air(), Leak: bench.ReadPlate("", 0));

    private static void Calibrate(SimulatedBench bench) => bench.Add(Calibration(bench));

    private static void Check(SimulatedBench bench) => bench.Add(new MorningCheck(
        bench.BenchId, bench.Today, bench.Air(), bench.ReadPlate("", 0), [bench.ReadPlate("number one", PlateArea)]));

    private static Guid Sweep(SimulatedBench bench, Guid cut)
    {
        var sweep = bench.Sweep(cut);
        bench.Read(sweep, 0.006, PortArea);
        return sweep;
    }

    private static double Area(SimulatedBench bench, Guid sweep) =>
        SweepReduction.Reduce(bench.Ledger, bench.Ledger.Get<Sweep>(sweep)).Curve.Points[0].EffectiveArea.Value;

    private sealed class NoRuns : IKeptPoints
    {
        public OperatingPoint? Find(string key) => null;

        public void Keep(string key, OperatingPoint point) => Assert.Fail("Nothing is run for a sheet of the bench.");
    }
}
