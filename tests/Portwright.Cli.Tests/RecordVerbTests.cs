using Portwright.Store;
using Portwright.Store.Demo;

namespace Portwright.Cli.Tests;

/// <summary>The verbs that read and keep the record.</summary>
public sealed class RecordVerbTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly string _data;

    public RecordVerbTests()
    {
        _data = _folder.File("record");
        using var journal = Journal.Open(_data);
        DemoShop.Load(journal);
    }

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Jobs_names_every_port_with_its_flow()
    {
        var shell = Shell.Run("jobs", "--data", _data);
        Assert.Equal(0, shell.ExitCode);
        Assert.Contains("Tamarack eight", shell.Output);
        Assert.Equal(16, shell.Lines.Count(l => l.Contains("cfm", StringComparison.Ordinal)));
        Assert.All(shell.Lines, line => Assert.True(line.Length <= 80, line));
    }

    [Fact]
    public void A_sheet_in_json_carries_si_numbers_with_their_doubt()
    {
        var sheet = Shell.Json("sheet", "head B intake 2", "--cut", "3", "--data", _data);
        var last = sheet["over-lift"]!["lifts"]!["rows"]!.AsArray()[^1]!;
        Assert.Equal(0.600 * 0.0254, last["lift"]!["value"]!.GetValue<double>(), 1e-9);
        Assert.Equal("volume-flow", last["flow"]!["dimension"]!.GetValue<string>());
        Assert.InRange(last["flow"]!["value"]!.GetValue<double>() / 0.0004719474432, 232, 250);
        Assert.True(last["flow"]!["expanded"]!.GetValue<double>() > 0);
        Assert.Equal("gain", sheet["flow"]!["headline"]!["against-cut-2"]!["verdict"]!.GetValue<string>());
    }

    [Fact]
    public void A_port_named_in_two_heads_is_asked_about()
    {
        var shell = Shell.Run("sheet", "intake 2", "--data", _data);
        Assert.Equal(2, shell.ExitCode);
        Assert.Contains("\"head A intake 2\"", shell.Error);
    }

    [Fact]
    public void A_figure_is_written_as_svg_and_png()
    {
        var (svg, png) = (_folder.File("f.svg"), _folder.File("f.png"));
        var shell = Shell.Run("sheet", "head B intake 2", "--svg", svg, "--png", png, "--data", _data);
        Assert.True(shell.ExitCode == 0, shell.Error);
        Assert.StartsWith("<svg", File.ReadAllText(svg).TrimStart().Replace("<?xml version=\"1.0\" encoding=\"UTF-8\"?>", "").TrimStart(), StringComparison.Ordinal);
        Assert.Equal(0x89, File.ReadAllBytes(png)[0]);
    }

    [Fact]
    public void An_import_is_shown_first_and_saved_only_when_told()
    {
        var file = _folder.File("sweep.csv");
        File.WriteAllText(file, "lift,flow %\n.100,18.2\n.200,37.4\n.300,57.0\n");
        string[] import = ["import", file, "--port-name", "head B intake 3", "--cut", "0", "--range", "large", "--data", _data];
        var before = Entries();
        var shown = Shell.Run(import);
        Assert.True(shown.ExitCode == 0, shown.Error);
        Assert.Contains("Nothing is saved yet", shown.Output);
        Assert.Equal(before, Entries());

        var saved = Shell.Run([.. import, "--yes"]);
        Assert.True(saved.ExitCode == 0, saved.Error);
        Assert.Equal(before + 4, Entries());

        var again = Shell.Run([.. import, "--yes"]);
        Assert.True(again.ExitCode == 0, again.Error);
        Assert.Contains("Imported before", again.Output);
        Assert.Equal(before + 4, Entries());
    }

    [Fact]
    public void The_day_an_import_says_is_the_day_of_the_test_on_every_sheet()
    {
        var file = _folder.File("old-sweep.csv");
        File.WriteAllText(file, "lift,flow %\n.100,18.2\n.200,37.4\n.300,57.0\n");
        var saved = Shell.Run("import", file, "--port-name", "head A intake 4", "--cut", "1", "--done", "bowl blended", "--date", "2019-11-05", "--range", "large", "--data", _data, "--yes");
        Assert.True(saved.ExitCode == 0, saved.Error);
        string[] sheet = ["sheet", "head A intake 4", "--cut", "1", "--data", _data];
        Assert.Contains("5 Nov 2019", Shell.Run(sheet).Output);
        Assert.Equal("5 Nov 2019", Shell.Json(sheet)["title-block"]!["tested"]!["value"]![0]!.GetValue<string>());
        var html = _folder.File("old.html");
        Assert.Equal(0, Shell.Run([.. sheet, "--html", html]).ExitCode);
        Assert.Contains("5 Nov 2019", File.ReadAllText(html), StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_with_a_damaged_cell_is_refused_with_the_cell_named_and_nothing_saved()
    {
        var file = _folder.File("sweep.csv");
        File.WriteAllText(file, "lift,flow %\n.100,18.2\n.200,3#.4\n.300,57.0\n");
        var before = Entries();
        var shell = Shell.Run("import", file, "--port-name", "head B intake 3", "--range", "large", "--yes", "--data", _data);
        Assert.Equal(3, shell.ExitCode);
        Assert.Contains("row 3, column B", shell.Output);
        Assert.Equal(before, Entries());
    }

    [Fact]
    public void Readings_in_a_unit_the_range_does_not_have_are_refused()
    {
        var file = _folder.File("sweep.csv");
        File.WriteAllText(file, "lift,flow cfm\n.100,55\n.200,112\n");
        var shell = Shell.Run("import", file, "--port-name", "head B intake 3", "--range", "large", "--yes", "--data", _data);
        Assert.Equal(2, shell.ExitCode);
        Assert.Contains("range large is read in %", shell.Error.ReplaceLineEndings(" "));
    }

    [Fact]
    public void A_job_document_comes_back_identical_in_another_record()
    {
        var document = _folder.File("job.json");
        Assert.Equal(0, Shell.Run("export", "--document", document, "--data", _data).ExitCode);
        var other = _folder.File("other");
        var imported = Shell.Run("import", document, "--yes", "--data", other);
        Assert.True(imported.ExitCode == 0, imported.Error);
        var here = Shell.Json("sheet", "head B intake 2", "--data", _data).ToJsonString();
        var there = Shell.Json("sheet", "head B intake 2", "--data", other).ToJsonString();
        Assert.Equal(here, there);
    }

    [Fact]
    public void A_backup_is_checked_and_comes_back()
    {
        var backup = _folder.File("backup.db");
        var made = Shell.Json("backup", backup, "--data", _data);
        Assert.True(made["sound"]!.GetValue<bool>());
        var other = _folder.File("restored");
        Assert.Equal(0, Shell.Run("restore", backup, "--data", other).ExitCode);
        Assert.Equal(Entries(), Shell.Json("check", "--data", other)["entries"]!.GetValue<int>());
    }

    [Fact]
    public void A_plate_far_off_its_certificate_says_stop_with_an_exit_code_of_its_own()
    {
        var shell = Shell.Run("check", "--plate", "103", "--range", "large", "--reading", "70%", "--leak-range", "small", "--leak", "0.2%",
            "--barometer", "29.3inHg", "--temperature", "68F", "--humidity", "45%", "--data", _data);
        Assert.Equal(1, shell.ExitCode);
        Assert.Contains("STOP", shell.Output);
        Assert.Contains("Not saved", shell.Output);
    }

    [Fact]
    public void A_humidity_as_a_share_of_one_is_asked_back_at_the_morning_check()
    {
        var shell = Shell.Run("check", "--plate", "103", "--range", "large", "--reading", "70%", "--barometer", "29.3inHg", "--temperature", "68F", "--humidity", "0.45", "--data", _data);
        Assert.Contains("--humidity: 45? \"0.45\" was typed", shell.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("STOP", shell.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void An_empty_record_says_how_to_begin()
    {
        var shell = Shell.Run("sheet", "--data", _folder.File("empty"));
        Assert.Equal(3, shell.ExitCode);
        Assert.Contains("portwright demo", shell.Error);
    }

    [Fact]
    public void Every_verb_has_help_with_an_example_at_80_columns()
    {
        foreach (var verb in (string[])["demo", "serve", "jobs", "sheet", "engine", "import", "export", "check", "calc", "backup", "restore"])
        {
            var help = Shell.Run(verb, "--help");
            Assert.Equal(0, help.ExitCode);
            Assert.Contains($"portwright {verb}", help.Output);
            Assert.Contains("Example", help.Output);
            Assert.All(help.Lines, line => Assert.True(line.Length <= 80 || line.StartsWith("  portwright", StringComparison.Ordinal), line));
        }
    }

    private int Entries() => Shell.Json("check", "--data", _data)["entries"]!.GetValue<int>();
}
