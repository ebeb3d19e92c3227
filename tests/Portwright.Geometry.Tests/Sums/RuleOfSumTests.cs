using CsCheck;
using Portwright.Geometry.Sums;

namespace Portwright.Geometry.Tests.Sums;

public sealed class RuleOfSumTests
{
    private static readonly Gen<double[]> Places =
        Gen.Double[0.1, 2].Array[2, 12].Select(steps => steps.Select((_, i) => steps.Take(i + 1).Sum()).ToArray());

    [Fact]
    public void Simpson_is_exact_for_any_parabola_at_any_spacing() =>
        Gen.Select(Places.Where(p => p.Length >= 3), Gen.Double[-3, 3], Gen.Double[-3, 3], Gen.Double[-3, 3]).Sample((x, a, b, c) =>
        {
            double Whole(double t) => t * (a + t * (b / 2 + t * c / 3));
            Assert.Equal(Whole(x[^1]) - Whole(x[0]), RuleOfSum.Simpson(x, [.. x.Select(t => a + t * (b + t * c))]), 1e-6);
        });

    [Fact]
    public void The_mean_of_ends_is_exact_for_a_straight_line() =>
        Gen.Select(Places, Gen.Double[-3, 3], Gen.Double[-3, 3]).Sample((x, a, b) =>
            Assert.Equal((x[^1] - x[0]) * (a + b * (x[0] + x[^1]) / 2), RuleOfSum.MeanOfEnds(x, [.. x.Select(t => a + b * t)]), 1e-9));

    [Fact]
    public void The_frustum_is_exact_for_a_cone_and_never_above_the_mean_of_ends() =>
        Gen.Select(Places, Gen.Double[0.1, 3], Gen.Double[0.1, 3]).Sample((x, a, b) =>
        {
            double[] areas = [.. x.Select(t => (a + b * t) * (a + b * t))];
            double Whole(double t) => Math.Pow(a + b * t, 3) / (3 * b);
            Assert.Equal(1, RuleOfSum.Frustum(x, areas) / (Whole(x[^1]) - Whole(x[0])), 1e-9);
            Assert.True(RuleOfSum.Frustum(x, areas) <= RuleOfSum.MeanOfEnds(x, areas) * (1 + 1e-12));
        });

    [Fact]
    public void Places_that_do_not_rise_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => RuleOfSum.Simpson([0, 1, 1], [1, 1, 1]));
        Assert.Throws<ArgumentException>(() => RuleOfSum.Frustum([0], [1]));
    }
}
