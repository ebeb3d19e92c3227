using System.Text.RegularExpressions;
using Portwright.Physics.Rings;
using Portwright.Physics.Statistics;
using Portwright.Shop.Bench;
using Portwright.Shop.Diagnosis;
using Portwright.Shop.Findings;
using Portwright.Shop.Findings.Rules;
using Portwright.Shop.Record;
using Portwright.Shop.Sheets;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;
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

    /// <summary>The guide of the demo names them; each by the chance its own readings give, and nothing else of the air or the curve is stated.</summary>
    [Fact]
    public void What_there_is_to_find_is_found_where_the_list_says_and_nothing_else_is()
    {
        string[] found = [.. Demo.HeadsOf(DemoShop.Job).SelectMany(h => Demo.PortsOf(h.Id).SelectMany(p => PortFindings.Of(PortSurvey.Of(Demo, p.Id))
            .Where(f => f.Rule is not PortSpeedAgainstPlan)
            .Select(f => $"{h.Fact.Name} {p.Fact.Name}: {f.Rule.Key} {f.Station?.Fact.Letter} {f.Bearing:0.#}".Trim())))];
        Assert.Equal(
        [
            "head A intake 4: backs-up",
            "head B exhaust 2: instruments-disagree D 6",
            "head B exhaust 2: uneven-sides C 3",
            "head B intake 2: lazy-floor-or-corner B 6",
            "head B intake 2: thin-metal C 9",
            "head B intake 2: uneven-sides C 9",
        ], found.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void The_thin_wall_stops_the_cut_of_the_busy_side_and_metal_to_spare_leaves_one()
    {
        Finding Uneven(string name)
        {
            var port = Demo.PortsOf(Demo.HeadsOf(DemoShop.Job)[1].Id).Single(p => p.Fact.Name == name).Id;
            return PortFindings.Of(PortSurvey.Of(Demo, port)).Single(f => f.Rule is UnevenSides);
        }

        Assert.Null(Uneven("intake 2").Suggestion);
        Assert.Contains("Nothing is to be cut here: .094 in of metal at C, 9 o'clock", Uneven("intake 2").Sentence.In(UnitSystem.UsCustomary), StringComparison.Ordinal);
        Assert.True(Uneven("exhaust 2").Suggestion!.Pays);
    }

    /// <summary>A fall that the sisters share is said beside the port's own, and how much of it the cam meets.</summary>
    [Fact]
    public void A_port_that_backs_up_is_told_with_its_sisters_and_its_cam()
    {
        string Says(string name) => PortFindings.Spoken(PortSurvey.Of(Demo, Demo.PortsOf(Demo.HeadsOf(DemoShop.Job)[0].Id).Single(p => p.Fact.Name == name).Id))
            .Single(f => f.Rule is BacksUp).Sentence.In(UnitSystem.UsCustomary);
        Assert.Contains("to .600, by 5.2 %; its 7 sisters fall by 2.2 % on the middle. The cam lifts to .517: it meets the first .017 of that way.", Says("intake 4"), StringComparison.Ordinal);
        Assert.Contains("by 2.7 %; its 7 sisters fall by 2.2 % on the middle.", Says("intake 1"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_ball_the_probe_contradicts_says_so_and_no_other_does()
    {
        Shell.Run("demo", "--no-serve", "--no-engine", "--data", _folder.Path);
        string[] contradicted = [.. Shell.Json("sheet", "head B exhaust 2", "--data", _folder.Path)["balls"]!["balls"]!.AsObject()
            .Where(b => b.Value!.ToJsonString().Contains("the probe contradicts it", StringComparison.Ordinal)).Select(b => b.Value!["name"]?.ToJsonString() ?? b.Key)];
        Assert.Single(contradicted);
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
