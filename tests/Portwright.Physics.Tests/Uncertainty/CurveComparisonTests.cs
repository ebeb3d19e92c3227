using Portwright.Physics.Statistics;
using Portwright.Physics.Uncertainty;

namespace Portwright.Physics.Tests.Uncertainty;

public sealed class CurveComparisonTests
{
    private static readonly double[] Lifts = [0.05, 0.1, 0.2, 0.3, 0.4, 0.45, 0.5, 0.55, 0.6, 0.65];

    [Fact]
    public void Where_nothing_was_gained_a_sweep_shows_a_real_lift_in_at_most_about_5_percent_of_cuts()
    {
        var random = new Random(77);
        int anyLift = 0, anyBand = 0, whole = 0;
        const int cuts = 1500;
        for (var cut = 0; cut < cuts; cut++)
        {
            var difference = CurveComparison.Compare(Sweeps(random, gain: 0, setUp: 0.6, repeat: 0.8));
            if (difference.Lifts.Any(l => l.Difference.Verdict == Verdict.Real)) anyLift++;
            if (difference.Bands.Any(b => b.Difference.Verdict == Verdict.Real)) anyBand++;
            if (difference.WholeCurve.Verdict == Verdict.Real) whole++;
        }
        // 5 percent of 1,500 is 75; three standard deviations of the count are 25. The lifts share a set-up, so Holm stays below.
        Assert.InRange(anyLift, 5, 100);
        Assert.InRange(anyBand, 15, 100);
        Assert.InRange(whole, 50, 100);
    }

    [Fact]
    public void Judged_one_lift_at_a_time_the_same_sweeps_raise_far_more_false_alarms()
    {
        var random = new Random(77);
        var alarms = 0;
        for (var cut = 0; cut < 500; cut++)
        {
            var points = Sweeps(random, gain: 0, setUp: 0, repeat: 0.8);
            if (points.Any(p => Comparison.Compare(p.Before, p.After).Verdict == Verdict.Real)) alarms++;
        }
        // 1 - 0.95^10 = 40 percent.
        Assert.InRange(alarms, 160, 240);
    }

    [Fact]
    public void A_gain_over_the_whole_curve_is_seen_where_no_single_lift_proves_it()
    {
        var random = new Random(5);
        int whole = 0, everyLift = 0;
        for (var cut = 0; cut < 200; cut++)
        {
            var difference = CurveComparison.Compare(Sweeps(random, gain: 1.2, setUp: 0, repeat: 0.8));
            if (difference.WholeCurve.Verdict == Verdict.Real) whole++;
            if (difference.Lifts.All(l => l.Difference.Verdict == Verdict.Real)) everyLift++;
        }
        Assert.True(whole > 190);
        Assert.True(everyLift < 20);
    }

    [Fact]
    public void Set_up_scatter_does_not_average_out_over_the_lifts()
    {
        LiftPair[] points = [.. Lifts.Select((l, i) => new LiftPair(l, Result(1, i, 100), Result(2, i, 100)))];
        var difference = CurveComparison.Compare(points);
        Assert.InRange(difference.WholeCurve.Of.StandardUncertainty, 0.5 * Math.Sqrt(2), 0.5 * Math.Sqrt(2) + 0.1);

        static Estimate Result(int setUp, int lift, double value) => new(value,
            [new($"set-up {setUp}", 0.5, Kind: ContributionKind.SetUp), new($"repeats {setUp} {lift}", 0.5, Kind: ContributionKind.Repeat)]);
    }

    [Fact]
    public void Outside_the_band_drawn_for_all_lifts_every_difference_is_real()
    {
        var random = new Random(9);
        for (var cut = 0; cut < 200; cut++)
        {
            foreach (var lift in CurveComparison.Compare(Sweeps(random, gain: 1.5, setUp: 0.2, repeat: 0.8)).Lifts)
            {
                Assert.True(lift.SimultaneousHalfWidth > lift.NoiseHalfWidth);
                if (Math.Abs(lift.Difference.Of.Value) > lift.SimultaneousHalfWidth) Assert.Equal(Verdict.Real, lift.Difference.Verdict);
                if (Math.Abs(lift.Difference.Of.Value) < lift.NoiseHalfWidth) Assert.NotEqual(Verdict.Real, lift.Difference.Verdict);
            }
        }
    }

    [Fact]
    public void Mean_over_a_band_weighs_lifts_by_the_stretch_they_stand_for()
    {
        // d = lift over 0, 1, 3, 4: the straight lines have mean 2 over 0..4 and 2.25 over 1.5..3.
        LiftPair[] points = [.. new[] { 0.0, 1, 3, 4 }.Select((l, i) => new LiftPair(l, Estimate.Exact(10), new Estimate(10 + l, [new($"repeats {i}", 0.1)])))];
        var difference = CurveComparison.Compare(points, [new("mid", 1.5, 3), new("beyond", 3.5, 9), new("untested", 6, 7)]);
        Assert.Equal(2, difference.WholeCurve.Of.Value, 1e-12);
        Assert.Equal(2, difference.Bands.Length);
        Assert.Equal(2.25, difference.Bands[0].Difference.Of.Value, 1e-12);
        Assert.Equal(4, difference.Bands[1].TestedTo);
        Assert.Equal(3.75, difference.Bands[1].Difference.Of.Value, 1e-12);
    }

    [Fact]
    public void A_single_lift_is_compared_as_one_result()
    {
        LiftPair[] points = [new(0.3, new Estimate(100, [new("a", 1)]), new Estimate(105, [new("b", 1)]))];
        var difference = CurveComparison.Compare(points);
        Assert.Equal(difference.WholeCurve.Of, difference.Lifts[0].Difference.Of);
        Assert.Equal(difference.WholeCurve.PValue, difference.Lifts[0].Difference.AdjustedPValue);
        Assert.Empty(difference.Bands);
    }

    [Fact]
    public void Lifts_out_of_order_are_refused()
    {
        var e = Estimate.Exact(1);
        Assert.Throws<ArgumentException>(() => CurveComparison.Compare([new(0.2, e, e), new(0.1, e, e)]));
        Assert.Throws<ArgumentException>(() => CurveComparison.Compare([]));
    }

    [Fact]
    public void Holm_multiplies_the_smallest_p_by_all_and_the_largest_by_one()
    {
        // S. Holm (1979): 0.01 x 4, 0.02 x 3, 0.03 x 2, 0.5 x 1, never falling.
        Assert.Equal([0.06, 0.04, 0.5, 0.06], HolmAdjustment.Adjust([0.03, 0.01, 0.5, 0.02]), (a, b) => Math.Abs(a - b) < 1e-12);
        Assert.Equal([1, 1], HolmAdjustment.Adjust([0.7, 0.8]));
    }

    /// <summary>Two sweeps of three repeats a lift, each in its own set-up; scatter of set-up known from 12 set-ups of the bench.</summary>
    private static LiftPair[] Sweeps(Random random, double gain, double setUp, double repeat)
    {
        double Gauss() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        // The bench card's own estimate of the set-up scatter is in doubt too.
        var card = Math.Sqrt(Enumerable.Range(0, 11).Sum(_ => Math.Pow(setUp * Gauss(), 2)) / 11);
        var before = Sweep(1, 0);
        var after = Sweep(2, gain);
        return [.. Lifts.Select((l, i) => new LiftPair(l, before[i], after[i]))];

        Estimate[] Sweep(int number, double shift)
        {
            var moved = setUp * Gauss();
            double[][] readings = [.. Lifts.Select(l => Enumerable.Range(0, 3).Select(_ => 400 * l + shift + moved + repeat * Gauss()).ToArray())];
            var pooled = RepeatScatter.Pooled(readings);
            return
            [
                .. readings.Select((r, i) =>
                {
                    var e = InputEstimate.FromPooledRepeats($"repeats {number} {i}", r, pooled, $"scatter of sweep {number}").ToEstimate();
                    return setUp > 0 ? e.With(new($"set-up {number}", card, 11, ContributionKind.SetUp, "bench card set-up scatter")) : e;
                }),
            ];
        }
    }
}
