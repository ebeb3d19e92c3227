using Portwright.Shop.Record;
using Portwright.Store;
using Portwright.Store.Demo;

namespace Portwright.Cli.Tests;

/// <summary>The demo shop with its engine asked at one speed: few runs, all of the way.</summary>
public sealed class OneSpeedShop : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public OneSpeedShop()
    {
        Data = _folder.File("record");
        using var journal = Journal.Open(Data);
        DemoShop.Load(journal);
        var job = Ledger.Of(journal.ReadAll()).Get<Job>(DemoShop.Job);
        var plan = job.Fact.Plan with { LowestSpeed = 5000, HighestSpeed = 5000, SpeedWeights = [new(5000, 1)] };
        journal.Append(Amend.Correct(job, job.Fact with { Plan = plan }, DateTimeOffset.UnixEpoch.AddYears(60), "test"));
        First = Shell.Run("engine", "head B intake 2", "--against", "0", "--data", Data);
    }

    public string Data { get; }

    public string Runs => Path.Combine(Data, "engine-runs.jsonl");

    internal Shell First { get; }

    public string File(string name) => _folder.File(name);

    public void Dispose() => _folder.Dispose();
}

/// <summary><c>portwright engine</c>.</summary>
public sealed class EngineVerbTests(OneSpeedShop shop) : IClassFixture<OneSpeedShop>
{
    [Fact]
    public void The_run_says_torque_gain_worth_and_what_it_does_not_know_at_80_columns()
    {
        var shell = shop.First;
        Assert.True(shell.ExitCode == 0, shell.Error);
        var words = Flat(shell.Output);
        Assert.Matches(@"Best torque \d{3} lb-ft at [45],\d{3} rpm", words);
        Assert.Contains("calculated, not a dynamometer figure", words, StringComparison.Ordinal);
        // Cut 3 flows more than the port as received at every lift: the engine gains.
        Assert.Matches(@"Cut 3 of intake 2 against cut 0: \+\d+\.\d+ ± \d+\.\d+ lb-ft on average over the range, \d\d in 100 that it is a gain", words);
        Assert.Contains("head B intake 2, cut 3", words, StringComparison.Ordinal);
        Assert.Contains("combustion, mixture, ignition", words, StringComparison.Ordinal);
        Assert.Contains(shell.Lines, l => l.StartsWith("  .400", StringComparison.Ordinal) && l.Contains("|+", StringComparison.Ordinal));
        Assert.All(shell.Lines, line => Assert.True(line.Length <= 80, line));
        Assert.Empty(shell.Error);
    }

    [Fact]
    public void The_demo_says_what_its_engine_makes_and_which_lift_pays()
    {
        var shell = Shell.Run("demo", "--no-serve", "--data", shop.Data);
        Assert.True(shell.ExitCode == 0, shell.Error);
        var words = Flat(shell.Output);
        Assert.Contains("Its engine with these ports. Best torque", words, StringComparison.Ordinal);
        Assert.Contains("Area pays most at", words, StringComparison.Ordinal);
        Assert.All(shell.Lines, line => Assert.True(line.Length <= 80, line));
    }

    [Fact]
    public void The_second_time_nothing_is_run_again()
    {
        var before = File.ReadAllLines(shop.Runs).Length;
        var again = Shell.Run("engine", "head B intake 2", "--against", "0", "--data", shop.Data);
        Assert.Equal(shop.First.Output, again.Output);
        Assert.Equal(before, File.ReadAllLines(shop.Runs).Length);
    }

    [Fact]
    public void In_json_every_number_is_si_with_its_unit_in_the_key()
    {
        var json = Shell.Json("engine", "head B intake 2", "--against", "0", "--data", shop.Data);
        var speed = Assert.Single(json["speeds"]!.AsArray())!;
        Assert.Equal(5000 * Math.PI / 30, speed["speed_rad_s"]!.GetValue<double>(), 1e-9);
        Assert.Equal(speed["power_w"]!.GetValue<double>(), speed["torque_n_m"]!.GetValue<double>() * speed["speed_rad_s"]!.GetValue<double>(), 1e-3);
        Assert.True(speed["standard_uncertainty_torque_n_m"]!.GetValue<double>() > 0);
        Assert.Equal(3, json["intake"]!["cut"]!.GetValue<int>());
        Assert.Equal(0, json["against"]!["cut"]!.GetValue<int>());
        Assert.InRange(json["against"]!["probability_of_gain"]!.GetValue<double>(), 0.9, 1);
        Assert.Equal(0.1 * 0.0254, json["worth_of_intake_area"]![0]!["lift_m"]!.GetValue<double>(), 1e-9);
        Assert.NotEmpty(json["not_known"]!.AsArray());
    }

    [Fact]
    public void A_sheet_of_a_port_whose_engine_was_run_says_what_it_makes()
    {
        var shell = Shell.Run("sheet", "head B intake 2", "--engine", "--data", shop.Data);
        Assert.True(shell.ExitCode == 0, shell.Error);
        Assert.Contains("IN THIS ENGINE", shell.Output, StringComparison.Ordinal);
        Assert.All(shell.Lines, line => Assert.True(line.Length <= 80, line));
        var html = shop.File("sheet.html");
        Assert.Equal(0, Shell.Run("sheet", "head B intake 2", "--html", html, "--data", shop.Data).ExitCode);
        Assert.Contains("Torque and power over engine speed", File.ReadAllText(html), StringComparison.Ordinal);
        // Another cut was not run: one line says so and how.
        Assert.Equal(0, Shell.Run("sheet", "head A intake 1", "--html", html, "--data", shop.Data).ExitCode);
        Assert.Contains("Not run yet with this cut", File.ReadAllText(html), StringComparison.Ordinal);
    }

    [Fact]
    public void Targets_name_what_is_wanted_and_what_was_measured()
    {
        var shell = Shell.Run("engine", "targets", "head B intake 2", "--data", shop.Data);
        Assert.True(shell.ExitCode == 0, shell.Error);
        Assert.Contains("Inlet Mach index (published)", shell.Output, StringComparison.Ordinal);
        Assert.Contains("Air speed in a section (worked out here)", shell.Output, StringComparison.Ordinal);
        Assert.Contains("short of it", shell.Output, StringComparison.Ordinal);
        Assert.All(shell.Lines, line => Assert.True(line.Length <= 80, line));
    }

    [Fact]
    public void A_cycle_has_a_line_every_so_many_degrees()
    {
        var shell = Shell.Run("engine", "cycle", "--rpm", "5000", "--every", "30", "--data", shop.Data);
        Assert.True(shell.ExitCode == 0, shell.Error);
        Assert.Equal(24, shell.Lines.Count(l => System.Text.RegularExpressions.Regex.IsMatch(l, @"^ +\d+ +\d+\.\d ")));
        Assert.All(shell.Lines, line => Assert.True(line.Length <= 80, line));
    }

    [Fact]
    public void A_study_holds_every_combination_against_the_engine_as_it_is()
    {
        string[] study = ["engine", "study", "--intake-length", "-1in,0", "--intake-later=-4,0,4", "--data", shop.Data];
        var shell = Shell.Run(study);
        Assert.True(shell.ExitCode == 0, shell.Error);
        Assert.Contains(shell.Lines, l => l.StartsWith("  0.00 in     0.0°", StringComparison.Ordinal) && l.Contains("+0.0", StringComparison.Ordinal));
        Assert.Single(shell.Lines, l => l.EndsWith("TPB", StringComparison.Ordinal));
        Assert.All(shell.Lines, line => Assert.True(line.Length <= 80, line));
        var found = Shell.Json(study)["combinations"]!.AsArray();
        Assert.Equal(6, found.Count);
        Assert.Equal(-0.0254, found[0]!["intake_length_m"]!.GetValue<double>(), 1e-12);
    }

    [Theory]
    [InlineData("Swept cuts: 0, 1, 2, 3", "engine", "head B intake 2", "--cut", "9")]
    [InlineData("--against 3 is the cut the engine is run with", "engine", "head B intake 2", "--against", "3")]
    [InlineData("--rpm is missing", "engine", "cycle")]
    [InlineData("lies outside 300 to 20,000 rpm", "engine", "cycle", "--rpm", "90")]
    [InlineData("does not divide 720", "engine", "cycle", "--rpm", "4000", "--every", "7")]
    [InlineData("Nothing is varied", "engine", "study")]
    [InlineData("at most +30.0% either way", "engine", "study", "--intake-valve", "0,90")]
    [InlineData("holds 1in twice", "engine", "study", "--intake-length", "1in,1in")]
    [InlineData("the runner is only 5.51 in long", "engine", "study", "--intake-length", "-9in,0")]
    [InlineData("\"abc\" is not a number", "engine", "study", "--compression", "abc")]
    public void What_cannot_be_is_refused_with_field_value_and_cure(string says, params string[] typed)
    {
        var shell = Shell.Run([.. typed, "--data", shop.Data]);
        Assert.Equal(2, shell.ExitCode);
        Assert.Contains(says, Flat(shell.Error), StringComparison.Ordinal);
        Assert.Empty(shell.Output);
    }

    [Fact]
    public void A_plan_that_is_no_engine_says_what_is_missing()
    {
        var data = shop.File("bare");
        using (var journal = Journal.Open(data))
        {
            DemoShop.Load(journal);
            var job = Ledger.Of(journal.ReadAll()).Get<Job>(DemoShop.Job);
            journal.Append(Amend.Correct(job, job.Fact with { Plan = job.Fact.Plan with { Bore = null } }, DateTimeOffset.UnixEpoch.AddYears(60), "test"));
        }

        var shell = Shell.Run("engine", "--data", data);
        Assert.Equal(2, shell.ExitCode);
        Assert.Contains("Bore", shell.Error, StringComparison.Ordinal);
    }

    private static string Flat(string text) => string.Join(' ', text.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
}
