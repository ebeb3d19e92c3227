using Portwright.Engine.Runs;
using Portwright.Physics.Targets;
using Portwright.Shop.Targets;

namespace Portwright.Shop.Tests.Targets;

/// <summary>The line of wanted flow between its places, and where the engine run says that more pays.</summary>
public sealed class LineWanted
{
    private static readonly WantedFlow Line = new(FlowBalance.Rule, "wanted", [(0.004, 10, 20), (0.008, 30, 60), (0.010, 32, 64)]);

    [Theory]
    [InlineData(0.004, 10, 20)]
    [InlineData(0.005, 15, 30)]
    [InlineData(0.008, 30, 60)]
    [InlineData(0.009, 31, 62)]
    [InlineData(0.010, 32, 64)]
    public void Between_two_places_it_runs_straight(double lift, double least, double most)
    {
        Assert.Equal(least, Line.At(lift)!.Value.Low, 1e-9);
        Assert.Equal(most, Line.At(lift)!.Value.High, 1e-9);
    }

    [Theory]
    [InlineData(0.0039)]
    [InlineData(0.0101)]
    public void Beyond_it_nothing_is_wanted(double lift) => Assert.Null(Line.At(lift));

    [Fact]
    public void One_place_alone_speaks_of_its_own_lift()
    {
        var one = Line with { Line = [(0.008, 30, 60)] };
        Assert.Equal(30, one.At(0.008)!.Value.Low);
        Assert.Null(one.At(0.0081));
    }

    /// <summary>A lift pays wholly from a fifth of the most; under it by the smooth step 3x2 - 2x3: half at a tenth, .104 at a twenty-fifth.</summary>
    [Theory]
    [InlineData(1, 1)]
    [InlineData(0.2, 1)]
    [InlineData(0.1, 0.5)]
    [InlineData(0.04, 0.104)]
    [InlineData(0, 0)]
    [InlineData(-0.5, 0)]
    public void Where_more_is_worth_little_less_is_enough(double worth, double share)
    {
        var shaped = Line.ShapedBy([Worth(0.004, 5), Worth(0.008, 5 * worth), Worth(0.010, 5 * worth)])!;
        Assert.Equal(30 * share, shaped.Line[1].Least, 1e-9);
        Assert.Equal(60, shaped.Line[1].Most, 1e-9);
        Assert.Equal(10, shaped.Line[0].Least, 1e-9);
    }

    [Fact]
    public void A_run_that_says_nothing_leaves_it_and_one_in_which_nothing_pays_takes_it_away()
    {
        Assert.Same(Line, Line.ShapedBy([Worth(0.004, 5)]));
        Assert.NotSame(Line, Line.ShapedBy([Worth(0.004, 5), Worth(0.010, 5)]));
        Assert.Null(Line.ShapedBy([Worth(0.004, 0), Worth(0.010, -1)]));
        var one = Line with { Line = [(0.008, 30, 60)] };
        Assert.Same(one, one.ShapedBy([Worth(0.004, 5), Worth(0.010, 0)]));
    }

    /// <param name="torque">N m for a percent more area.</param>
    private static LiftWorth Worth(double lift, double torque) => new(lift, 0, torque);
}
