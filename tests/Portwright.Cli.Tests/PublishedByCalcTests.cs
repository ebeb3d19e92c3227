using System.Globalization;
using System.Text.Json.Nodes;
using Portwright.Reference;

namespace Portwright.Cli.Tests;

/// <summary>What <c>calc --json</c> answers, against every published case of the blocks it reaches. Sources stand beside each case.</summary>
public sealed class PublishedByCalcTests
{
    private const double Cfm = 0.0004719474432, Foot = 0.3048;

    public static TheoryData<PublishedCase> Orifices => [.. PublishedCases.Read("air-and-metering", "orifice-")];

    public static TheoryData<PublishedCase> MoistAir => [.. PublishedCases.Read("air-and-metering", "cipm-")];

    public static TheoryData<PublishedCase> Atmospheres =>
        [.. PublishedCases.Read("air-and-metering", "ussa-").Where(c => c.In("geometric_altitude_m") is >= -500 and <= 9000)];

    public static TheoryData<PublishedCase> Pitots => [.. PublishedCases.Read("air-and-metering", "pitot-")];

    public static TheoryData<PublishedCase> Nozzles => [.. PublishedCases.Read("air-and-metering", "nozzle-")];

    public static TheoryData<PublishedCase> Windows =>
        [.. PublishedCases.Read("valve-port-engine", "window-"), .. PublishedCases.Read("geometry-and-flow", "window-b-")];

    public static TheoryData<PublishedCase> Traverses =>
        [.. PublishedCases.Read("geometry-and-flow", "traverse-log-linear-"), .. PublishedCases.Read("geometry-and-flow", "traverse-log-tchebycheff-")];

    [Theory, MemberData(nameof(Orifices))]
    public void Calc_orifice_flows_as_published(PublishedCase c)
    {
        var (answer, working) = Calc("orifice",
            "--pipe", Si(c.In("pipe_diameter_m"), "m"), "--bore", Si(c.In("bore_m"), "m"), "--taps", c.Text("taps"),
            "--dp", Si(c.In("differential_pressure_pa"), "Pa"), "--upstream-pressure", Si(c.In("upstream_pressure_pa"), "Pa"),
            "--density", Si(c.In("density_kg_m3"), "kg/m3"), "--viscosity", Si(c.In("viscosity_pa_s"), "Pa s"), "--k", Si(c.In("isentropic_exponent"), ""));
        c.Check("discharge_coefficient", working["discharge_coefficient"]);
        c.Check("expansibility", working["expansibility"]);
        c.Check("reynolds_pipe", working["reynolds_pipe"]);
        c.Check("mass_flow_kg_s", answer["mass_flow_kg_s"]);
    }

    [Theory, MemberData(nameof(MoistAir))]
    public void Calc_air_is_as_dense_as_published(PublishedCase c)
    {
        var (answer, working) = Calc("air",
            "--barometer", Si(c.In("pressure_pa"), "Pa"), "--temperature", Si(c.In("temperature_c"), "C"), "--humidity", Si(c.In("relative_humidity") * 100, "%"));
        c.Check("density_kg_m3", answer["density_kg_m3"]);
        c.Check("compressibility", working["compressibility"]);
        c.Check("vapour_mole_fraction", working["vapour_mole_fraction"]);
        c.Check("saturation_pressure_pa", working["saturation_pressure_pa"]);
        c.Check("enhancement_factor", working["enhancement_factor"]);
    }

    [Theory, MemberData(nameof(Atmospheres))]
    public void Calc_atmosphere_is_the_published_one(PublishedCase c)
    {
        var (answer, _) = Calc("atmosphere", "--altitude", Si(c.In("geometric_altitude_m"), "m"));
        c.Check("temperature_k", answer["temperature_k"]);
        c.Check("pressure_pa", answer["pressure_pa"]);
        c.Check("density_kg_m3", answer["density_kg_m3"]);
        c.Check("sound_m_s", answer["sound_m_s"]);
        c.Check("viscosity_pa_s", answer["viscosity_pa_s"]);
    }

    [Theory, MemberData(nameof(Pitots))]
    public void Calc_pitot_reads_the_published_speed(PublishedCase c)
    {
        var (answer, working) = Calc("pitot",
            "--dp", Si(c.In("dp_inH2O_4C"), "inH2O"), "--static", Si(c.In("static_pressure_pa"), "Pa"),
            "--temperature", Si(c.In("total_temperature_k"), "K"), "--k", "1.4", "--gas-constant", "287.05");
        c.Check("mach", working["mach"]);
        c.Check("speed_m_s", answer["speed_m_s"]);
        c.Check("speed_ft_s", answer["speed_m_s"] / Foot);
    }

    [Theory, MemberData(nameof(Nozzles))]
    public void Calc_nozzle_passes_the_published_flow(PublishedCase c)
    {
        var (answer, working) = Calc("nozzle",
            "--area", Si(c.In("effective_area_m2"), "m2"), "--test-pressure", Si(c.In("test_pressure_inH2O_4C"), "inH2O"),
            "--upstream-pressure", Si(c.In("upstream_pressure_pa"), "Pa"), "--upstream-temperature", Si(c.In("upstream_temperature_k"), "K"),
            "--k", "1.4", "--gas-constant", "287.05");
        c.Check("mass_flow_kg_s", answer["mass_flow_kg_s"]);
        c.Check("volume_flow_cfm", answer["volume_flow_m3_s"] / Cfm);
        c.Check("ratio_to_28", working["ratio_to_28"]);
        c.Check("square_root_rule", working["square_root_rule"]);
    }

    [Theory, MemberData(nameof(Windows))]
    public void Calc_window_opens_as_published(PublishedCase c)
    {
        var (answer, working) = Calc("window",
            "--head", Si(c.In("valve_head_mm"), "mm"), "--seat-angle", Si(c.In("seat_angle_deg"), "deg"), "--seat-width", Si(c.In("seat_width_mm"), "mm"),
            "--throat", Si(c.In("port_inner_mm"), "mm"), "--stem", Si(c.In("stem_mm"), "mm"), "--lift", Si(c.In("lift_mm"), "mm"));
        c.Check("regime", working["regime"]);
        c.Check("area_mm2", answer["area_m2"] / 1e-6);
        c.Check("lift_1_2_mm", working["lift_1_2_m"] / 1e-3);
        c.Check("lift_2_3_mm", working["lift_2_3_m"] / 1e-3);
        c.Check("curtain_area_mm2", working["curtain_area_m2"] / 1e-6);
        c.Check("lift_over_diameter", working["lift_over_diameter"]);
    }

    [Theory, MemberData(nameof(Traverses))]
    public void Calc_traverse_puts_the_probe_where_it_is_published(PublishedCase c)
    {
        var (count, rule) = ((int)c.In("points_a_radius"), c.Id.Contains("tchebycheff", StringComparison.Ordinal) ? "log-tchebycheff" : "log-linear");
        var (answer, _) = Calc("traverse", "--diameter", "1m", "--points", $"{count}", "--rule", rule);
        var expected = c.Expected["wall_distance_over_diameter"]!.AsArray().Select(v => v!.GetValue<double>()).ToArray();
        Assert.Equal(expected.Length, answer.Count);
        for (var i = 0; i < expected.Length; i++) Assert.Equal(1, answer[$"point_{i + 1}_m"] / expected[i], 1e-9);
    }

    [Fact]
    public void Calc_drift_averages_as_the_handbook_does()
    {
        var c = PublishedCases.Read("geometry-and-flow", "chart-nist-ewma").Single();
        var (answer, _) = Calc("drift", string.Join(' ', c.List("x").Select(x => Si(x, ""))), "--of", "number",
            "--centre", Si(c.In("start"), ""), "--sigma", Si(c.In("s"), ""), "--weight", Si(c.In("lambda_"), ""));
        // Printed to two decimals; so many checks are on it that the limits are those of many.
        Assert.Equal(c.Expected["ewma"]!.AsArray()[^1]!.GetValue<double>(), answer["average"], 0.00501);
        c.Check("upper_limit", answer["upper_limit"], 1e-4);
        c.Check("lower_limit", answer["lower_limit"], 1e-4);
    }

    [Fact]
    public void Calc_drift_knows_how_long_single_checks_hide_a_shift_of_one_sigma()
    {
        var c = PublishedCases.Read("geometry-and-flow", "chart-run-length-").Single(c => c.In("shift_sigma") == 1);
        var (_, working) = Calc("drift", "50 51", "--of", "number", "--centre", "50", "--sigma", "1");
        c.Check("average_run_length", working["run_length_of_single_checks"]);
    }

    [Fact]
    public void Calc_line_finds_the_certified_line_of_Norris()
    {
        var c = PublishedCases.Read("valve-port-engine", "strd-norris").Single();
        var (answer, working) = Calc(["line", .. c.List("x").Zip(c.List("y"), (x, y) => $"{Si(x, "")}:{Si(y, "")}")]);
        c.Check("b0", answer["intercept"]);
        c.Check("b1", answer["slope"]);
        c.Check("sd_b0", answer["standard_uncertainty_intercept"]);
        c.Check("sd_b1", answer["standard_uncertainty_slope"]);
        c.Check("residual_sd", working["scatter"]);
    }

    /// <summary>Weighed water of 16 degC, 998.9468 kg/m3 (see the check of the density itself): a metre of it at standard gravity.</summary>
    [Fact]
    public void Calc_tube_weighs_the_water_in_it()
    {
        var (answer, working) = Calc("tube", "--length", "1m", "--water-temperature", "16C");
        Assert.Equal(998.9468, working["fluid_density_kg_m3"], 0.0018);
        Assert.Equal(998.9468 * 9.80665, answer["differential_pa"], 0.02);
    }

    private static string Si(double value, string unit) => string.Create(CultureInfo.InvariantCulture, $"{value:R} {unit}").TrimEnd();

    private static (Dictionary<string, double> Answer, Dictionary<string, double> Working) Calc(params string[] args)
    {
        var json = Shell.Json(["calc", .. args]);
        return (Numbers(json["answer"]!), Numbers(json["working"]!));

        static Dictionary<string, double> Numbers(JsonNode node) => node.AsObject()
            .Where(p => p.Value is JsonValue v && v.GetValueKind() == System.Text.Json.JsonValueKind.Number)
            .ToDictionary(p => p.Key, p => p.Value!.GetValue<double>());
    }
}
