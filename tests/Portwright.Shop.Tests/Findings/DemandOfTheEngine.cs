using Portwright.Physics.Valves;
using Portwright.Shop.Findings;
using Portwright.Shop.Record;

namespace Portwright.Shop.Tests.Findings;

/// <summary>What the engine asks of the port, against hand working.</summary>
public sealed class DemandOfTheEngine
{
    [Fact]
    public void The_mach_index_is_piston_area_times_piston_speed_over_mean_area_times_sound()
    {
        // Bore and stroke 100 mm at 3000 rpm: 78.54 cm2 at 10 m/s, through 5 cm2 at 340 m/s: 0.07854 / 0.17.
        Assert.Equal(10, InletMachIndex.MeanPistonSpeed(0.1, 50), 12);
        Assert.Equal(0.46200, InletMachIndex.Of(0.1, 0.1, 50, 0.0005, 340), 4);
        // Twice the speed, twice the index; twice the area, half of it.
        Assert.Equal(2 * 0.46200, InletMachIndex.Of(0.1, 0.1, 100, 0.0005, 340), 3);
        Assert.Equal(0.46200 / 2, InletMachIndex.Of(0.1, 0.1, 50, 0.001, 340), 4);
        Assert.Throws<ArgumentOutOfRangeException>(() => InletMachIndex.Of(0, 0.1, 50, 0.0005, 340));
    }

    [Fact]
    public void The_area_wanted_is_the_one_in_which_the_air_moves_as_the_plan_wants()
    {
        // Bore and stroke 100 mm at 6000 rpm: 78.54 cm2 at 20 m/s are 0.15708 m3/s; at 100 m/s they need 15.708 cm2, at 120 m/s 13.090.
        var made = new MadePort(72);
        made.Plan = made.Plan with { Bore = 0.1, Stroke = 0.1, HighestSpeed = 6000, PortSpeed = new SpeedBand(100, 120) };
        var survey = made.Survey();
        var (least, most) = survey.AreaWanted!.Value;
        Assert.Equal(0.15708 / survey.Intakes / 120, least, 7);
        Assert.Equal(0.15708 / survey.Intakes / 100, most, 7);
        var section = survey.Sections.First();
        Assert.Equal(100, survey.DemandSpeedIn(section)!.Value * section.Area.Value / most, 9);
        made.Plan = made.Plan with { PortSpeed = null };
        Assert.Null(made.Survey().AreaWanted);
    }

    [Fact]
    public void An_area_straight_in_lift_has_the_cams_own_mean_and_the_cams_shape_as_doubt()
    {
        // Mean of sin^2 is 1/2, of sin 2/pi: the mean of both is 0.568 of the area at full lift, half their distance over sqrt(3) the doubt.
        var made = new MadePort(71) { Range = Ranges.OfEachKind[3], RingsAt = [], Places = [], ExhaustShare = null };
        var healthy = new MadePort(71);
        made.FlowFactor = lift => 0.07 * lift / healthy.EffectiveArea(lift);
        var curve = made.Survey().Sheet.Flow!.Curve;
        var (full, mean) = (curve.AreaAt(0.0125)!, LiftEvent.MeanArea(curve, 0.0125)!);
        Assert.Equal((0.5 + 2 / Math.PI) / 2, mean.Value / full.Value, 0.01);
        var shape = Math.Abs(mean.Contributions.Single(c => c.Source == "shape of the cam").Amount) / full.Value;
        Assert.Equal((2 / Math.PI - 0.5) / 2 / Math.Sqrt(3), shape, 0.002);
        Assert.Null(LiftEvent.MeanArea(curve, 0.014));
    }
}
