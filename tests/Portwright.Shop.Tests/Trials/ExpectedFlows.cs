using Portwright.Physics.Air;
using Portwright.Physics.TestPiece;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Trials;

namespace Portwright.Shop.Tests.Trials;

/// <summary>What a reading should come to, by the best that is known: the lift read before, the cut before, a sister port, the sweep's own lifts, the valve.</summary>
public sealed class ExpectedFlows
{
    private static readonly (double Lift, double Flow)[] Straight = [(0.002, 20), (0.004, 40), (0.008, 80)];

    private static readonly ValveData Valve = new(0.040, Math.PI / 4, 0.0015, 0.035, 0.008);

    [Theory]
    [InlineData(0.006, 60, 0.10)] // Between two.
    [InlineData(0.010, 90, 0.20)] // Past the last it flattens: half way to the straight line.
    [InlineData(0.001, 10, 0.20)] // Before the first, through the closed valve.
    [InlineData(0.004, 40, 0.02)] // Read before.
    public void The_sweeps_own_lifts_say(double lift, double flow, double spread) => Is(flow, spread, ExpectedFlow.At(Curve(Straight), [], null, lift));

    /// <summary>The cut before flowed 60 at 6 mm and 40 at 4; this one flows 44 at 4: 66 is expected at 6.</summary>
    [Fact]
    public void The_cut_before_is_moved_as_the_nearest_lift_moved() => Is(66, 0.045, ExpectedFlow.At(
        Curve([(0.002, 20), (0.0045, 49.5), (0.010, 100)]), [(Curve([(0.002, 20), (0.004, 40), (0.0045, 45), (0.006, 60), (0.010, 100)]), "cut 1")], null, 0.006));

    [Fact]
    public void The_first_reading_is_held_against_the_cut_before_as_it_was() => Is(40, 0.075, ExpectedFlow.At(Curve([]), [(Curve(Straight), "cut 1")], null, 0.004));

    [Fact]
    public void The_nearest_curve_that_reaches_the_lift_is_taken() =>
        Is(90, 0.075, ExpectedFlow.At(Curve([]), [(Curve(Straight), "cut 1"), (Curve([(0.002, 20), (0.010, 90)]), "intake 3")], null, 0.010));

    /// <summary>Nothing but the valve: 0.58 of pi D L cos 45 (D - 2w + L sin cos) over D, Heywood 1988, equation 6.7, at 2 mm of lift.</summary>
    [Fact]
    public void The_valve_alone_says_roughly()
    {
        var area = 0.58 * Math.PI * 0.002 * Math.Cos(Math.PI / 4) * (0.040 - 2 * 0.0015 + 0.5 * 0.002);
        var empty = Curve([]);
        Is(area * RestatedFlow.VolumeFlow(1, empty.RestatedAt, empty.Air, empty.Direction), 0.30, ExpectedFlow.At(empty, [], Valve, 0.002));
    }

    [Fact]
    public void With_the_valve_shut_or_nothing_known_nothing_is_expected()
    {
        Assert.Null(ExpectedFlow.At(Curve(Straight), [], Valve, 0));
        Assert.Null(ExpectedFlow.At(Curve([]), [], null, 0.004));
        Assert.Null(ExpectedFlow.At(Curve([(0.002, 20)]), [], null, 0.004));
    }

    private static void Is(double flow, double spread, ExpectedFlow? expected)
    {
        Assert.Equal(flow, expected!.Flow, 1e-9);
        Assert.Equal(spread, expected.Spread);
    }

    private static FlowCurve Curve((double Lift, double Flow)[] points) => new(
        points.Select(p => new LiftPoint(p.Lift, [], Estimate.Exact(p.Flow / 1e5), Estimate.Exact(p.Flow), p.Flow)), FlowDirection.Draw, 6975, new StandardAir());
}
