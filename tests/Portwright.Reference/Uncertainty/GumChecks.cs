using System.Text.Json.Nodes;
using Portwright.Physics.Statistics;
using Portwright.Physics.Uncertainty;

namespace Portwright.Reference.Uncertainty;

/// <summary>JCGM 100:2008 (GUM): examples H.1, H.2 and those of 5.2.2 and F.1.2.3, equation G.2b.</summary>
public sealed class GumChecks
{
    [Fact]
    public void End_gauge_calibration_H1_is_met_from_its_own_inputs()
    {
        var c = PublishedCases.Read("geometry-and-flow", "gum-h1-full").Single();
        var difference = Propagation.Propagate(new Sum(),
            new InputEstimate("observed", c.In("mean_difference_nm"), c.In("u_difference_repeat_nm"), c.In("dof_repeat"), Kind: ContributionKind.Repeat),
            new InputEstimate("random", 0, c.In("u_difference_random_nm"), c.In("dof_random")),
            new InputEstimate("systematic", 0, c.In("u_difference_systematic_nm"), c.In("dof_systematic")));
        c.Check("u_difference_nm", difference.StandardUncertainty);
        c.Check("dof_difference", difference.EffectiveDegreesOfFreedom);

        var standard = new InputEstimate("standard", c.In("length_of_standard_mm") * 1e6, c.In("u_standard_nm"), c.In("dof_standard"));
        var expansion = InputEstimate.FromHalfWidth("expansion difference", 0,
            c.In("half_width_expansion_difference_per_k"), degreesOfFreedom: c.In("dof_expansion_difference"));
        var temperature = InputEstimate.FromHalfWidth("temperature difference", 0,
            c.In("half_width_temperature_difference_k"), degreesOfFreedom: c.In("dof_temperature_difference"));

        var model = new EndGauge(c.In("expansion_per_k"), c.In("mean_temperature_deviation_k"));
        var length = Propagation.Propagate(model, standard.ToEstimate(), difference, expansion.ToEstimate(), temperature.ToEstimate());
        double Share(string source) => Math.Abs(length.Contributions.Single(x => x.Source == source).Amount);
        c.Check("length_mm", length.Value / 1e6, 1e-9);
        c.Check("u_from_expansion_difference_nm", Share("expansion difference"));
        c.Check("u_from_temperature_difference_nm", Share("temperature difference"));
        c.Check("combined_nm", length.StandardUncertainty);
        // The case enters the comparison as one input; its three causes, kept apart, have the same sum of u^4/nu.
        c.Check("effective_dof", length.EffectiveDegreesOfFreedom);
        // H.1.6 truncates 16.75 to 16.
        var factor = Student.TwoSidedFactor(0.99, Math.Floor(length.EffectiveDegreesOfFreedom));
        c.Check("coverage_factor_99", factor);
        c.Check("expanded_99_nm", factor * length.StandardUncertainty);

        var printed = PublishedCases.Read("valve-port-engine", "gum-h1").Single();
        printed.Check("length_mm", length.Value / 1e6, 1e-8);
        printed.Check("uc_nm", length.StandardUncertainty);
        printed.Check("effective_dof", Math.Floor(length.EffectiveDegreesOfFreedom));
        printed.Check("U99_nm", factor * length.StandardUncertainty);
    }

    [Fact]
    public void Resistance_and_reactance_H2_keep_their_correlations()
    {
        var c = PublishedCases.Read("geometry-and-flow", "gum-h2").Single();
        Estimate[] read = [ReadTogether(c.List("voltage_v")), ReadTogether(c.List("current_a")), ReadTogether(c.List("phase_rad"))];
        for (var i = 0; i < 3; i++)
        {
            CheckNumber(c, c.Expected["means"]![i]!, read[i].Value);
            CheckNumber(c, c.Expected["u_means"]![i]!, read[i].StandardUncertainty);
        }
        c.Check("correlation_V_I", Estimate.Correlation(read[0], read[1]));
        c.Check("correlation_V_phi", Estimate.Correlation(read[0], read[2]));
        c.Check("correlation_I_phi", Estimate.Correlation(read[1], read[2]));

        var r = Propagation.Propagate(new Resistance(), read);
        var x = Propagation.Propagate(new Reactance(), read);
        var z = Propagation.Propagate(new Impedance(), read);
        c.Check("R_ohm", r.Value);
        c.Check("X_ohm", x.Value);
        c.Check("Z_ohm", z.Value);
        c.Check("u_R_ohm", r.StandardUncertainty);
        c.Check("u_X_ohm", x.StandardUncertainty);
        c.Check("u_Z_ohm", z.StandardUncertainty);
        c.Check("correlation_R_X", Estimate.Correlation(r, x));
        c.Check("correlation_R_Z", Estimate.Correlation(r, z));
        c.Check("correlation_X_Z", Estimate.Correlation(x, z));
    }

    /// <summary>JCGM 100:2008, 5.2.2, example (from memory): ten resistors calibrated against one standard and joined in series.</summary>
    [Fact]
    public void Ten_resistors_of_one_standard_are_as_doubtful_as_ten_standards_and_differ_by_nothing()
    {
        var c = PublishedCases.Read("geometry-and-flow", "gum-522").Single();
        Estimate Resistor() => new InputEstimate("standard resistor", c.In("nominal_ohm"), c.In("u_standard_ohm")).ToEstimate();
        Estimate[] resistors = [.. Enumerable.Range(0, (int)c.In("count")).Select(_ => Resistor())];
        c.Check("series_u_ohm", resistors.Aggregate((a, b) => a + b).StandardUncertainty);
        // What the guide calls incorrect: the same with the shared source forgotten.
        c.Check("series_u_uncorrelated_ohm", Estimate.Combine([.. resistors.Select((r, i) => (1.0, new InputEstimate($"resistor {i}", r.Value, r.StandardUncertainty).ToEstimate()))]).StandardUncertainty, 0.02);
        var difference = resistors[0] - resistors[1];
        Assert.Equal(0, difference.StandardUncertainty);
        Assert.Equal(1, Estimate.Correlation(resistors[0], resistors[1]), 12);
    }

    /// <summary>JCGM 100:2008, F.1.2.3, example (from memory): one resistor gives a current and a temperature, with u(I, t) = -[2 I (t + t0)/Rs^2] u^2(Rs).</summary>
    [Fact]
    public void A_current_and_a_temperature_read_with_one_resistor_have_the_guides_covariance()
    {
        const double volts = 0.5, ohms = 100, u = 0.01, ratio = 1.2, a = 0.002, t0 = 4;
        var standard = new InputEstimate("standard resistor", ohms, u).ToEstimate();
        var current = Estimate.Linear(volts / ohms, (-volts / (ohms * ohms), standard));
        var temperature = Estimate.Linear(a * ratio * ratio * ohms * ohms - t0, (2 * a * ratio * ratio * ohms, standard));
        var expected = -2 * current.Value * (temperature.Value + t0) / (ohms * ohms) * u * u;
        Assert.Equal(expected, Estimate.Covariance(current, temperature), 1e-12 * Math.Abs(expected));
    }

    [Fact]
    public void Effective_degrees_of_freedom_follow_welch_satterthwaite()
    {
        foreach (var c in PublishedCases.Read("geometry-and-flow", "welch-satterthwaite-"))
        {
            var degrees = c.Inputs["degrees_of_freedom"]!.AsArray().Select(v => v?.GetValue<double>() ?? double.PositiveInfinity);
            var next = 0;
            var estimate = new Estimate(0, [.. c.List("standard_uncertainties").Zip(degrees, (u, v) => new Contribution($"cause {next++}", u, v))]);
            c.Check("combined", estimate.StandardUncertainty);
            c.Check("effective_dof", estimate.EffectiveDegreesOfFreedom);
            c.Check("t95_unrounded", estimate.CoverageFactor());
            var whole = Math.Floor(estimate.EffectiveDegreesOfFreedom + 1e-9);
            c.Check("t95_truncated", Student.TwoSidedFactor(0.95, whole));
            c.Check("expanded95_truncated", Student.TwoSidedFactor(0.95, whole) * estimate.StandardUncertainty);
        }
    }

    /// <summary>Each set of readings taken together is one cause, so that means share it: equation 17 of 5.2.3 term by term.</summary>
    private static Estimate ReadTogether(double[] readings)
    {
        var (n, mean) = (readings.Length, RepeatScatter.Mean(readings));
        return new(mean, [.. readings.Select((r, k) => new Contribution($"set {k + 1}", (r - mean) / Math.Sqrt(n * (n - 1)), n - 1, ContributionKind.Repeat, "five sets", n))]);
    }

    private static void CheckNumber(PublishedCase c, JsonNode expected, double got)
    {
        var value = expected.GetValue<double>();
        Assert.True(Math.Abs(got / value - 1) <= c.Tolerance, $"{c.Id}: expected {value:R}, got {got:R}");
    }

    private readonly struct Sum : IMeasurementModel
    {
        public double Evaluate(ReadOnlySpan<double> inputs) => inputs[0] + inputs[1] + inputs[2];
    }

    /// <summary>Equation H.2 of the guide, lengths in nm: l = ls + d - ls (delta alpha theta + alpha_s delta theta).</summary>
    private readonly struct EndGauge(double expansion, double deviation) : IMeasurementModel
    {
        public double Evaluate(ReadOnlySpan<double> inputs) =>
            inputs[0] + inputs[1] - inputs[0] * (inputs[2] * deviation + expansion * inputs[3]);
    }

    private readonly struct Resistance : IMeasurementModel
    {
        public double Evaluate(ReadOnlySpan<double> inputs) => inputs[0] / inputs[1] * Math.Cos(inputs[2]);
    }

    private readonly struct Reactance : IMeasurementModel
    {
        public double Evaluate(ReadOnlySpan<double> inputs) => inputs[0] / inputs[1] * Math.Sin(inputs[2]);
    }

    private readonly struct Impedance : IMeasurementModel
    {
        public double Evaluate(ReadOnlySpan<double> inputs) => inputs[0] / inputs[1];
    }
}
