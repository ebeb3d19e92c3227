using Portwright.Shop.Findings;
using Portwright.Shop.Findings.Rules;
using Portwright.Shop.Tests.Findings;

namespace Portwright.Shop.Tests.Metal;

/// <summary>Hours round the port that each rule's cut reaches: an hour and a half, but the short side is laid back wide.</summary>
public sealed class ReachOfEachCut
{
    [Fact]
    public void A_cut_at_a_place_reaches_an_hour_and_a_half_to_each_side() =>
        Assert.Equal(1.5, JudgedCut.Of(new MadePort(3) { RingsAt = [], Places = [] }.Survey(), $"Take it back.", 0.1, 0.03, "judged", 6)!.ReachesWall);

    [Fact]
    public void The_throat_opened_reaches_an_hour_and_a_half()
    {
        var made = new MadePort(3) { RingsAt = [], Places = [] };
        made.Valve = made.Valve with { ThroatDiameter = 0.0390 };
        made.Stations.RemoveAt(5);
        Assert.Equal(1.5, Assert.Single(new ThroatTooSmall().Look(made.Survey())).Suggestion!.ReachesWall);
    }

    [Fact]
    public void The_seat_recut_reaches_an_hour_and_a_half() => Assert.Equal(
        1.5, Assert.Single(new SeatLimitsLowLift().Look(new MadePort(3) { RingsAt = [], Places = [], FlowFactor = l => l < 0.006 ? 0.8 : 1 }.Survey())).Suggestion!.ReachesWall);

    [Fact]
    public void The_short_side_laid_back_reaches_two_hours_and_a_half()
    {
        var port = new MadePort(3) { RingsAt = [], Places = [("D", 6), ("C", 12), ("C", 3), ("C", 9)], BallFactor = (s, _) => s == "D" ? -0.4 : 1 }.Survey();
        Assert.Equal(2.5, Assert.Single(new TornOffShortSide().Look(port)).Suggestion!.ReachesWall);
    }
}
