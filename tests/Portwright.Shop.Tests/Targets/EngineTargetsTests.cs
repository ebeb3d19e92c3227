using Portwright.Physics.Targets;
using Portwright.Physics.Uncertainty;
using Portwright.Physics.Valves;
using Portwright.Shop.Plan;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Sheets;
using Portwright.Shop.Targets;
using Portwright.Shop.Tests.Findings;
using Portwright.Shop.Tests.Words;
using Portwright.Shop.Units;

namespace Portwright.Shop.Tests.Targets;

public sealed class EngineTargetsTests
{
    private const double Degree = Math.PI / 180;

    private static readonly EnginePlan Plan = new(
        0.086, 0.086, 0.140, 4, 10.5, new CamLift(0.0085, 1.5, 0.00025), new CamLift(0.0080, 1.5, 0.0003), 2500, 6000, PortSpeed: new SpeedBand(95, 110),
        IntakeTiming: new CamTiming(270 * Degree, null, 220 * Degree, null, 108 * Degree), Intake: new IntakeTract(0.25));

    [Fact]
    public void Every_row_names_a_rule_of_the_targets_and_prints_in_both_unit_systems()
    {
        var targets = Of(Plan);
        Assert.Empty(targets.Problems);
        Assert.Superset(
            new HashSet<TargetRule> { PistonDemand.Rule, MachTargets.Rule, NeededArea.Rule, SectionSpeed.Rule, SectionSpeed.LimitRule, TimeArea.Rule, FlowBalance.Rule, FlowBalance.PowerRule, ThroatShare.Rule, RunnerTuning.EchoRule, RunnerTuning.VesselRule, RunnerTuning.QuarterWaveRule, VesselResonance.Rule },
            targets.Rows.Select(r => r.Rule).ToHashSet());
        Assert.All(targets.Rows, r =>
        {
            Assert.True(r.Rule.Source.Length > 0, r.What.ToString());
            foreach (var units in Enum.GetValues<UnitSystem>())
                Assert.False(r.WantedSaid.IsEmpty && r.MeasuredSaid.IsEmpty, r.What.In(units));
        });
    }

    [Fact]
    public void Index_and_rpm_at_its_knee_say_one_thing()
    {
        var rows = Of(Plan).Rows;
        var index = rows.Single(r => r.What.Us().StartsWith("Inlet Mach index", StringComparison.Ordinal)).Measured!;
        var knee = rows.Single(r => r.What.Us().Contains("begins to fall", StringComparison.Ordinal)).Measured!;
        Assert.Equal(6000 * InletMachIndex.Knee / index.Value, knee.Value * 30 / Math.PI, 6);
        Assert.Equal(index.StandardUncertainty / index.Value, knee.StandardUncertainty / knee.Value, 9);
    }

    /// <summary>A port that flows just the wanted curve has just the index the curve was drawn for: the two rules are one.</summary>
    [Fact]
    public void A_port_that_flows_what_is_wanted_stands_at_the_knee()
    {
        var plan = PlanInFull.Of(Plan).Plan!;
        var lift = plan.IntakeCam.Lift;
        var needed = WantedFlow.Needed(plan, InletMachIndex.Knee)!;
        var mean = TimeArea.MeanArea(TimeArea.AngleArea(lift.Opens, lift.Closes, lift.At, needed.At), lift.Closes - lift.Opens);
        Assert.Equal(InletMachIndex.Knee, InletMachIndex.Of(0.086, 0.086, 100, mean, plan.Air.State.SpeedOfSound), 3);
    }

    [Fact]
    public void Flow_wanted_rises_with_lift_and_with_engine_speed_and_is_cut_in_two_by_a_second_intake()
    {
        var made = new MadePort(81) { Plan = Plan };
        var wanted = Wanted(made)!;
        Assert.Equal("wanted at 6,000 rpm", wanted.Words);
        Assert.Equal(wanted.Line.Select(p => p.Least).Order(), wanted.Line.Select(p => p.Least));
        Assert.All(wanted.Line, p => Assert.True(p.Most >= p.Least));
        made.Plan = Plan with { HighestSpeed = 7500 };
        Assert.Equal(1.25, Wanted(made)!.Line[^1].Least / wanted.Line[^1].Least, 6);
        made.Plan = Plan;
        made.Also = (bench, cut) => bench.Add(bench.Ledger.Get<Port>(bench.Ledger.Get<Cut>(cut).Fact.Port).Fact);
        Assert.Equal(0.5, Wanted(made)!.Line[^1].Least / wanted.Line[^1].Least, 6);
    }

    [Fact]
    public void Nothing_is_drawn_as_wanted_on_an_assumed_speed_or_bore()
    {
        Assert.Null(Wanted(new MadePort(82) { Plan = Plan with { HighestSpeed = null } }));
        Assert.Null(Wanted(new MadePort(82) { Plan = Plan with { Bore = null } }));
        Assert.Null(Wanted(new MadePort(82) { Plan = Plan with { IntakeCam = null } }));
    }

    [Fact]
    public void A_plan_that_is_no_engine_yet_gives_problems_and_no_rows()
    {
        var targets = Of(Plan with { Stroke = null });
        Assert.Empty(targets.Rows);
        Assert.Equal("Stroke", Assert.Single(targets.Problems).Field);
    }

    [Fact]
    public void What_the_rows_lean_on_that_was_assumed_is_named()
    {
        var names = Of(Plan).Leaned.Select(f => f.Name).ToList();
        Assert.Contains("Plenum volume", names);
        Assert.DoesNotContain("Runner length", names);
    }

    [Theory]
    [InlineData(1.00, TargetAnswer.Short)]
    [InlineData(1.10, TargetAnswer.CannotTell)]
    [InlineData(1.50, TargetAnswer.Within)]
    [InlineData(2.20, TargetAnswer.Over)]
    public void The_answer_weighs_the_doubt_of_the_measurement(double value, TargetAnswer expected)
    {
        var measured = Estimate.Exact(value).With(new Contribution("calliper", 0.05));
        Assert.Equal(expected, new EngineTarget(SectionSpeed.Rule, $"", Dimension.Area, new TargetRange(1.1, 2.0), measured, $"").Answer);
    }

    private static WantedFlow? Wanted(MadePort made)
    {
        var bench = made.Bench(out var port, out _);
        var reductions = new Reductions(bench.Ledger);
        return WantedFlow.Of(reductions, PortSheet.Of(reductions, port));
    }

    private static EngineTargets Of(EnginePlan plan)
    {
        var bench = new MadePort(80) { Plan = plan }.Bench(out var port, out _);
        return EngineTargets.Of(new Reductions(bench.Ledger), port);
    }
}
