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
    public void None_far_off_is_left_as_it_is() => Says(All.DrawnIn(10), 0.6435204856, 0.0012837633, -23.5619045637);

    /// <summary>A bell of an hour's half width, and an eighteenth of the root of two pi that the rest of the section lacks.</summary>
    [Theory]
    [InlineData(0.0, 0.8607428736)]
    [InlineData(1.0, 0.4672735333)]
    [InlineData(3.0, -0.1281481298)]
    [InlineData(null, -0.1392571264)]
    public void A_step_reaches_the_places_beside_it_and_slows_the_rest(double? hours, double share) => Assert.Equal(share, Beside.Reaches(hours), 1e-9);

    /// <summary>A probe that reads -0.3 where 0 is sound; places beside it that speak for a step down of 0.4 by e^0.8 and take a fifth of it on themselves; the normals by hand.</summary>
    [Fact]
    public void What_lies_beside_a_place_speaks_too() =>
        Assert.Equal(63.8714, AirLikelihood.Of((-0.3, 0.05), null).Ratio(0, 0.1, new Step(0.4, 1, StepWay.Down), new Beside(-6, 20, 0.2)), 0.1);

    private static void Says(JointNormal joint, double mean, double taken, double log)
    {
        Assert.Equal(mean, joint.Mean(With), 1e-9);
        Assert.Equal(taken, joint.Taken(With, And), 1e-9);
        Assert.Equal(log, joint.LogLikelihood, 1e-8);
    }
}
