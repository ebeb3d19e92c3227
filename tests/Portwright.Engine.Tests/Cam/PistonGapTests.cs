using Portwright.Engine.Cam;
using Portwright.Physics.Crank;

namespace Portwright.Engine.Tests.Cam;

public sealed class PistonGapTests
{
    private const double Degree = Math.PI / 180;

    private static readonly SliderCrank Crank = new(0.08, 0.135);

    [Fact]
    public void Least_gap_is_that_of_a_fine_search()
    {
        var lift = ValveLift.OfIntake(new(8e-3, 280 * Degree, 232 * Degree, 106 * Degree) { RockerRatio = 1.5 }, out var problem);
        Assert.Null(problem);
        var gap = PistonGap.Least(lift!, Crank, 5e-3, 15 * Degree);
        var searched = Enumerable.Range(-18_000, 36_001).Min(i => 5e-3 + Crank.FromTop(i * 0.01 * Degree) - lift!.At(i * 0.01 * Degree) * Math.Cos(15 * Degree));

        Assert.Equal(searched, gap.Gap, 1e-8);
        Assert.InRange(gap.Crank, 0, 40 * Degree);
        Assert.True(gap.Gap < 5e-3);
    }

    [Fact]
    public void Turning_the_cam_forward_closes_the_intake_gap()
    {
        double Gap(double centre) => PistonGap.Least(ValveLift.OfIntake(new(8e-3, 280 * Degree, 232 * Degree, centre * Degree) { RockerRatio = 1.5 }, out _)!, Crank, 5e-3, 0).Gap;

        Assert.True(Gap(102) < Gap(106));
        Assert.True(Gap(106) < Gap(110));
    }
}
