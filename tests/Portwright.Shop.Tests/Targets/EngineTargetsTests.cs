using Portwright.Physics.Targets;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Targets;
using Portwright.Shop.Tests.Findings;
using Portwright.Shop.Tests.Words;
using Portwright.Shop.Units;

namespace Portwright.Shop.Tests.Targets;

public sealed class EngineTargetsTests
{
    private const double Degree = Math.PI / 180;

    internal static readonly EnginePlan Plan = new(
        0.086, 0.086, 0.140, 4, 10.5, new CamLift(0.0085, 1.5, 0.00025), new CamLift(0.0080, 1.5, 0.0003), 2500, 6000, PortSpeed: new SpeedBand(95, 110),
        IntakeTiming: new CamTiming(270 * Degree, null, 220 * Degree, null, 108 * Degree), Intake: new IntakeTract(0.25));

    [Fact]
    public void Every_row_names_a_rule_of_the_targets_and_prints_in_both_unit_systems()
    {
        var targets = Of(Plan);
        Assert.Empty(targets.Problems);
        Assert.Superset(
            new HashSet<TargetRule> { PistonDemand.Rule, MachTargets.Rule, ValveAtBest.Rule, SectionSpeed.Rule, SectionSpeed.LimitRule, TimeArea.Rule, FlowBalance.Rule, FlowBalance.PowerRule, ThroatShare.Rule, RunnerTuning.EchoRule, RunnerTuning.VesselRule, RunnerTuning.QuarterWaveRule, VesselResonance.Rule },
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
        var knee = rows.Single(r => r.What.Us().Contains("falls steeply", StringComparison.Ordinal)).Measured!;
        Assert.Equal(6000 * NamedLimits.InletMachKnee.Limits.High / index.Value, knee.Value * 30 / Math.PI, 6);
        Assert.Equal(index.StandardUncertainty / index.Value, knee.StandardUncertainty / knee.Value, 9);
        // One fact is judged once, however many ways it is said.
        Assert.Single(rows, r => r.Rule == MachTargets.Rule && r.Wanted is not null);
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

    private static EngineTargets Of(EnginePlan plan)
    {
        var bench = new MadePort(80) { Plan = plan }.Bench(out var port, out _);
        return EngineTargets.Of(new Reductions(bench.Ledger), port);
    }
}
