using Portwright.Engine.Runs;
using Portwright.Shop.Plan;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Runs;
using Portwright.Shop.Units;

namespace Portwright.Figures.Tests;

/// <summary>The engine run's figures, drawn from invented results: what is drawn is asked, not what an engine does.</summary>
public sealed class EngineFigureTests
{
    private static readonly FigureSize[] Sizes = [new(620, 470, 15), new(344, 420, 12.5), FigureSize.Paper];

    [Theory]
    [InlineData(UnitSystem.UsCustomary)]
    [InlineData(UnitSystem.Si)]
    public void Every_figure_of_the_run_is_readable_from_phone_to_paper(UnitSystem units)
    {
        var answer = InventedEngine.Answer();
        var speeds = EngineSpeed.Of(answer);
        foreach (var size in Sizes)
        {
            DrawingChecks.IsReadable(TorqueAndPower.Of(speeds, units, size));
            DrawingChecks.IsReadable(FillingOverSpeed.Of(speeds, units, size));
            foreach (var kind in new[] { PortKind.Intake, PortKind.Exhaust })
            {
                DrawingChecks.IsReadable(WorthOverLift.Of(answer, kind, units, size));
                DrawingChecks.IsReadable(WorthAlongPort.Of(answer, kind, units, size));
            }
        }
    }

    [Fact]
    public void The_best_torque_is_named_with_its_doubt_and_its_speed()
    {
        var speeds = EngineSpeed.Of(InventedEngine.Answer());
        var best = speeds.MaxBy(s => s.Torque.Value)!;
        var said = $"{Print.WithDoubt(best.Torque.Value, best.Torque.Expanded(), Dimension.Torque, UnitSystem.UsCustomary)} at {best.Point.RevolutionsAMinute:0} rpm";
        Assert.Contains(TorqueAndPower.Of(speeds, UnitSystem.UsCustomary).Texts(), t => t.Words == said);
    }

    [Fact]
    public void A_lift_that_pays_has_its_bar_up_and_one_that_harms_has_a_hollow_bar_down()
    {
        var answer = InventedEngine.Answer();
        var bars = WorthOverLift.Bars(answer, PortKind.Intake, UnitSystem.UsCustomary);
        var drawn = WorthOverLift.Of(answer, PortKind.Intake, UnitSystem.UsCustomary).Touchables().ToList();
        Assert.Equal(bars.Count, drawn.Count);
        foreach (var bar in bars)
        {
            var box = Assert.Single(drawn, d => d.Title.StartsWith($"{bar.Words}:", StringComparison.Ordinal)).Marks.OfType<RoundedBox>().First();
            Assert.Equal(bar.Torque >= 0 ? Role.Blue : Role.Ground, box.Fill);
        }
    }

    [Fact]
    public void Worth_is_shown_for_one_percent()
    {
        var answer = InventedEngine.Answer();
        Assert.Equal(answer.Worth.Intake.Select(w => w.Torque / 100), WorthOverLift.Bars(answer, PortKind.Intake, UnitSystem.Si).Select(b => b.Torque));
    }

    [Theory]
    [InlineData(UnitSystem.UsCustomary)]
    [InlineData(UnitSystem.Si)]
    public void A_cycle_is_readable_and_what_moves_stays_on_the_drawing(UnitSystem units)
    {
        var shop = new InventedShop();
        var reductions = new Reductions(shop.Bench.Ledger);
        var plan = new EnginePlan(Bore: 0.1016, Stroke: 0.0889, Cylinders: 8, LowestSpeed: 2500, HighestSpeed: 6500, IntakeCam: new CamLift(0.0087, 1.5, 0), ExhaustCam: new CamLift(0.0083, 1.5, 0));
        var question = EngineQuestion.Of(PlanInFull.Of(plan, EnginePorts.Of(reductions, shop.Bench.JobId)), EngineChoice.Of(reductions, shop.Bench.JobId).Pair(reductions), out _)!;
        var trace = CycleTrace.At(question.Single, 75);
        var outside = question.Single.Air.Pressure;
        foreach (var (pipes, size) in new[] { (new FigureSize(760, 300, 15), new FigureSize(760, 500, 15)), (new FigureSize(344, 260, 12.5), new FigureSize(344, 440, 12.5)) })
        {
            DrawingChecks.IsReadable(CycleFigure.Of(trace, outside, units, size));
            var figure = new PipesFigure(trace, question.Plan.Throw, outside, units, pipes);
            var motion = CycleMotion.Of(trace, outside, units, 90, (figure, size));
            Assert.Equal(180, motion.Words.Count);
            Assert.All(motion.Intake, c => Assert.Equal(trace.Intake.Sections.Count, c.Length));
            foreach (var frame in new[] { 0, 45, 90, 135 }) DrawingChecks.IsReadable(figure.Draw(frame));
            Assert.All(Enumerable.Range(0, 180), f => Assert.InRange(figure.Moves(f).Piston, 0, pipes.Height));
            // At the firing top and at the overlap the piston is up, half a turn later it is down.
            Assert.Equal(figure.Moves(0).Piston, figure.Moves(90).Piston, 6);
            Assert.True(figure.Moves(45).Piston > figure.Moves(0).Piston + 20);
        }
    }
}
