using System.Text.Json;
using Portwright.Shop.Plan;
using Portwright.Shop.Record;
using Portwright.Shop.Tests.Words;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Tests.Plan;

public sealed class PlanInFullTests
{
    private const double Degree = Math.PI / 180;

    private static readonly EnginePlan Bare = new(Bore: 0.1, Stroke: 0.09);

    [Fact]
    public void Bore_and_stroke_are_enough_and_everything_else_is_said_to_be_assumed()
    {
        var plan = InFull(Bare);
        Assert.Equal(["Bore", "Stroke"], plan.Figures.Where(f => !f.IsAssumed).Select(f => f.Name));
        Assert.All(plan.Figures, f => Assert.True(double.IsFinite(f.Value) && (f.Value > 0 || f.Name is "Pin offset" or "Humidity"), f.Name));
        Assert.All(plan.Figures.Where(f => f.IsAssumed && f.Why.Us().Contains("common practice", StringComparison.Ordinal)), f => Assert.Equal(f.Why.Us(), f.Why.Us().Trim()));
        Assert.NotEmpty(plan.WeightsWhy.Us());
        Assert.NotEmpty(plan.FuelWhy.Us());
    }

    [Fact]
    public void What_is_stated_is_used_and_is_not_marked()
    {
        var plan = InFull(Bare with
        {
            RodLength = 0.15,
            Cylinders = 4,
            FiringOrder = [1, 2, 4, 3],
            CompressionRatio = 11,
            IntakeTiming = new CamTiming(DurationAt050: 230 * Degree, LobeCentre: 106 * Degree),
            IntakeCam = new CamLift(0.008, 1.5, 0.0002),
            Intake = new IntakeTract(0.3, 0.0015, 0.0018, 0.002, new ThrottleArea(0.003)),
            Air = new RunningAir(1500),
        });
        Assert.Equal((0.15, false), (plan.Rod.Value, plan.Rod.IsAssumed));
        Assert.Equal([1, 2, 4, 3], plan.FiringOrder);
        Assert.Equal(0.0118, plan.IntakeCam.Lift.Highest, 9);
        Assert.Equal(106 * Degree, plan.IntakeCam.Lift.HighestAt, 9);
        Assert.DoesNotContain(plan.Intake.Figures, f => f.IsAssumed);
        // Standard atmosphere at 1,500 m: 845.6 hPa (U.S. Standard Atmosphere 1976).
        Assert.InRange(plan.Air.Pressure.Value, 84_550, 84_570);
        Assert.Contains("elevation", plan.Air.Pressure.Why.Us(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_duration_at_050_alone_gives_a_longer_one_at_the_seat()
    {
        var plan = InFull(Bare with { IntakeTiming = new CamTiming(DurationAt050: 230 * Degree) });
        var seat = plan.IntakeCam.Figures.Single(f => f.Name == "Intake seat duration");
        Assert.True(seat.IsAssumed);
        Assert.InRange(seat.Value / Degree, 270, 295);
    }

    [Theory]
    [InlineData(0.045, 0.05)]
    [InlineData(0.07, 0.05)]
    [InlineData(0.13, 0.11)]
    public void Assumed_cams_make_a_valve_lift_for_small_and_large_engines(double bore, double stroke)
    {
        var plan = InFull(new EnginePlan(bore, stroke));
        Assert.Equal(0.125 * bore, plan.IntakeCam.Lift.Highest, 9);
    }

    [Fact]
    public void A_lift_table_stands_for_lobe_and_durations()
    {
        LiftAtAngle[] table = [.. Enumerable.Range(0, 27).Select(i => new LiftAtAngle((-20 + 10 * i) * Degree, 0.012 * Math.Pow(Math.Sin(Math.PI * i / 26), 2)))];
        table[^1] = table[^1] with { Lift = 0 };
        var plan = Bare with { IntakeTiming = new CamTiming(Table: table) };
        Assert.Equal(0.012, plan.LiftOf(PortKind.Intake)!.Value, 9);
        Assert.Null(InFull(plan).IntakeCam.Card);
        Refused(plan with { IntakeCam = new CamLift(0.009) }, "Intake lift table", "Correct one");
        Refused(Bare with { ExhaustTiming = new CamTiming(Table: table) }, "Exhaust lift table", "below zero");
    }

    [Fact]
    public void Contradictions_name_field_value_and_cure()
    {
        Refused(new EnginePlan(Stroke: 0.09), "Bore", "not given");
        Refused(Bare with { RodLength = 0.04 }, "Rod", "1.575 in");
        Refused(Bare with { LowestSpeed = 7000, HighestSpeed = 6000 }, "Highest speed", "other way round");
        Refused(Bare with { Cylinders = 4, FiringOrder = [1, 3, 4, 4] }, "Firing order", "1 3 4 4");
        Refused(Bare with { CompressionRatio = 12, Limits = new ClassLimits(HighestCompressionRatio: 10.5) }, "Compression ratio", "12 is above the class's limit, 10.5");
        Refused(Bare with { IntakeCam = new CamLift(0.009, 1.5), Limits = new ClassLimits(HighestLift: 0.0125) }, "Intake cam", ".531");
        Refused(Bare with { Cylinders = 8, Exhaust = new ExhaustTract(PrimariesACollector: 3) }, "Primaries in a collector", "3 does not share out 8");
        Refused(Bare with { IntakeTiming = new CamTiming(SeatDuration: 220 * Degree, DurationAt050: 260 * Degree) }, "Intake cam", "swapped");
        Refused(Bare with { HighestSpeed = 6000, SpeedWeights = [new(6500, 1)] }, "Weights", "6500 rpm");
    }

    [Fact]
    public void A_carburettor_rated_at_twice_the_drop_is_the_smaller_one()
    {
        double Area(double rating) => InFull(Bare with { Intake = new IntakeTract(Throttle: new RatedCarburettor(0.3, rating)) }).Intake.ThrottleArea.Value;
        // The plain square-root rule, less the air's stretching over a tenth of an atmosphere (three percent).
        Assert.Equal(Math.Sqrt(2), Area(IntakeInFull.UsualRating) / Area(2 * IntakeInFull.UsualRating), 0.05);
    }

    [Fact]
    public void A_restrictor_smaller_than_the_throttle_is_what_the_air_must_pass()
    {
        var plan = InFull(Bare with { Intake = new IntakeTract(Throttle: new ThrottleBores(4, 0.045)), Limits = new ClassLimits(RestrictorDiameter: 0.03) });
        Assert.Equal(Math.PI / 4 * 0.03 * 0.03, plan.Intake.ThrottleArea.Value, 12);
    }

    [Fact]
    public void A_plan_written_before_there_were_timings_still_reads()
    {
        const string old = """{"bore":0.1,"stroke":0.09,"rodLength":null,"cylinders":8,"compressionRatio":null,"intakeCam":{"lobeLift":0.008,"rockerRatio":1.6,"lash":0},"exhaustCam":null,"lowestSpeed":2500,"highestSpeed":6400,"fuel":"petrol","classRules":"","notes":""}""";
        var plan = JsonSerializer.Deserialize<EnginePlan>(old, RecordJson.Default.Options)!;
        Assert.Equal((null, null, 0.0128), (plan.IntakeTiming, plan.Limits, plan.LiftOf(PortKind.Intake)!.Value));
        Assert.Equal(FuelKind.Petrol, InFull(plan).Fuel);
    }

    [Theory]
    [InlineData("Petrol, up to 10 % ethanol", FuelKind.Petrol)]
    [InlineData("ethanol-free premium", FuelKind.Petrol)]
    [InlineData("E85", FuelKind.Ethanol)]
    [InlineData("methanol", FuelKind.Methanol)]
    public void Fuel_is_read_from_the_words_as_a_porter_means_them(string words, FuelKind fuel) => Assert.Equal(fuel, InFull(Bare with { Fuel = words }).Fuel);

    [Fact]
    public void What_no_engine_runs_with_is_refused_by_field_and_cure()
    {
        void Refused(EnginePlan plan, string field) => Assert.Contains(PlanInFull.Of(plan).Problems, p => p.Field.StartsWith(field, StringComparison.Ordinal) && p.Words.Us().StartsWith(field, StringComparison.Ordinal));
        Refused(Bare with { LowestSpeed = 1 }, "Lowest speed");
        Refused(Bare with { LowestSpeed = 9000 }, "Highest speed");
        Refused(Bare with { CompressionRatio = 1.05 }, "Compression ratio");
        Refused(Bare with { Mixture = new(FuelKind.Methanol, 1.8) }, "Mixture");
        Refused(Bare with { Intake = new IntakeTract(300) }, "Runner length");
        Refused(Bare with { IntakeTiming = new CamTiming(LobeCentre: -108 * Degree) }, "Intake lobe centre");
        Refused(Bare with { IntakeTiming = new CamTiming(SeatDuration: 560 * Degree, DurationAt050: 460 * Degree), ExhaustTiming = new CamTiming(SeatDuration: 560 * Degree, DurationAt050: 460 * Degree) }, "Cam");
    }

    [Fact]
    public void Two_intake_ports_a_cylinder_have_a_runner_for_both()
    {
        var one = PlanInFull.Of(Bare, new EnginePorts(new PortsOfKind(1, 0.038), new PortsOfKind())).Plan!;
        var two = PlanInFull.Of(Bare, new EnginePorts(new PortsOfKind(2, 0.038), new PortsOfKind())).Plan!;
        Assert.Equal(2 * one.Intake.FlangeArea.Value, two.Intake.FlangeArea.Value, 1e-12);
    }

    private static PlanInFull InFull(EnginePlan plan)
    {
        var reading = PlanInFull.Of(plan);
        Assert.Empty(reading.Problems);
        return reading.Plan!;
    }

    private static void Refused(EnginePlan plan, string field, string words)
    {
        var reading = PlanInFull.Of(plan);
        Assert.Null(reading.Plan);
        var problem = Assert.Single(reading.Problems);
        Assert.Equal(field, problem.Field);
        Assert.StartsWith(field, problem.Words.Us(), StringComparison.Ordinal);
        Assert.Contains(words, problem.Words.Us(), StringComparison.Ordinal);
    }
}
