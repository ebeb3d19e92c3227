using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;

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
