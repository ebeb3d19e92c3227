using Portwright.Engine.Cam;
using Portwright.Physics.Valves;
using Portwright.Shop.Findings;
using Portwright.Shop.Plan;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;

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

    /// <summary>An area straight in lift has the mean of the lift itself, which the cam's curve knows exactly.</summary>
    [Fact]
    public void The_mean_over_the_event_is_that_of_the_plans_own_cam()
    {
        var (curve, plan) = StraightInLift(Both);
        var cam = plan.IntakeCam;
        var share = cam.Lift.Area / (cam.Lift.Closes - cam.Lift.Opens) / cam.Lift.Highest;
        var (full, mean) = (curve.AreaAt(cam.Lift.Highest)!, LiftEvent.MeanArea(curve, cam)!);
        Assert.Equal(share, mean.Value / full.Value, 0.01);
        Assert.DoesNotContain(mean.Contributions, c => c.Source == "shape of the cam");
        Assert.Null(LiftEvent.MeanArea(curve, PlanInFull.Of(Stated with { IntakeCam = new CamLift(0.0095, 1.5, 0.00025), IntakeTiming = Both }).Plan!.IntakeCam));
    }

    /// <summary>Flanks ten degrees slower or steeper: half the distance of their means is a rectangle's limit.</summary>
    [Theory]
    [InlineData(true, false)]
    [InlineData(false, true)]
    public void With_one_duration_alone_the_cams_flanks_are_in_doubt(bool seat, bool at050)
    {
        var (curve, plan) = StraightInLift(Both with { SeatDuration = seat ? Both.SeatDuration : null, DurationAt050 = at050 ? Both.DurationAt050 : null });
        var cam = plan.IntakeCam;
        Assert.Empty(cam.NotStated);
        Assert.Equal(2, cam.Flanks.Count);
        double Share(ValveLift lift) => lift.Area / (lift.Closes - lift.Opens) / lift.Highest;
        var half = Math.Abs(Share(cam.Flanks[0]) - Share(cam.Flanks[1])) / 2;
        Assert.InRange(half, 0.02, 0.05);
        var mean = LiftEvent.MeanArea(curve, cam)!;
        var shape = Math.Abs(mean.Contributions.Single(c => c.Source == "shape of the cam").Amount) / curve.AreaAt(cam.Lift.Highest)!.Value;
        Assert.Equal(half / Math.Sqrt(3), shape, 0.0006);
    }

    private static readonly CamTiming Both = new(270 * Math.PI / 180, null, 220 * Math.PI / 180, null, 108 * Math.PI / 180);

    private static EnginePlan Stated => new MadePort(71).Plan;

    private static (FlowCurve Curve, PlanInFull Plan) StraightInLift(CamTiming timing)
    {
        var made = new MadePort(71) { Range = Ranges.OfEachKind[3], RingsAt = [], Places = [], ExhaustShare = null };
        var healthy = new MadePort(71);
        made.FlowFactor = lift => 0.07 * lift / healthy.EffectiveArea(lift);
        return (made.Survey().Sheet.Flow!.Curve, PlanInFull.Of(Stated with { IntakeTiming = timing }).Plan!);
    }
}
