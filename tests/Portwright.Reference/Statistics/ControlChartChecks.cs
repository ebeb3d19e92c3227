using Portwright.Physics.Statistics;

namespace Portwright.Reference.Statistics;

/// <summary>
/// NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2 to 6.3.2.4; rules of the Western Electric Statistical Quality
/// Control Handbook, 1956.
/// </summary>
public sealed class ControlChartChecks
{
    [Fact]
    public void Shewhart_factors_meet_the_handbook()
    {
        foreach (var c in PublishedCases.Read("geometry-and-flow", "chart-factors-"))
        {
            var factors = ShewhartFactors.For((int)c.In("n"));
            c.Check("c4", factors.C4);
            c.Check("d2", factors.D2);
            c.Check("d3", factors.D3Range);
            c.Check("A2", factors.A2);
            c.Check("A3", factors.A3);
            c.Check("B3", factors.B3);
            c.Check("B4", factors.B4);
            c.Check("D3", factors.D3);
            c.Check("D4", factors.D4);
        }
    }

    [Fact]
    public void Individuals_chart_meets_the_worked_example()
    {
        var c = PublishedCases.Read("geometry-and-flow", "chart-nist-individuals").Single();
        var chart = IndividualsChart.Of(c.List("x"), c.In("d2"));
        c.Check("mean", chart.Mean);
        // 1.87777..., printed to four decimals.
        c.Check("mean_moving_range", Math.Round(chart.MeanMovingRange, 4));
        c.Check("upper_limit", chart.UpperLimit);
        c.Check("lower_limit", chart.LowerLimit);
    }

    [Fact]
    public void Individuals_chart_with_the_unrounded_factor_meets_the_recomputed_limits()
    {
        // From the note of the case: with d2 = 2/sqrt(pi) the limits are 55.802412 and 45.817588.
        var c = PublishedCases.Read("geometry-and-flow", "chart-nist-individuals").Single();
        var chart = IndividualsChart.Of(c.List("x"));
        Assert.Equal(55.802412, chart.UpperLimit, 1e-6);
        Assert.Equal(45.817588, chart.LowerLimit, 1e-6);
    }

    [Fact]
    public void Exponentially_weighted_chart_meets_the_worked_example()
    {
        var c = PublishedCases.Read("geometry-and-flow", "chart-nist-ewma").Single();
        var chart = ExponentiallyWeightedChart.Of(c.List("x"), c.In("start"), c.In("s"), c.In("lambda_"), c.In("k"));
        var printed = c.Expected["ewma"]!.AsArray().Select(v => v!.GetValue<double>()).ToArray();
        Assert.Equal(printed.Length, chart.Averages.Length);
        for (var i = 0; i < printed.Length; i++)
        {
            // Printed to two decimals.
            Assert.True(Math.Abs(chart.Averages[i] - printed[i]) <= 0.00501, $"{c.Id}: average {i} expected {printed[i]}, got {chart.Averages[i]}");
        }
        c.Check("upper_limit", chart.UpperLimit);
        c.Check("lower_limit", chart.LowerLimit);
    }

    [Fact]
    public void Western_electric_rules_signal_where_they_should_and_nowhere_else()
    {
        foreach (var c in PublishedCases.Read("geometry-and-flow", "chart-rules-"))
        {
            var expected = c.Expected["signals"]!.AsArray()
                .Select(s => $"{s![0]}: {string.Join(' ', s[1]!.AsArray().Select(r => r!.GetValue<int>()))}");
            var got = WesternElectricRules.Signals(c.List("z")).Select(s => $"{s.Point}: {string.Join(' ', s.Rules)}");
            Assert.Equal((c.Id, string.Join("; ", expected)), (c.Id, string.Join("; ", got)));
        }
    }

    [Fact]
    public void Average_run_length_is_one_over_the_normal_tails()
    {
        foreach (var c in PublishedCases.Read("geometry-and-flow", "chart-run-length-"))
            c.Check("average_run_length", AverageRunLength.Of(c.In("shift_sigma")));
    }
}
