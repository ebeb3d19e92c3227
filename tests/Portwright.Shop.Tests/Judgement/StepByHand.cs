using Portwright.Shop.Judgement;

namespace Portwright.Shop.Tests.Judgement;

/// <summary>How strongly an offset speaks for a fault, worked by hand.</summary>
public sealed class StepByHand
{
    /// <summary>A fault of one certain size, 3: the ratio of two normal densities is exp((s2 - t2)/2), s and t the offsets from none and from the fault.</summary>
    [Theory]
    [InlineData(3, 4.5)]
    [InlineData(1.5, 0)]
    [InlineData(0, -4.5)]
    [InlineData(2, 1.5)]
    [InlineData(5, 12.5)] // Past the largest the fault still fits: t is 0.
    [InlineData(-5, -19.5)] // The other way it does not: (25 - 64)/2.
    public void A_certain_fault_weighs_as_the_ratio_of_two_normal_densities(double off, double log) =>
        Assert.Equal(log, Math.Log(new Step(3, 1, StepWay.Up).Ratio(off, 1, double.PositiveInfinity)), 1e-9);

    /// <summary>A fault of 0.06 that takes away, in scatters of 0.02.</summary>
    [Theory]
    [InlineData(-0.06, 4.5)]
    [InlineData(-0.03, 0)]
    [InlineData(0.02, -7.5)] // (1 - 16)/2
    public void A_fault_that_takes_away_is_told_by_what_is_missing(double off, double log) =>
        Assert.Equal(log, Math.Log(new Step(0.06, 1, StepWay.Down).Ratio(off, 0.02, double.PositiveInfinity)), 1e-9);

    [Fact]
    public void A_fault_that_goes_either_way_is_half_as_likely_each_way()
    {
        var either = new Step(3, 1, StepWay.EitherWay);
        Assert.Equal((Math.Exp(4.5) + Math.Exp(-13.5)) / 2, either.Ratio(3, 1, double.PositiveInfinity), 1e-9);
        Assert.Equal(either.Ratio(3, 1, double.PositiveInfinity), either.Ratio(-3, 1, double.PositiveInfinity), 1e-9);
    }

    /// <summary>Student's density goes with (1 + t2/n)^-(n + 1)/2: with 4 degrees an offset of 3 proves (1 + 9/4)^2.5 = 19.04, not the normal's 90.</summary>
    [Theory]
    [InlineData(3, 4, 19.04183)]
    [InlineData(3, 1, 10)]
    [InlineData(0, 4, 0.0525160)] // 1/19.04
    [InlineData(5, 4, 141.5246)] // (1 + 25/4)^2.5, the fault fitting all that is larger
    public void Where_the_scatter_is_little_known_a_far_offset_proves_less(double off, double degrees, double ratio) =>
        Assert.Equal(ratio, new Step(3, 1, StepWay.Up).Ratio(off, 1, degrees), 1e-4 * ratio);

    /// <summary>
    /// Fifteen sizes of equal chance: the first at a thirtieth of the normal distribution, the second at a tenth, the middle at a half. Deviates
    /// by any table of it: -1.8339, -1.2816, 0.
    /// </summary>
    [Theory]
    [InlineData(0, -1.83391)]
    [InlineData(1, -1.28155)]
    [InlineData(4, -0.52440)]
    [InlineData(7, 0)]
    [InlineData(10, 0.52440)]
    [InlineData(13, 1.28155)]
    [InlineData(14, 1.83391)]
    public void Sizes_lie_as_the_normal_distribution_says(int at, double deviate)
    {
        var up = new Step(0.2, Math.E, StepWay.Up);
        Assert.Equal(15, up.Sizes.Count);
        Assert.Equal(0.2 * Math.Exp(deviate), up.Sizes[at], 2e-5);
        Assert.Equal(-up.Sizes[at], new Step(0.2, Math.E, StepWay.Down).Sizes[at], 1e-12);
        Assert.Equal(30, new Step(0.2, Math.E, StepWay.EitherWay).Sizes.Count);
    }
}
