using Portwright.Physics.TestPiece;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Shop.Sheets;
using Portwright.Shop.Units;

namespace Portwright.Cli.Tests;

/// <summary>What a porter sees of <c>calc</c>.</summary>
public sealed partial class CalcTests
{
    /// <summary>Every example of every verb, so that help never shows a line that does not work.</summary>
    public static TheoryData<string> Examples => [.. CommandLine.CalcExamples()];

    [Theory, MemberData(nameof(Examples))]
    public void Every_example_in_the_help_works_and_stays_inside_80_columns(string example)
    {
        var shell = Shell.Run([.. Split(example)]);
        Assert.True(shell.ExitCode == 0, shell.Error);
        Assert.All(shell.Lines, line => Assert.True(line.Length <= 80, line));
        Assert.DoesNotContain('\u001b', shell.Output);
    }

    /// <summary>A flow of nothing, a lift of nothing, a test pressure of nothing: refused with a sentence or answered with numbers.</summary>
    [Theory, MemberData(nameof(Examples))]
    public void No_verb_says_what_is_no_number_where_one_of_its_numbers_is_nothing(string example)
    {
        string[] words = [.. Split(example)];
        for (var i = 0; i < words.Length; i++)
        {
            if (!Number().IsMatch(words[i])) continue;
            foreach (var nothing in new[] { "0", "-0", "0.0000001" })
            {
                string[] odd = [.. words];
                odd[i] = Number().Replace(words[i], nothing, 1);
                foreach (var more in new string[][] { [], ["--json"] })
                {
                    var shell = Shell.Run([.. odd, .. more]);
                    Assert.True(shell.ExitCode is 0 or 1 or 2 or 3, string.Join(' ', odd) + shell.Error);
                    Assert.False(NoNumber().IsMatch(shell.Output + shell.Error), string.Join(' ', odd) + "\n" + shell.Output + shell.Error);
                }
            }
        }
    }

    /// <summary>88.0 cfm at 10 inH2O: what the page says of a readout nobody wrote a card for, <c>calc</c> says too, whatever the readout shows.</summary>
    [Theory]
    [InlineData("unsaid", ReadoutMeaning.Unsaid)]
    [InlineData("restated", ReadoutMeaning.Restated)]
    [InlineData("actual", ReadoutMeaning.AtMeter)]
    public void A_bare_cfm_is_the_same_number_here_and_on_the_sheet(string basis, ReadoutMeaning meaning)
    {
        var now = new DateTimeOffset(2026, 3, 2, 19, 0, 0, TimeSpan.Zero);
        var (bench, job, head, port, cut, sweep) = (Guid.NewGuid(), Guid.NewGuid(), Guid.NewGuid(), Guid.NewGuid(), Guid.NewGuid(), Guid.NewGuid());
        var sheet = PortSheet.Of(Ledger.Of(
        [
            Entry.About(bench, null, StandInBench.Answered(StandInBench.Card(), "readout", meaning), now), Entry.About(job, job, new Job("a job", "", new EnginePlan()), now),
            Entry.About(head, job, new Head("head A"), now), Entry.About(port, job, new Port(head, PortKind.Intake, 1, false), now), Entry.About(cut, job, new Cut(port, 0, "", new DateOnly(2026, 3, 2)), now),
            Entry.About(sweep, job, new Sweep(cut, bench, FlowDirection.Draw, "readout", Typed.Of(10, "inH2O"), []), now),
            Entry.About(Guid.NewGuid(), job, new FlowReading(sweep, Typed.Of(0.5, "in"), Typed.Of(88.0, "cfm")), now),
        ]), port);
        var answer = Shell.Json("calc", "direct", "--flow", "88.0cfm", "--test-pressure", "10inH2O", "--basis", basis);
        var flow = answer["answer"]!["restated_flow_m3_s"]!.GetValue<double>();
        Assert.Equal(sheet.Flow!.Curve.Points[0].Flow.Value, flow, flow * 1e-6);
        var asked = sheet.Flow.Curve.Points[0].Flow.Contributions.Where(c => c.Source.StartsWith("assumed ", StringComparison.Ordinal)).Sum(c => c.Amount * c.Amount);
        Assert.Equal(Math.Sqrt(asked), answer["answer"]!["standard_uncertainty_restated_flow_m3_s"]?.GetValue<double>() ?? 0, flow * 1e-6);
        Assert.Equal(meaning == ReadoutMeaning.Unsaid, answer["remarks"]!.ToJsonString().Contains("Is your readout already at 28", StringComparison.Ordinal));
    }

    [Fact]
    public void A_flow_restated_says_what_it_would_be_of_a_readout_that_shows_what_passes_the_meter_or_is_restated_already()
    {
        var said = Shell.Json("calc", "restate", "--flow", "88.0cfm", "--from", "10inH2O")["remarks"]!.ToJsonString();
        Assert.Contains("it is 140.1 cfm; one that is restated already stays 88.0 cfm.", said, StringComparison.Ordinal);
    }

    /// <summary>The unit of an area ends with a figure; it is no bare number for that.</summary>
    [Theory]
    [InlineData("0.202 in2 +- 0.002 in2")]
    [InlineData("0.202 in2 +- 0.002")]
    [InlineData("0.202 +- 0.002 in2")]
    [InlineData("0.202in2+-0.002in2")]
    public void A_doubt_may_stand_behind_an_area(string area)
    {
        var answer = Shell.Json("calc", "nozzle", "--area", area);
        Assert.Equal(0.202 * 0.0254 * 0.0254, answer["given"]!["area_m2"]!.GetValue<double>(), 1e-9);
        Assert.Equal(0.002 * 0.0254 * 0.0254 / 1.959964, answer["given"]!["standard_uncertainty_area_m2"]!.GetValue<double>(), 1e-11);
    }

    [Fact]
    public void Set_ups_that_all_read_nothing_have_no_share()
    {
        var shell = Shell.Run("calc", "scatter", "0 0", "0 0", "0 0");
        Assert.Equal(0, shell.ExitCode);
        Assert.False(NoNumber().IsMatch(shell.Output), shell.Output);
    }

    [Fact]
    public void Scatter_of_a_differential_is_said_to_be_twice_that_of_the_flow()
    {
        Assert.Contains("scatter twice as much", Shell.Run("calc", "scatter", "8.1 8.2", "8.0 8.3", "--of", "pressure").Output, StringComparison.Ordinal);
        Assert.DoesNotContain("twice", Shell.Run("calc", "scatter", "221 222", "220 221").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_flow_under_its_leak_is_said_to_be_none()
    {
        Assert.Contains("no air goes backwards", Shell.Run("calc", "leak", "--flow", "2cfm", "--leak-flow", "3cfm").Output, StringComparison.Ordinal);
        Assert.DoesNotContain("backwards", Shell.Run("calc", "leak", "--flow", "4cfm", "--leak-flow", "3cfm").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_pitot_past_the_speed_of_sound_and_a_choked_nozzle_say_so()
    {
        var shell = Shell.Run("calc", "pitot", "--dp", "28psi", "--static", "50kPa");
        Assert.NotEqual(0, shell.ExitCode);
        Assert.Contains("speed of sound", shell.Error, StringComparison.Ordinal);
        Assert.Equal(0, Shell.Run("calc", "pitot", "--dp", "28inH2O").ExitCode);
        Assert.Contains("choked", Shell.Run("calc", "nozzle", "--area", "1in2", "--test-pressure", "10psi").Output, StringComparison.Ordinal);
    }

    [System.Text.RegularExpressions.GeneratedRegex(@"(?<![A-Za-z\d.])\d*\.?\d+")]
    private static partial System.Text.RegularExpressions.Regex Number();

    [System.Text.RegularExpressions.GeneratedRegex("NaN|∞|Infinity|Exception| at Portwright")]
    private static partial System.Text.RegularExpressions.Regex NoNumber();

    [Fact]
    public void An_answer_carries_the_doubt_typed_behind_its_numbers()
    {
        // A flow ratio that goes with the flow: one percent in, one percent out.
        var answer = Shell.Json("calc", "restate", "--flow", "180 cfm +- 1 %", "--from", "10inH2O")["answer"]!;
        var share = answer["expanded_uncertainty_95_restated_flow_m3_s"]!.GetValue<double>() / answer["restated_flow_m3_s"]!.GetValue<double>();
        Assert.Equal(0.01, share, 1e-9);
    }

    [Fact]
    public void A_doubt_named_apart_is_the_same_doubt()
    {
        var behind = Shell.Json("calc", "restate", "--flow", "180 cfm +- 2 cfm", "--from", "10inH2O")["answer"]!.ToJsonString();
        var apart = Shell.Json("calc", "restate", "--flow", "180cfm", "--doubt", "flow=2cfm", "--from", "10inH2O")["answer"]!.ToJsonString();
        Assert.Equal(behind, apart);
    }

    [Fact]
    public void A_pitot_speed_has_half_the_relative_doubt_of_its_pressure_at_low_speed()
    {
        // v goes with the square root of the pressure.
        var answer = Shell.Json("calc", "pitot", "--dp", "0.5inH2O +- 2 %")["answer"]!;
        Assert.Equal(0.01, answer["expanded_uncertainty_95_speed_m_s"]!.GetValue<double>() / answer["speed_m_s"]!.GetValue<double>(), 1e-5);
    }

    [Fact]
    public void Repeats_of_a_reading_show_their_own_scatter()
    {
        var answer = Shell.Json("calc", "restate", "--flow", "180cfm", "--flow", "182cfm", "--flow", "181cfm", "--from", "28inH2O")["answer"]!;
        // Mean 181, s 1, u = 1/sqrt(3) with 2 degrees of freedom.
        Assert.Equal(181 * 0.0004719474432, answer["restated_flow_m3_s"]!.GetValue<double>(), 1e-12);
        Assert.Equal(0.0004719474432 / Math.Sqrt(3), answer["standard_uncertainty_restated_flow_m3_s"]!.GetValue<double>(), 1e-9);
        Assert.Equal(2, answer["degrees_of_freedom_restated_flow"]!.GetValue<double>(), 1e-9);
    }

    [Fact]
    public void A_thermometer_in_the_plenum_or_at_the_meter_speaks_for_both()
    {
        string[] blown = ["calc", "direct", "--flow", "200cfm", "--basis", "actual", "--test-pressure", "28inH2O", "--direction", "blow", "--temperature", "70F"];
        double Area(params string[] more) => Shell.Json([.. blown, .. more])["answer"]!["effective_area_m2"]!.GetValue<double>();
        var (plenum, meter, both, neither) = (Area("--plenum-temperature", "88F"), Area("--meter-temperature", "88F"), Area("--plenum-temperature", "88F", "--meter-temperature", "88F"), Area());
        Assert.Equal(both, plenum);
        Assert.Equal(both, meter);
        // 10 K where the weather does not cancel: half of their share of 298 K.
        Assert.Equal(1.0168, neither / both, 5e-4);
        Assert.Contains("The blower warms the air it blows", Shell.Run(blown).Output, StringComparison.Ordinal);
        Assert.DoesNotContain("The blower", Shell.Run([.. blown, "--plenum-temperature", "88F"]).Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0.57", "--humidity: 57? \"0.57\" was typed")]
    [InlineData("1", "--humidity: 100? \"1\" was typed")]
    [InlineData("0.45 +- 0.05", "--humidity: 45? \"0.45\" was typed")]
    public void A_humidity_as_a_share_of_one_is_asked_back(string typed, string likely)
    {
        foreach (var verb in new string[][] { ["air"], ["plate", "--diameter", "2in", "--cd", "0.61", "--dp", "8inH2O"], ["pitot", "--dp", "28inH2O"], ["nozzle", "--area", "1in2"] })
        {
            var shell = Shell.Run(["calc", .. verb, "--humidity", typed]);
            Assert.NotEqual(0, shell.ExitCode);
            Assert.Contains(likely, shell.Error, StringComparison.Ordinal);
        }

        Assert.Equal(0, Shell.Run("calc", "air", "--humidity", typed + " %").ExitCode);
    }

    [Fact]
    public void A_humidity_as_rooms_have_it_or_of_dry_air_needs_no_unit()
    {
        Assert.Equal(0, Shell.Run("calc", "air", "--humidity", "57").ExitCode);
        // Drier than any room: with its unit it was meant so.
        Assert.Contains("or 1.01 % if that was read", Shell.Run("calc", "air", "--humidity", "1.01").Error, StringComparison.Ordinal);
        Assert.Equal(0, Shell.Run("calc", "air", "--humidity", "1.01 %").ExitCode);
        Assert.Equal(0, Shell.Run("calc", "air", "--humidity", "0").ExitCode);
    }

    [Fact]
    public void Percent_of_range_needs_no_weather()
    {
        string[] reading = ["calc", "percent", "--reading", "71.4%", "--full-scale", "300cfm", "--test-pressure", "28inH2O"];
        double Area(params string[] weather) => Shell.Json([.. reading, .. weather])["answer"]!["effective_area_m2"]!.GetValue<double>();
        var (cold, hot) = (Area("--barometer", "1030hPa", "--temperature", "16C"), Area("--barometer", "985hPa", "--temperature", "27C", "--humidity", "80%"));
        Assert.Equal(1, hot / cold, 2e-3);
    }

    [Fact]
    public void What_a_range_was_set_at_and_nobody_typed_stands_in_the_doubt()
    {
        string[] reading = ["calc", "percent", "--reading", "71.4%", "--full-scale", "300cfm", "--test-pressure", "28inH2O"];
        double Doubt(params string[] typed) => Shell.Json([.. reading, .. typed])["answer"] is var answer
            && answer!["standard_uncertainty_effective_area_m2"] is { } u ? u.GetValue<double>() / answer["effective_area_m2"]!.GetValue<double>() : 0;
        Assert.Equal(0, Doubt("--calibrated-at", "28inH2O", "--full-scale-dp", "6inH2O"));
        Assert.InRange(Doubt("--full-scale-dp", "6inH2O"), 0.010, 0.018);
        Assert.InRange(Doubt("--calibrated-at", "28inH2O"), 0.0005, 0.004);
    }

    [Fact]
    public void A_range_says_beforehand_what_it_will_read_afterwards()
    {
        string[] scale = ["--full-scale", "300cfm", "--test-pressure", "25inH2O", "--barometer", "985hPa", "--temperature", "27C", "--direction", "blow"];
        var reading = Shell.Json(["calc", "range", "--flow", "240cfm", .. scale]);
        var area = reading["working"]!["effective_area_m2"]!.GetValue<double>();
        var percent = reading["answer"]!["reading"]!.GetValue<double>() * 100;
        Assert.InRange(percent, 60, 100);
        var read = Shell.Json(["calc", "percent", "--reading", $"{percent:R}%", .. scale])["answer"]!["effective_area_m2"]!.GetValue<double>();
        Assert.Equal(1, read / area, 1e-9);
    }

    [Fact]
    public void A_range_too_small_for_the_port_says_so() =>
        Assert.Contains("past the end", Shell.Run("calc", "range", "--flow", "260cfm", "--full-scale", "250cfm").Output);

    [Fact]
    public void Trials_bear_out_a_small_doubt_and_give_a_large_one_away()
    {
        double Over(string dp) => Shell.Json("calc", "pitot", "--dp", dp, "--trials", "20000")["working"]!["speed_trials_over_law"]!.GetValue<double>();
        // Of 20,000 trials the scatter is known to half a percent.
        Assert.Equal(1, Over("28inH2O +- 0.2inH2O"), 0.01);
        Assert.True(Over("1 inH2O +- 0.4 inH2O") > 1.015);
        Assert.Contains("no answer for", Shell.Run("calc", "pitot", "--dp", "1 inH2O +- 0.7 inH2O", "--trials", "20000").Error);
        var none = Shell.Run("calc", "pitot", "--dp", "1inH2O", "--trials", "20000");
        Assert.Equal(2, none.ExitCode);
        Assert.Contains("none was", none.Error);
        Assert.Equal(2, Shell.Run("calc", "pitot", "--dp", "1inH2O +- 0.1inH2O", "--trials", "10").ExitCode);
    }

    [Fact]
    public void A_traverse_makes_the_flow_of_its_mean_speed()
    {
        // 100 ft/s through a square foot is 6,000 cfm.
        var answer = Shell.Json("calc", "traverse", "--width", "12in", "--height", "12in", "--points", "4", "--of", "speed", string.Join(' ', Enumerable.Repeat("100", 16)))["answer"]!;
        Assert.Equal(6000 * 0.0004719474432, answer["volume_flow_m3_s"]!.GetValue<double>(), 1e-9);
        Assert.Equal(2, Shell.Run("calc", "traverse", "--diameter", "4in", "--points", "3", "0.6 0.7").ExitCode);
        Assert.Equal(2, Shell.Run("calc", "traverse", "--diameter", "4in", "--rule", "rectangle").ExitCode);
        Assert.Equal(2, Shell.Run("calc", "traverse").ExitCode);
    }

    [Fact]
    public void A_slow_drift_is_seen_in_the_average_of_checks_that_are_each_a_go()
    {
        const string slow = "152.0 151.8 152.3 152.1 152.5 152.4 152.7 152.6";
        Assert.Equal("drifted", Shell.Json("calc", "drift", slow, "--centre", "152.0", "--sigma", "0.25")["answer"]!["answer"]!.GetValue<string>());
        Assert.Equal("no drift", Shell.Json("calc", "drift", slow, "--centre", "152.0", "--sigma", "0.5")["answer"]!["answer"]!.GetValue<string>());
        Assert.Equal(2, Shell.Run("calc", "drift", "152 152.1").ExitCode);
        Assert.Equal(2, Shell.Run("calc", "drift", slow, "--centre", "152").ExitCode);
    }

    [Fact]
    public void A_column_needs_to_know_its_fluid()
    {
        var shell = Shell.Run("calc", "tube", "--length", "6in");
        Assert.Equal(2, shell.ExitCode);
        Assert.Contains("--water-temperature", shell.Error);
    }

    [Fact]
    public void A_wrong_word_is_named_with_the_right_one()
    {
        var shell = Shell.Run("calc", "pitot", "--temprature", "75F");
        Assert.Equal(2, shell.ExitCode);
        Assert.Contains("\"--temprature\"", shell.Error);
        Assert.Contains("--temperature", shell.Error);
        Assert.Empty(shell.Output);
    }

    [Fact]
    public void A_wrong_number_is_named_with_field_value_and_cure()
    {
        var shell = Shell.Run("calc", "pitot", "--dp", "twenty");
        Assert.Equal(2, shell.ExitCode);
        Assert.Contains("--dp \"twenty\" is not a number. Type it as", shell.Error);
    }

    [Fact]
    public void A_value_the_physics_refuses_ends_in_a_sentence()
    {
        var shell = Shell.Run("calc", "window", "--head", "2in", "--throat", "1.8in", "--stem", "4in", "--lift", ".2");
        Assert.Equal(2, shell.ExitCode);
        Assert.DoesNotContain("   at ", shell.Error);
        Assert.Contains("smaller than the throat", shell.Error);
    }

    [Fact]
    public void Two_results_with_a_large_set_up_scatter_are_inside_the_noise()
    {
        var json = Shell.Json("calc", "compare", "221.9 +- 1.1", "223.3 +- 1.2", "--set-up", "1%");
        Assert.Equal("inside the noise", json["answer"]!["verdict"]!.GetValue<string>());
    }

    [Fact]
    public void Two_results_far_apart_are_a_real_gain()
    {
        var json = Shell.Json("calc", "compare", "221.9 +- 1.1", "230.3 +- 1.2");
        Assert.Equal("real", json["answer"]!["verdict"]!.GetValue<string>());
    }

    [Fact]
    public void What_two_results_share_is_in_each_and_out_of_their_difference()
    {
        string[] asked = ["calc", "compare", "221.9 +- 1.5", "223.9 +- 1.5"];
        Assert.Equal("inside the noise", Shell.Json(asked)["answer"]!["verdict"]!.GetValue<string>());
        var json = Shell.Json([.. asked, "--same-bench", "0.25%", "--same-day", "0.15%"]);
        var answer = json["answer"]!;
        Assert.Equal("real", answer["verdict"]!.GetValue<string>());
        // Each keeps its whole doubt; the difference has what is left of both, and the shared share of what they differ by.
        const double cfm = 0.3048 * 0.3048 * 0.3048 / 60;
        double own(double flow) => Math.Pow(1.5 / 1.959964, 2) - Math.Pow(0.0025 * flow, 2) - Math.Pow(0.0015 * flow, 2);
        var hand = Math.Sqrt(own(221.9) + own(223.9) + Math.Pow(0.0025 * 2, 2) + Math.Pow(0.0015 * 2, 2));
        Assert.Equal(hand, answer["standard_uncertainty_difference_m3_s"]!.GetValue<double>() / cfm, 1e-5);
        Assert.Equal(1.5 / 1.959964, answer["standard_uncertainty_before_m3_s"]!.GetValue<double>() / cfm, 1e-5);
        var correlation = 221.9 * 223.9 * (0.0025 * 0.0025 + 0.0015 * 0.0015) / Math.Pow(1.5 / 1.959964, 2);
        Assert.Equal(correlation, json["working"]!["correlation"]!.GetValue<double>(), 1e-5);
    }

    [Fact]
    public void More_shared_than_the_whole_doubt_and_a_head_both_on_and_off_the_bench_are_refused()
    {
        var shell = Shell.Run("calc", "compare", "221.9 +- 1.5", "223.9 +- 1.5", "--same-bench", "1%");
        Assert.Equal(2, shell.ExitCode);
        Assert.Contains("more than its whole doubt", shell.Error.ReplaceLineEndings(" "), StringComparison.Ordinal);
        shell = Shell.Run("calc", "compare", "221.9 222.3", "223.9 224.1", "--set-up", "0.5%", "--same-set-up", "0.5%");
        Assert.Equal(2, shell.ExitCode);
        Assert.Contains("give one of them", shell.Error.ReplaceLineEndings(" "), StringComparison.Ordinal);
    }

    [Fact]
    public void A_lift_past_the_tested_ones_is_refused_unless_asked_for()
    {
        string[] points = ["calc", "curve", ".100:62", ".200:121", ".300:174", "--at", ".400"];
        Assert.Equal(2, Shell.Run(points).ExitCode);
        Assert.Contains("extrapolated", Shell.Run([.. points, "--beyond"]).Output);
    }

    [Fact]
    public void A_check_far_from_the_others_says_stop()
    {
        var json = Shell.Json("calc", "chart", "152.1 151.8 152.3 152.0 151.9 152.2 160.0");
        Assert.Equal("stop", json["answer"]!["answer"]!.GetValue<string>());
    }

    /// <summary>As a shell parts words.</summary>
    private static IEnumerable<string> Split(string line) =>
        System.CommandLine.Parsing.CommandLineParser.SplitCommandLine(line).Skip(1);
}
