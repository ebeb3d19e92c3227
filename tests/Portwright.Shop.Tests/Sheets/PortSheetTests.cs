using Portwright.Physics.TestPiece;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Sheets;
using Portwright.Shop.Tests.Words;
using Portwright.Shop.Units;

namespace Portwright.Shop.Tests.Sheets;

public sealed class PortSheetTests
{
    private static readonly double[] Lifts = [0.0025, 0.005, 0.0075, 0.010, 0.0125, 0.0135];

    [Fact]
    public void The_sheet_gives_the_flow_at_the_lift_the_cam_really_reaches()
    {
        var (bench, _) = TwoCuts();
        var sheet = PortSheet.Of(bench.Ledger, bench.PortId);
        Assert.Equal(0.0085 * 1.5 - 0.0002, sheet.Cam!.Lift, 1e-12);
        var flow = sheet.Cam.Flow!;
        Assert.InRange(flow.Value, sheet.Flow!.Curve.At(0.0125)!.Value, sheet.Flow.Curve.At(0.0135)!.Value);
        Assert.True(flow.Expanded() > 0);
    }

    [Fact]
    public void Nothing_is_guessed_past_the_last_lift_tested()
    {
        var bench = new SimulatedBench(Ranges.OfEachKind[1]);
        Read(bench, bench.Sweep(bench.Cut(0)), 1, Lifts[..3]);
        var sheet = PortSheet.Of(bench.Ledger, bench.PortId);
        Assert.Null(sheet.Cam!.Flow);
        Assert.Contains(sheet.Remarks, r => r.Us().Contains("was not tested", StringComparison.Ordinal));
    }

    [Fact]
    public void A_sweep_without_leak_test_or_morning_check_says_so()
    {
        var (bench, _) = TwoCuts();
        var remarks = PortSheet.Of(bench.Ledger, bench.PortId).Remarks;
        Assert.Contains(remarks, r => r.Us().StartsWith("No leak test", StringComparison.Ordinal));
        Assert.Contains(remarks, r => r.Us().StartsWith("The bench was not checked", StringComparison.Ordinal));
    }

    [Fact]
    public void The_plain_square_root_rule_stands_beside_and_differs_away_from_28_inches()
    {
        var bench = new SimulatedBench(Ranges.OfEachKind[1]);
        var sweep = bench.Sweep(bench.Cut(0), testPressure: 10);
        foreach (var lift in Lifts)
        {
            bench.Read(sweep, lift, Area(lift), testPressure: 10);
        }

        var point = PortSheet.Of(bench.Ledger, bench.PortId).Flow!.Curve.Points[3];
        // Published check value: 2.5 percent between 10 and 28 inH2O (Heywood, appendix C).
        Assert.Equal(1.025, point.PlainRuleFlow / point.Flow.Value, 0.002);
    }

    [Fact]
    public void Coefficients_carry_the_doubt_of_the_flow_and_of_the_valve()
    {
        var (bench, _) = TwoCuts();
        var windows = PortSheet.Of(bench.Ledger, bench.PortId).Windows;
        Assert.Equal(Lifts.Length, windows.Count);
        Assert.All(windows, w => Assert.Contains(w.OfWindow.ByKind(), k => k.Kind == ContributionKind.Geometry && k.StandardUncertainty > 0));
        Assert.All(windows, w => Assert.True(w.OfWindow.Value >= w.OfThroat.Value));
    }

    [Fact]
    public void Blowing_and_drawing_the_same_area_agree_in_effective_area()
    {
        var bench = new SimulatedBench(Ranges.OfEachKind[1]);
        double Measured(FlowDirection direction)
        {
            var sweep = bench.Sweep(bench.Cut(direction == FlowDirection.Draw ? 0 : 1), direction);
            bench.Read(sweep, 0.008, 0.001);
            return SweepReduction.Reduce(bench.Ledger, bench.Ledger.Get<Sweep>(sweep)).Curve.Points[0].EffectiveArea.Value;
        }

        Assert.Equal(Measured(FlowDirection.Draw), Measured(FlowDirection.Blow), 1e-12);
    }

    [Fact]
    public void The_board_says_which_sweep_to_finish()
    {
        var bench = new SimulatedBench(Ranges.OfEachKind[1]);
        var cut = bench.Cut(0);
        var sweep = bench.Add(new Sweep(
            cut, bench.BenchId, FlowDirection.Draw, "plate", Typed.Of(28, "inH2O"), [Typed.Of(0.1, "in"), Typed.Of(0.2, "in"), Typed.Of(0.3, "in")]));
        bench.Read(sweep, 0.1 * 0.0254, 0.0004);
        var board = JobBoard.Of(bench.Ledger, bench.JobId);
        Assert.Equal("Finish the sweep of intake 1, head A: 2 lifts left.", board.Next);
        Assert.Equal(sweep, board.NextPort!.OpenSweep);
    }

    private static double Area(double lift) => 0.0013 * (1 - Math.Exp(-lift / 0.006));

    private static void Read(SimulatedBench bench, Guid sweep, double gain, double[] lifts)
    {
        foreach (var lift in lifts)
        {
            bench.Read(sweep, lift, Area(lift) * gain);
        }
    }

    private static (SimulatedBench Bench, Guid[] Cuts) TwoCuts()
    {
        var bench = new SimulatedBench(Ranges.OfEachKind[1]);
        Guid[] cuts = [bench.Cut(0), bench.Cut(1)];
        Read(bench, bench.Sweep(cuts[0]), 1, Lifts);
        Read(bench, bench.Sweep(cuts[1]), 1.04, Lifts);
        return (bench, cuts);
    }
}
