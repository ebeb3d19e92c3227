using Portwright.Engine.Runs;
using Portwright.Physics.Targets;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Diagnosis;
using Portwright.Shop.Ports;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Targets;
using Portwright.Shop.Tests.Findings;
using Portwright.Shop.Tests.Words;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Tests.Targets;

/// <summary>Exhaust against intake is a rule of thumb: a target's row says it, and no finding gives it a chance.</summary>
public sealed class BalanceTests
{
    [Theory]
    [InlineData(0.50, TargetAnswer.Short, "The exhaust is the weaker side by this rule of thumb. Sweep the exhaust, with the pipe it will have, once more; if it stays so, it comes before this port.")]
    [InlineData(0.95, TargetAnswer.Over, "The intake is the weaker side by this rule of thumb. Sweep the intake, with its entry radius, once more; if it stays so, work here.")]
    [InlineData(0.72, TargetAnswer.Within, "")]
    public void The_row_says_which_side_is_weaker_and_where_to_work(double share, TargetAnswer answer, string words)
    {
        var row = Row(new MadePort(29) { ExhaustShare = share }, PortKind.Intake)!;
        Assert.Equal(answer, row.Answer);
        Assert.StartsWith("The exhaust of cylinder 1 flows ", row.Words.Us(), StringComparison.Ordinal);
        Assert.Contains(words, row.Words.Us(), StringComparison.Ordinal);
        Assert.Equal(words.Length > 0, row.Words.Us().Contains("weaker side", StringComparison.Ordinal));
    }

    [Fact]
    public void Seen_from_the_exhaust_the_work_is_there() =>
        Assert.Contains("Sweep the exhaust, with the pipe it will have, once more; if it stays so, work here.", Row(new MadePort(29) { ExhaustShare = 0.5 }, PortKind.Exhaust)!.Words.Us(), StringComparison.Ordinal);

    /// <summary>One ratio: the same from either port of the cylinder, of flows at one pressure, the exhaust blown and the intake drawn.</summary>
    [Fact]
    public void Both_sides_print_one_ratio()
    {
        var bench = new MadePort(29).Bench(out _, out _);
        var (intake, exhaust) = (Row(bench, PortKind.Intake)!, Row(bench, PortKind.Exhaust)!);
        Assert.Equal(intake.Measured!.Value, exhaust.Measured!.Value, 9);
        // Areas of 71 percent: blown at 28 inH2O an area shows 3.65 percent more than drawn.
        Assert.Equal(0.71 * 1.0365, intake.Measured.Value, 0.01);
        Assert.Equal("70 to 80 %", intake.WantedSaid.Us());
    }

    /// <summary>The limit is vague by a percent point: an exact 0.694 is on the edge, an exact 0.689 is short.</summary>
    [Theory]
    [InlineData(0.689, TargetAnswer.Short)]
    [InlineData(0.694, TargetAnswer.CannotTell)]
    [InlineData(0.706, TargetAnswer.CannotTell)]
    [InlineData(0.712, TargetAnswer.Within)]
    [InlineData(0.806, TargetAnswer.CannotTell)]
    [InlineData(0.812, TargetAnswer.Over)]
    public void A_rule_of_thumb_has_a_vague_edge(double share, TargetAnswer answer) =>
        Assert.Equal(answer, new EngineTarget(FlowBalance.Rule, $"", Dimension.Fraction, TargetRange.Of(NamedLimits.ExhaustOverIntake), Estimate.Exact(share), $"").Answer);

    [Fact]
    public void Without_the_other_side_nothing_is_said_of_the_balance() => Assert.Null(Row(new MadePort(29) { ExhaustShare = null }, PortKind.Intake));

    [Fact]
    public void With_a_cam_nobody_stated_the_balance_is_not_judged()
    {
        var made = new MadePort(29) { ExhaustShare = 0.5 };
        made.Plan = made.Plan with { ExhaustCam = null };
        var row = Row(made, PortKind.Intake)!;
        Assert.Equal((TargetAnswer.None, "not judged"), (row.Answer, row.AnswerWords));
        Assert.EndsWith("Not judged: nobody stated exhaust lobe lift (.394 assumed).", row.Words.Us(), StringComparison.Ordinal);
        Assert.DoesNotContain("weaker", row.Words.Us(), StringComparison.Ordinal);
    }

    /// <summary>The sheet says under its table what to do about a row that is not as wanted.</summary>
    [Fact]
    public void The_sheet_says_the_rows_words()
    {
        var bench = new MadePort(29) { ExhaustShare = 0.5 }.Bench(out var port, out _);
        var said = PortDocument.Of(PortAtCut.Of(new Reductions(bench.Ledger), port, null, new NothingKept())).Parts
            .Single(p => p.Key == "engine").Blocks.OfType<Paragraph>().Select(p => p.Text.Us());
        Assert.Single(said, s => s.StartsWith("Exhaust over intake flow, each at its cam's lift: ", StringComparison.Ordinal)
            && s.Contains("if it stays so, it comes before this port.", StringComparison.Ordinal));
    }

    private sealed class NothingKept : IKeptPoints
    {
        public OperatingPoint? Find(string key) => null;

        public void Keep(string key, OperatingPoint point)
        {
        }
    }

    [Fact]
    public void No_finding_speaks_of_the_balance() => Assert.DoesNotContain(Catalogue.All, r => r.Key.Contains("balance", StringComparison.Ordinal));

    private static EngineTarget? Row(MadePort made, PortKind kind) => Row(made.Bench(out _, out _), kind);

    private static EngineTarget? Row(SimulatedBench bench, PortKind kind)
    {
        var ports = bench.Ledger.All<Port>().Where(p => p.Fact.Kind == kind && bench.Ledger.CutsOf(p.Id) is [var cut, ..] && bench.Ledger.SweepsOf(cut.Id).Count > 0).ToList();
        return EngineTargets.Of(new Reductions(bench.Ledger), ports[0].Id).Rows.SingleOrDefault(r => r.Rule == FlowBalance.Rule);
    }
}
