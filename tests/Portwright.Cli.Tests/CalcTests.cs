

namespace Portwright.Cli.Tests;

/// <summary>What a porter sees of <c>calc</c>.</summary>
public sealed class CalcTests
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
    public void Percent_of_range_needs_no_weather()
    {
        string[] reading = ["calc", "percent", "--reading", "71.4%", "--full-scale", "300cfm", "--test-pressure", "28inH2O"];
        double Area(params string[] weather) => Shell.Json([.. reading, .. weather])["answer"]!["effective_area_m2"]!.GetValue<double>();
        var (cold, hot) = (Area("--barometer", "1030hPa", "--temperature", "16C"), Area("--barometer", "985hPa", "--temperature", "27C", "--humidity", "80%"));
        Assert.Equal(1, hot / cold, 2e-3);
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
