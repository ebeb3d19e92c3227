using Portwright.Physics.Uncertainty;
using Portwright.Shop.Families;
using Portwright.Shop.Reduction;

namespace Portwright.Shop.Tests.Families;

/// <summary>Where a lift's flow should lie by its own curve. Area that goes with a power of lift is a straight line of logarithms: a reading ten percent over it is off by ln 1.1.</summary>
public sealed class NeighboursOnACurve
{
    [Theory]
    [InlineData(5, 2)]
    [InlineData(5, 1)]
    [InlineData(5, 3)]
    [InlineData(4, 1)]
    [InlineData(4, 2)]
    public void Between_three_neighbours_or_four_a_reading_is_off_by_what_it_is_off(int lifts, int at) => Assert.Equal(Math.Log(1.1), CurveNeighbours.Off(Points(lifts, at), at)!.Value, 1e-9);

    [Theory]
    [InlineData(5, 0)]
    [InlineData(5, 4)]
    [InlineData(3, 1)] // One to each side is a line through anything.
    [InlineData(2, 0)]
    public void At_an_end_or_between_two_neighbours_nobody_can_tell(int lifts, int at) => Assert.Null(CurveNeighbours.Off(Points(lifts, at), at));

    /// <summary>Two neighbours to each side are asked and no more: the third does not matter, one left out is replaced by it.</summary>
    [Fact]
    public void Two_to_each_side_are_asked()
    {
        var points = Points(8, 3);
        points[0] = Point(0, 5);
        points[6] = Point(6, 5);
        Assert.Equal(Math.Log(1.1), CurveNeighbours.Off(points, 3)!.Value, 1e-9);
        points = Points(8, 3);
        points[2] = Point(2, 5);
        Assert.NotEqual(Math.Log(1.1), CurveNeighbours.Off(points, 3)!.Value, 1e-3);
        Assert.Equal(Math.Log(1.1), CurveNeighbours.Off(points, 3, 2)!.Value, 1e-9);
        // Only one is left below, and one above: too few.
        Assert.Null(CurveNeighbours.Off(Points(5, 2), 2, 0, 4));
    }

    private static List<LiftPoint> Points(int lifts, int off) => [.. Enumerable.Range(0, lifts).Select(i => Point(i, i == off ? 1.1 : 1))];

    private static LiftPoint Point(int at, double factor)
    {
        var lift = 0.002 * (at + 1);
        var area = factor * 0.05 * Math.Pow(lift, 0.8);
        return new LiftPoint(lift, [], Estimate.Exact(area), Estimate.Exact(area * 100), area * 100);
    }
}
