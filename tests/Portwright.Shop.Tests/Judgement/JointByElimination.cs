using Portwright.Shop.Judgement;

namespace Portwright.Shop.Tests.Judgement;

/// <summary>Readings that vary together, against the same sums by Gauss's elimination with pivots, worked outside the program.</summary>
public sealed class JointByElimination
{
    private static readonly double[,] Covariance = { { 0.05, 0.03, 0.01, 0 }, { 0.03, 0.06, 0.02, 0.01 }, { 0.01, 0.02, 0.04, 0.015 }, { 0, 0.01, 0.015, 0.03 } };

    private static readonly double[] With = [0.02, 0.01, 0.005, 0.012], And = [0, 0.03, 0, 0.01];

    private static JointNormal All => JointNormal.Of(Covariance, [0.1, -0.2, 0.3, 1.2]);

    [Fact]
    public void All_readings_say_what_one_more_should_be() => Says(All, 0.6435204856, 0.0012837633, -23.5619045637);

    [Fact]
    public void A_reading_left_out_says_nothing() => Says(All.Without([2]), 0.6224137931, -0.0001379310, -24.8552248470);

    /// <summary>The last lies 7.4 deviations off what the others say: it counts as two, and then no other lies further off.</summary>
    [Fact]
    public void A_reading_far_off_the_others_is_drawn_in() => Says(All.DrawnIn(2), 0.1126802593, -0.0016932235, 0.4298530622);

    [Fact]
    public void It_is_told_how_far_off_it_lies() => Assert.Equal(7.4, All.Deviations(3), 0.05);

    [Fact]
    public void None_far_off_is_left_as_it_is() => Says(All.DrawnIn(10), 0.6435204856, 0.0012837633, -23.5619045637);

    /// <summary>The two far ones share a part of their own of variance 0.09: what they say together counts less.</summary>
    [Fact]
    public void Readings_that_share_a_fault_of_their_own_count_less() => Says(All.Loosened([2, 3], 0.09), 0.3724350557, 0.0020810734, -9.2451417233);

    [Fact]
    public void Readings_that_are_moved_say_what_those_would()
    {
        double[] by = [0.4, 0, -0.1, 0];
        var (moved, read) = (All.Moved(by), JointNormal.Of(Covariance, [0.5, -0.2, 0.2, 1.2]));
        Assert.Equal(read.Mean(With), moved.Mean(With), 1e-12);
        Assert.Equal(read.LogLikelihood, moved.LogLikelihood, 1e-12);
    }

    [Fact]
    public void A_reading_left_out_stays_out_when_another_is_loosened() => Says(All.Without([2]).Loosened([3], 0.09), 0.1862348178, -0.0011255061, -3.5210279582);

    /// <summary>A bell of so many hours' half width, less what the rest of the section lacks (an eighteenth of the root of two pi an hour of it), over what is left at its middle.</summary>
    [Theory]
    [InlineData(0.0, 1.0, 1)]
    [InlineData(1.0, 1.0, 0.5428723811)]
    [InlineData(3.0, 1.0, -0.1488808490)]
    [InlineData(null, 1.0, -0.1617871383)]
    [InlineData(1.0, 1.5, 0.7481241403)]
    [InlineData(3.0, 2.5, 0.2126377425)]
    [InlineData(null, 2.5, -0.5340783601)]
    public void A_step_reaches_the_places_beside_it_and_slows_the_rest(double? hours, double halfWidth, double share) => Assert.Equal(share, Beside.Reaches(hours, halfWidth), 1e-9);

    [Fact]
    public void A_fault_is_as_wide_as_a_corner_or_as_a_wall() => Assert.Equal([1, 1.5, 2.5], Beside.HalfWidths);

    /// <summary>Hours from the side that gains, from the one that loses, and between the two.</summary>
    [Theory]
    [InlineData(0.0, 6.0, 6, 1.5, 1)]
    [InlineData(6.0, 0.0, 6, 1.5, -1)]
    [InlineData(3.0, 3.0, 6, 2.5, 0)]
    [InlineData(1.5, 4.5, 6, 2.5, 0.6752780876)]
    [InlineData(null, null, 6, 1, 0)]
    public void What_one_side_gains_the_other_loses(double? hours, double? fromOther, double apart, double halfWidth, double share) =>
        Assert.Equal(share, Beside.Leans(hours, fromOther, apart, halfWidth), 1e-9);

    /// <summary>A probe that reads -0.3 where 0 is sound; places beside it that speak for a step down of 0.4 by e^0.8 and take a fifth of it on themselves; or, as likely, that say nothing. By quadrature.</summary>
    [Fact]
    public void What_lies_beside_a_place_speaks_too()
    {
        double Ratio(params Beside[] beside) => AirLikelihood.Of((-0.3, 0.05), null).Ratio(0, 0.1, new Step(0.4, 1, StepWay.Down), beside);
        Assert.Equal(63.8714, Ratio(new Beside(-6, 20, 0.2)), 0.1);
        Assert.Equal(41.8269, Ratio(new Beside(-6, 20, 0.2), default), 0.1);
    }

    private static void Says(JointNormal joint, double mean, double taken, double log)
    {
        Assert.Equal(mean, joint.Mean(With), 1e-9);
        Assert.Equal(taken, joint.Taken(With, And), 1e-9);
        Assert.Equal(log, joint.LogLikelihood, 1e-8);
    }
}
