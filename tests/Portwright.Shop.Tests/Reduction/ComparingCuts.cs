using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Tests.Words;

namespace Portwright.Shop.Tests.Reduction;

public sealed class ComparingCuts
{
    private static readonly double[] Lifts = [0.0025, 0.005, 0.0075, 0.010, 0.0125];

    private static readonly BenchDoubt Known = BenchDoubt.Unknown with
    {
        SetUpScatter = 0.004,
        SetUpDegrees = 20,
        RepeatScatter = 0.002,
        RepeatDegrees = 20,
    };

    [Fact]
    public void A_cut_that_gains_four_percent_is_a_real_gain()
    {
        var comparison = Compare(1.04);
        Assert.Equal(Verdict.Real, comparison.Curves.WholeCurve.Verdict);
        Assert.True(comparison.Curves.WholeCurve.Of.Value > 0);
    }

    [Fact]
    public void A_cut_that_gains_a_third_of_a_percent_is_inside_the_noise()
    {
        Assert.Equal(Verdict.InsideTheNoise, Compare(1.003).Curves.WholeCurve.Verdict);
    }

    [Fact]
    public void The_meters_calibration_is_shared_and_does_not_blur_the_difference()
    {
        var comparison = Compare(1.02);
        var one = comparison.This.Curve.Points[2].Flow;
        var difference = comparison.Curves.Lifts[2].Difference.Of;
        // Calibration dominates one result and all but vanishes from the difference.
        var shareInOne = one.ByKind().Single(k => k.Kind == ContributionKind.Calibration).StandardUncertainty;
        var shareInDifference = difference.ByKind().Single(k => k.Kind == ContributionKind.Calibration).StandardUncertainty;
        Assert.True(shareInDifference < 0.05 * shareInOne, $"{shareInDifference} against {shareInOne}");
    }

    [Fact]
    public void Set_up_scatter_is_not_shared_by_two_set_ups_but_is_by_one()
    {
        var apart = Compare(1.01);
        var together = Compare(1.01, setUp: "left on the bench");
        double SetUp(CutComparison c) => c.Curves.Lifts[2].Difference.Of.ByKind()
            .Where(k => k.Kind == ContributionKind.SetUp).Sum(k => k.StandardUncertainty);
        Assert.True(SetUp(apart) > 0);
        Assert.True(SetUp(together) < 0.02 * SetUp(apart));
    }

    [Fact]
    public void A_second_set_up_makes_the_result_surer()
    {
        var bench = new SimulatedBench(Ranges.OfEachKind[1], Known);
        var cut = bench.Cut(0);
        var first = bench.Sweep(cut);
        foreach (var lift in Lifts)
        {
            bench.Read(first, lift, Area(lift));
        }

        var one = CutFlow.Of(bench.Ledger, bench.Ledger.Get<Cut>(cut))!.Curve.Points[2].Flow;
        var second = bench.Sweep(cut);
        foreach (var lift in Lifts)
        {
            bench.Read(second, lift, Area(lift));
        }

        var two = CutFlow.Of(bench.Ledger, bench.Ledger.Get<Cut>(cut))!.Curve.Points[2].Flow;
        Assert.True(two.StandardUncertainty < one.StandardUncertainty);
    }

    [Fact]
    public void Sweeps_with_another_fitting_are_neither_averaged_nor_compared()
    {
        var bench = new SimulatedBench(Ranges.OfEachKind[1], Known);
        var cuts = new[] { bench.Cut(0), bench.Cut(1) };
        Swept(bench, cuts[0], 1, s => s with { Fitted = "Clay  radius" });
        Swept(bench, cuts[1], 1.02, s => s);
        Swept(bench, cuts[1], 1.03, s => s with { Fitted = "clay radius" });
        var ledger = bench.Ledger;
        var (before, now) = (CutFlow.Of(ledger, ledger.Get<Cut>(cuts[0]))!, CutFlow.Of(ledger, ledger.Get<Cut>(cuts[1]))!);
        Assert.Single(now.Sweeps);
        Assert.Equal(Area(Lifts[2]) * 1.03, now.Curve.Points[2].EffectiveArea.Value, 1e-9);
        Assert.Equal("drawn, nothing fitted, plug sealed", Assert.Single(now.Apart).Sweep.Fact.Fitting.Words);
        Assert.NotNull(CutComparison.Between(now, before));
        var bare = new Reductions(ledger).Of(ledger.Get<Cut>(cuts[1]), ledger.Get<Sweep>(now.Apart[0].Sweep.Id).Fact.Fitting)!;
        Assert.Null(CutComparison.Between(bare, before));
    }

    [Fact]
    public void A_sheet_says_which_cuts_were_swept_otherwise()
    {
        var bench = new SimulatedBench(Ranges.OfEachKind[1], Known);
        Swept(bench, bench.Cut(0), 1, s => s with { BoreAdapter = 0.1016 });
        Swept(bench, bench.Cut(1), 1.02, s => s);
        var sheet = Portwright.Shop.Sheets.PortSheet.Of(bench.Ledger, bench.PortId);
        Assert.Null(sheet.AgainstLast);
        Assert.Contains(sheet.Remarks, r => r.Us().StartsWith("Cut 0 was swept drawn, nothing fitted, bore adapter 101.6 mm", StringComparison.Ordinal));
    }

    [Fact]
    public void Two_cuts_stated_at_other_pressures_are_compared_as_one_port()
    {
        var bench = new SimulatedBench(Ranges.OfEachKind[1], Known);
        var cuts = new[] { bench.Cut(0), bench.Cut(1) };
        Swept(bench, cuts[0], 1, s => s);
        var other = bench.Add(bench.Card with { RestatedAt = 10 * UnitFactors.InchOfWater, StandardAir = new AirCard(100_000, 300) }, null);
        Swept(bench, cuts[1], 1, s => s with { Bench = other });
        var ledger = bench.Ledger;
        var comparison = CutComparison.Between(
            CutFlow.Of(ledger, ledger.Get<Cut>(cuts[1]))!, CutFlow.Of(ledger, ledger.Get<Cut>(cuts[0]))!)!;
        Assert.Equal(0, comparison.Curves.WholeCurve.Of.Value, 1e-9);
    }

    [Fact]
    public void A_correction_made_weeks_later_does_not_move_the_sweep_to_another_day()
    {
        var bench = new SimulatedBench(Ranges.OfEachKind[1], Known);
        var sweep = bench.Sweep(bench.Cut(0));
        var reading = bench.Read(sweep, 0.006, 0.0009);
        var kept = bench.Ledger.Get<FlowReading>(reading);
        bench.Put(Amend.Correct(kept, kept.Fact with { Sound = "steady" }, SimulatedBench.Morning.AddDays(40), "", "heard again"));
        DateOnly Day(Ledger ledger) => SweepReduction.Reduce(ledger, ledger.Get<Sweep>(sweep)).Day;
        Assert.Equal(new DateOnly(2025, 3, 3), Day(bench.Ledger));
        var dated = bench.Ledger.Get<Sweep>(sweep);
        bench.Put(Amend.Correct(dated, dated.Fact with { Date = new DateOnly(2024, 11, 2) }, SimulatedBench.Morning, ""));
        Assert.Equal(new DateOnly(2024, 11, 2), Day(bench.Ledger));
    }

    private static void Swept(SimulatedBench bench, Guid cut, double gain, Func<Sweep, Sweep> with)
    {
        var sweep = bench.Sweep(cut);
        var kept = bench.Ledger.Get<Sweep>(sweep);
        bench.Put(Amend.Correct(kept, with(kept.Fact), SimulatedBench.Morning, ""));
        foreach (var lift in Lifts)
        {
            bench.Read(sweep, lift, Area(lift) * gain);
        }
    }

    private static double Area(double lift) => 0.0013 * (1 - Math.Exp(-lift / 0.006));

    private static CutComparison Compare(double gain, string setUp = "")
    {
        var bench = new SimulatedBench(Ranges.OfEachKind[1], Known);
        var cuts = new[] { bench.Cut(0), bench.Cut(1) };
        for (var i = 0; i < 2; i++)
        {
            var sweep = bench.Sweep(cuts[i], setUp: setUp);
            foreach (var lift in Lifts)
            {
                bench.Read(sweep, lift, Area(lift) * (i == 0 ? 1 : gain));
            }
        }

        var ledger = bench.Ledger;
        return CutComparison.Between(
            CutFlow.Of(ledger, ledger.Get<Cut>(cuts[1]))!, CutFlow.Of(ledger, ledger.Get<Cut>(cuts[0]))!)!;
    }
}
