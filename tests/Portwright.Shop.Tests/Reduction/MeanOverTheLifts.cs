using Portwright.Physics.Air;
using Portwright.Physics.TestPiece;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Reduction;

namespace Portwright.Shop.Tests.Reduction;

/// <summary>The mean flow over a range of lifts that ends where the sweep ends, however its last lift was typed.</summary>
public sealed class MeanOverTheLifts
{
    [Fact]
    public void A_range_that_ends_at_the_last_lift_in_another_unit_has_its_mean()
    {
        // 0.7 in and 17.78 mm are one lift and two doubles.
        var (inches, millimetres) = (0.7 * 0.0254, 17.78 * 0.001);
        var last = Math.Min(inches, millimetres);
        var curve = Curve([(0.00254, 20), (0.00762, 60), (last, 100)]);
        Assert.Equal(curve.MeanOver(0.00254, last)!.Value, curve.MeanOver(0.00254, Math.BitIncrement(Math.Max(inches, millimetres)))!.Value, 9);
        Assert.Equal(curve.MeanOver(0.00254, last)!.Value, curve.MeanOver(Math.BitDecrement(0.00254), last)!.Value, 9);
        Assert.Null(curve.MeanOver(0.00254, last + 0.0001));
        Assert.Null(curve.MeanOver(0.0024, last));
    }

    private static FlowCurve Curve((double Lift, double Flow)[] points) => new(
        points.Select(p => new LiftPoint(p.Lift, [], Estimate.Exact(p.Flow / 1e5), Estimate.Exact(p.Flow), p.Flow)), FlowDirection.Draw, 6975, new StandardAir());
}
