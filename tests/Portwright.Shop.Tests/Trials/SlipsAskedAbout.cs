using Portwright.Physics.Air;
using Portwright.Physics.TestPiece;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Reduction;
using Portwright.Shop.Trials;

namespace Portwright.Shop.Tests.Trials;

/// <summary>A reading is asked about where it lies far off what the rest says: 25 in 100 off its own curve, 12 off what the cut before leads one to expect.</summary>
public sealed class SlipsAskedAbout
{
    private static readonly (double Lift, double Flow)[] Straight = [(0.002, 20), (0.004, 40), (0.008, 80)];

    [Theory]
    [InlineData(0.006, 74.9, false)]
    [InlineData(0.006, 75.1, true)]
    [InlineData(0.006, 45.1, false)]
    [InlineData(0.006, 44.9, true)]
    [InlineData(0.010, 124.9, false)] // Carried on from the last two.
    [InlineData(0.010, 125.1, true)]
    [InlineData(0.001, 12.4, false)] // And from the first two.
    [InlineData(0.001, 12.6, true)]
    public void Off_its_own_curve_by_a_quarter_it_is_asked_about(double lift, double flow, bool asked)
    {
        var question = TypingSlip.Ask(Curve(Straight), null, lift, flow);
        Assert.Equal(asked, question is not null);
        Assert.Equal(1e4 * lift, question?.Expected ?? 1e4 * lift, 1e-9);
    }

    [Fact]
    public void Two_neighbours_say_what_to_expect_and_one_does_not()
    {
        Assert.NotNull(TypingSlip.Ask(Curve([(0.002, 20), (0.004, 40)]), null, 0.006, 100));
        Assert.Null(TypingSlip.Ask(Curve([(0.002, 20)]), null, 0.006, 100));
        // Readings of the lift itself are no neighbours.
        Assert.Null(TypingSlip.Ask(Curve([(0.002, 20), (0.006, 60)]), null, 0.006, 100));
        // Nothing is expected where the curve leads to no flow.
        Assert.Null(TypingSlip.Ask(Curve([(0.004, 20), (0.008, 80)]), null, 0.002, 100));
    }

    /// <summary>The cut before flowed 60 at 6 mm and 40 at 4; this one flows 44 at 4: 66 is expected at 6.</summary>
    [Theory]
    [InlineData(73.9, false)]
    [InlineData(74, true)]
    [InlineData(58.1, false)]
    [InlineData(58, true)]
    public void Off_the_cut_before_moved_as_the_nearest_lift_moved_by_an_eighth_it_is_asked_about(double flow, bool asked)
    {
        var question = TypingSlip.Ask(Curve([(0.002, 20), (0.0045, 49.5), (0.010, 100)]), Curve([(0.002, 20), (0.004, 40), (0.0045, 45), (0.006, 60), (0.010, 100)]), 0.006, flow);
        Assert.Equal(asked, question is not null);
        Assert.Equal(66, question?.Expected ?? 66, 1e-9);
    }

    [Fact]
    public void The_first_reading_is_held_against_the_cut_before_as_it_was()
    {
        Assert.Null(TypingSlip.Ask(Curve([]), Curve(Straight), 0.004, 44));
        Assert.NotNull(TypingSlip.Ask(Curve([]), Curve(Straight), 0.004, 45));
    }

    [Fact]
    public void Past_what_the_cut_before_was_tested_at_the_neighbours_speak()
    {
        Assert.Null(TypingSlip.Ask(Curve(Straight), Curve([(0.002, 40), (0.004, 80)]), 0.010, 124));
        Assert.NotNull(TypingSlip.Ask(Curve(Straight), Curve([(0.002, 40), (0.004, 80)]), 0.010, 126));
    }

    private static FlowCurve Curve((double Lift, double Flow)[] points) => new(
        points.Select(p => new LiftPoint(p.Lift, [], Estimate.Exact(p.Flow / 1e5), Estimate.Exact(p.Flow), p.Flow)), FlowDirection.Draw, 6975, new StandardAir());
}
