using Portwright.Physics.Uncertainty;
using Portwright.Shop.Diagnosis;
using Portwright.Shop.Findings;
using Portwright.Shop.Record;
using Portwright.Shop.Walls;

namespace Portwright.Shop.Tests.Findings;

/// <summary>Thin metal stops a cut: by how much, how far round, how far along. Move one of these figures and a test fails.</summary>
public sealed class WallGuardTests
{
    private const double Inch = 0.0254, Thou = Inch / 1000;

    // The least a shop leaves: common practice, no source.
    [Theory]
    [InlineData("aluminium", Behind.Water, 0.120)]
    [InlineData("aluminium", Behind.Oil, 0.120)]
    [InlineData("aluminium", Behind.Pushrod, 0.120)]
    [InlineData("aluminium", Behind.SpringSeat, 0.120)]
    [InlineData("aluminium", Behind.Bolt, 0.120)]
    [InlineData("aluminium", Behind.Unknown, 0.120)]
    [InlineData("aluminium", Behind.Air, 0.100)]
    [InlineData("cast iron", Behind.Water, 0.100)]
    [InlineData("cast iron", Behind.Unknown, 0.100)]
    [InlineData("cast iron", Behind.Air, 0.080)]
    [InlineData("", Behind.Water, 0.120)]
    public void The_usual_limit_is_that_of_the_metal_and_of_what_lies_behind(string material, Behind behind, double inches) =>
        Assert.Equal(inches * Inch, WallLimit.Usual(material, behind), 1e-9);

    [Fact]
    public void A_gauge_is_doubted_by_three_thousandths() => Assert.Equal(3 * Thou, WallState.ThicknessDoubt, 1e-12);

    /// <summary>Twice the gauge's doubt over the limit is where cutting stops: .126 in over water in aluminium.</summary>
    [Theory]
    [InlineData(125, true)]
    [InlineData(127, false)]
    [InlineData(120, true)]
    [InlineData(94, true)]
    public void A_wall_stops_a_cut_while_the_gauges_doubt_leaves_none(double thousandths, bool stops)
    {
        var wall = Assert.Single(Made((s, b) => s == "D" && b == 6 ? thousandths * Thou : 200 * Thou).Survey().Stations.SelectMany(s => s.Walls), w => w.Station.Fact.Letter == "D" && w.Point.Fact.Bearing == 6);
        Assert.Equal(stops, wall.Stops);
    }

    /// <summary>Twice as much again is told as near: .120 in is the limit, .126 stops, .132 no longer is near.</summary>
    [Theory]
    [InlineData(125, false)]
    [InlineData(127, true)]
    [InlineData(131, true)]
    [InlineData(133, false)]
    public void A_wall_a_cut_or_two_over_its_limit_is_told(double thousandths, bool near)
    {
        var wall = Assert.Single(Made((s, b) => s == "D" && b == 6 ? thousandths * Thou : 200 * Thou).Survey().Stations.SelectMany(s => s.Walls), w => w.Station.Fact.Letter == "D" && w.Point.Fact.Bearing == 6);
        Assert.Equal(near, wall.IsNearlyAtLimit);
    }

    /// <summary>The cut at D on the floor is blended out one station to each side, and round the floor.</summary>
    [Theory]
    [InlineData("D", 6, true)]
    [InlineData("C", 6, true)]
    [InlineData("E", 6, true)]
    [InlineData("B", 6, false)]
    [InlineData("F", 6, false)]
    [InlineData("D", 12, false)]
    [InlineData("D", 3, false)]
    public void A_cut_is_stopped_by_thin_metal_wherever_it_reaches(string station, double bearing, bool stopped)
    {
        var port = Made((s, b) => (s == station && b == bearing ? 94 : 200) * Thou).Survey();
        var torn = Assert.Single(PortFindings.Of(port), f => f.Rule.Key == "short-side-torn-off");
        Assert.Equal(stopped, torn.Suggestion is null);
    }

    /// <summary>A cut that says no more reaches an hour and a half to each side; the short side's, laid back wide, two and a half.</summary>
    [Fact]
    public void A_cut_reaches_as_far_round_as_it_says()
    {
        Assert.Equal(1.5, new CutSuggestion($"Raise the roof.", Estimate.Exact(1), 0.005, 0.0125, 12).ReachesWall);
        Assert.Equal(2.5, Assert.Single(PortFindings.Of(Made((_, _) => 200 * Thou).Survey()), f => f.Rule.Key == "short-side-torn-off").Suggestion!.ReachesWall);
    }

    /// <summary>A port whose air is torn off the short side at D, which suggests a cut there.</summary>
    private static MadePort Made(Func<string, double, double> wall) => new(2)
    {
        BallFactor = (s, b) => s == "D" && b == 6 ? -0.4 : 1,
        Wall = wall,
    };
}
