using Portwright.Physics.Curves;
using Portwright.Physics.Uncertainty;

namespace Portwright.Physics.Tests.Curves;

public sealed class CurveOfEstimatesTests
{
    private static readonly double[] Lifts = [0.1, 0.2, 0.3, 0.4, 0.5];
    private static readonly double[] Flows = [62, 121, 168, 196, 205];

    [Fact]
    public void A_calibration_error_that_scales_every_lift_scales_the_curve()
    {
        var curve = Curve((flow, _) => [new("plate 3 certificate", 0.005 * flow)]);
        foreach (var lift in new[] { 0.1, 0.137, 0.25, 0.36, 0.499 })
        {
            var at = curve.At(lift).Estimate;
            Assert.Equal(0.005 * at.Value, at.StandardUncertainty, 1e-12 * at.Value);
        }
        var mean = curve.MeanOver(0.15, 0.45);
        Assert.Equal(0.005 * mean.Value, mean.StandardUncertainty, 1e-12 * mean.Value);
    }

    [Fact]
    public void Repeat_scatter_of_single_lifts_averages_out_and_set_up_scatter_does_not()
    {
        var repeats = Curve((_, i) => [new($"repeats {i}", 1, 2, ContributionKind.Repeat)]);
        var setUp = Curve((_, _) => [new("set-up 4", 1, 5, ContributionKind.SetUp)]);
        Assert.InRange(repeats.MeanOver(0.1, 0.5).StandardUncertainty, 0.3, 0.7);
        Assert.Equal(1, setUp.MeanOver(0.1, 0.5).StandardUncertainty, 1e-9);
    }

    [Fact]
    public void At_a_tested_lift_the_curve_is_the_result_itself()
    {
        var curve = Curve((flow, i) => [new("plate 3 certificate", 0.005 * flow), new($"repeats {i}", 0.4, 2, ContributionKind.Repeat)]);
        for (var i = 0; i < Lifts.Length; i++)
        {
            var at = curve.At(Lifts[i]).Estimate;
            Assert.Equal(Flows[i], at.Value);
            Assert.Equal(curve.Points[i].StandardUncertainty, at.StandardUncertainty, 1e-12);
            Assert.Equal(2, at.Contributions.Count(c => c.Amount != 0));
        }
    }

    [Fact]
    public void Two_curves_of_one_day_share_the_certificate_between_the_lifts_too()
    {
        var before = Curve((_, _) => [new("plate 3 certificate", 1)]);
        var after = Curve((_, _) => [new("plate 3 certificate", 1)]);
        var difference = after.At(0.234).Estimate - before.At(0.234).Estimate;
        Assert.Equal(0, difference.Value);
        Assert.Equal(0, difference.StandardUncertainty);
    }

    [Fact]
    public void Between_lifts_the_doubt_is_what_many_scattered_curves_show()
    {
        double[] u = [0.3, 0.5, 0.4, 0.6, 0.5];
        var curve = Curve((_, i) => [new($"repeats {i}", u[i])]);
        var random = new Random(11);
        var drawn = new double[20_000];
        for (var k = 0; k < drawn.Length; k++)
        {
            double[] y = [.. Flows.Select((f, i) => f + u[i] * Gauss(random))];
            drawn[k] = new MonotoneCubic(Lifts, y).At(0.26).Value;
        }
        Assert.Equal(RepeatScatter.Of(drawn).StandardDeviation, curve.At(0.26).Estimate.StandardUncertainty, 0.01);
    }

    [Fact]
    public void Outside_the_tested_lifts_the_estimate_is_refused_or_marked()
    {
        var curve = Curve((_, i) => [new($"repeats {i}", 0.4)]);
        Assert.Throws<ArgumentOutOfRangeException>(() => curve.At(0.55));
        Assert.Throws<ArgumentOutOfRangeException>(() => curve.MeanOver(0.05, 0.3));
        var beyond = curve.At(0.55, Extrapolation.Marked);
        Assert.True(beyond.IsExtrapolated);
        Assert.True(beyond.Estimate.StandardUncertainty > curve.At(0.5).Estimate.StandardUncertainty);
    }

    private static CurveOfEstimates Curve(Func<double, int, Contribution[]> doubt) =>
        new(Lifts, [.. Flows.Select((f, i) => new Estimate(f, [.. doubt(f, i)]))]);

    private static double Gauss(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
