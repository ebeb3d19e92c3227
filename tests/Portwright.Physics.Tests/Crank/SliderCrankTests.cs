using CsCheck;
using Portwright.Physics.Crank;

namespace Portwright.Physics.Tests.Crank;

public sealed class SliderCrankTests
{
    private static readonly Gen<SliderCrank> AnyCrank = Gen.Select(
        Gen.Double[0.03, 0.12], Gen.Double[1.2, 2.4], Gen.Double[-0.06, 0.06],
        (stroke, rod, offset) => new SliderCrank(stroke, rod * stroke, offset * stroke));

    [Fact]
    public void Piston_stands_at_its_top_at_no_angle_and_at_its_bottom_where_it_is_said_to() => AnyCrank.Sample(crank =>
    {
        Assert.Equal(0, crank.FromTop(0), 1e-15);
        Assert.Equal(0, crank.Slope(0), 1e-15);
        Assert.Equal(crank.Travel, crank.FromTop(crank.BottomAngle), 1e-15);
        Assert.Equal(0, crank.Slope(crank.BottomAngle), 1e-15);
    });

    [Fact]
    public void Piston_never_leaves_its_travel() => Gen.Select(AnyCrank, Gen.Double[-20, 20]).Sample((crank, angle) =>
        Assert.InRange(crank.FromTop(angle), -1e-15, crank.Travel + 1e-15));

    [Fact]
    public void Slope_is_the_slope_of_the_distance() => Gen.Select(AnyCrank, Gen.Double[0, 6.3]).Sample((crank, angle) =>
    {
        const double h = 1e-5;
        Assert.Equal((crank.FromTop(angle + h) - crank.FromTop(angle - h)) / (2 * h), crank.Slope(angle), 1e-9 * crank.Stroke);
    });

    [Fact]
    public void Piston_is_nowhere_faster_than_at_its_fastest_angle() => Gen.Select(AnyCrank, Gen.Double[0, 6.3]).Sample((crank, angle) =>
        Assert.True(crank.Slope(angle) <= crank.Slope(crank.FastestAngle) * (1 + 1e-14)));

    [Fact]
    public void Offset_lengthens_the_travel_and_towards_the_downward_side_slows_the_way_down()
    {
        SliderCrank plain = new(0.088, 0.145), offset = new(0.088, 0.145, 0.002);
        Assert.True(offset.Travel > plain.Travel);
        Assert.True(offset.BottomAngle > Math.PI);
        Assert.Equal(0.088, plain.Travel, 1e-16);
        Assert.Equal(Math.PI, plain.BottomAngle, 1e-15);
    }

    [Fact]
    public void Rod_that_cannot_turn_is_refused() =>
        Assert.Contains("rod", Assert.Throws<ArgumentOutOfRangeException>(() => new SliderCrank(0.088, 0.0445, 0.001)).Message, StringComparison.Ordinal);
}
