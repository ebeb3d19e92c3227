using System.Text.RegularExpressions;
using Portwright.Physics.Rings;
using Portwright.Physics.Statistics;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Shop.Sheets;
using Portwright.Shop.Survey;
using Portwright.Store.Demo;

namespace Portwright.Cli.Tests;

/// <summary>The demo shop, as a newcomer meets it.</summary>
public sealed partial class DemoTests : IDisposable
{
    private static readonly Ledger Demo = Ledger.Of(DemoShop.Entries());
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_second_run_doubles_nothing()
    {
        var first = Shell.Run("demo", "--no-serve", "--no-engine", "--data", _folder.Path);
        Assert.True(first.ExitCode == 0, first.Error);
        var entries = Shell.Json("check", "--data", _folder.Path)["entries"]!.GetValue<int>();
        var second = Shell.Run("demo", "--no-serve", "--no-engine", "--data", _folder.Path);
        Assert.True(second.ExitCode == 0, second.Error);
        Assert.Contains("nothing was added", second.Output);
        Assert.Equal(entries, Shell.Json("check", "--data", _folder.Path)["entries"]!.GetValue<int>());
    }

    [Fact]
    public void It_writes_a_pdf_and_says_where()
    {
        var shell = Shell.Run("demo", "--no-serve", "--no-engine", "--data", _folder.Path);
        var pdf = Path.Combine(_folder.Path, "port-sheet-intake-2.pdf");
        Assert.Contains("port-sheet-intake-2.pdf", shell.Output);
        Assert.Equal("%PDF"u8.ToArray(), File.ReadAllBytes(pdf)[..4]);
    }

    /// <summary>The whole sheet as it is printed; looked at before it was kept.</summary>
    [Fact]
    public void The_port_sheet_is_printed_at_80_columns_as_expected()
    {
        Shell.Run("demo", "--no-serve", "--no-engine", "--data", _folder.Path);
        var sheet = Shell.Run("sheet", "head B intake 2", "--data", _folder.Path);
        var expected = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Expected", "demo-sheet.txt")).ReplaceLineEndings("\n");
        // The day of printing and the program's version are not the sheet's.
        Assert.Equal(expected, DayAndVersion().Replace(sheet.Output, "  $1 …"));
        Assert.All(sheet.Lines, line => Assert.True(line.Length <= 80, line));
    }

    [GeneratedRegex(@"^  (printed|program) .*$", RegexOptions.Multiline)]
    private static partial Regex DayAndVersion();

    [Fact]
    public void Two_heads_have_sixteen_ports_and_every_one_was_swept()
    {
        var board = JobBoard.Of(Demo, DemoShop.Job);
        Assert.Equal(2, board.Heads.Count);
        Assert.Equal(16, board.Heads.Sum(h => h.Ports.Count));
        Assert.All(board.Heads.SelectMany(h => h.Ports), p => Assert.NotNull(p.Flow));
    }

    [Fact]
    public void The_bad_calibration_is_stopped_by_the_next_morning_and_put_right_by_a_new_one()
    {
        BenchMorning On(int day) => BenchMorning.Of(Demo, DemoShop.Bench, new DateOnly(2026, 3, day))!;
        Assert.Equal(ChartAnswer.Stop, On(17).Answer);
        Assert.NotEqual(ChartAnswer.Stop, On(18).Answer);
        // The bad one stays in the record.
        Assert.Equal(3, Demo.All<Calibration>().Count(c => c.Fact.Range == "large"));
        // Nothing was swept while it held.
        Assert.DoesNotContain(Demo.All<Sweep>(), s => s.Entry.At.Date == new DateTime(2026, 3, 17));
    }

    [Fact]
    public void The_port_with_the_open_plug_hole_flows_like_its_neighbours_once_the_leak_is_taken_off()
    {
        PortSheet Sheet(int cylinder)
        {
            var head = Demo.HeadsOf(DemoShop.Job)[0];
            return PortSheet.Of(Demo, Demo.PortsOf(head.Id).Single(p => p.Fact.Name == $"exhaust {cylinder}").Id);
        }
        var (leaky, neighbour) = (Sheet(3), Sheet(2));
        var leak = leaky.Flow!.Sweeps[0].LeakArea!;
        Assert.True(leak.Value > 20 * neighbour.Flow!.Sweeps[0].LeakArea!.Value);
        var (a, b) = (leaky.Flow.Curve.Points[^1].Flow, neighbour.Flow.Curve.Points[^1].Flow);
        Assert.Equal(1, a.Value / b.Value, 0.03);
        // What had to be taken off is in doubt, and the result says so.
        Assert.True(a.Expanded() > 1.5 * b.Expanded());
    }

    [Fact]
    public void One_worked_cut_is_a_real_gain_and_one_is_inside_the_noise()
    {
        PortSheet Last(string name)
        {
            var head = Demo.HeadsOf(DemoShop.Job)[1];
            return PortSheet.Of(Demo, Demo.PortsOf(head.Id).Single(p => p.Fact.Name == name).Id);
        }
        Assert.Equal(Physics.Uncertainty.Verdict.Real, Last("intake 2").AgainstLast!.Curves.WholeCurve.Verdict);
        Assert.Equal(Physics.Uncertainty.Verdict.InsideTheNoise, Last("exhaust 2").AgainstLast!.Curves.WholeCurve.Verdict);
    }

    [Fact]
    public void Its_valves_ports_and_readings_fit_each_other()
    {
        foreach (var port in Demo.All<Port>())
        {
            var valve = port.Fact.Valve!;
            Assert.InRange(valve.ThroatDiameter / valve.HeadDiameter, 0.85, 0.92);
            foreach (var cut in Demo.CutsOf(port.Id))
            {
                var survey = PortSurvey.Of(Demo, port.Id, cut.Id);
                Assert.NotEmpty(survey.Sheet.Windows);
                Assert.All(survey.Sheet.Windows, w => Assert.InRange(w.OfWindow.Value, 0.6, 0.95));
                Assert.All(survey.Stations.Select(s => s.Ring?.Closure).OfType<MapClosure>(), closure => Assert.InRange(closure.Relative, -0.02, 0.02));
            }
        }

        Assert.Equal("A.W.", Assert.Single(Demo.All<Sweep>().Select(s => s.Entry.Hand).Distinct()));
    }
}
