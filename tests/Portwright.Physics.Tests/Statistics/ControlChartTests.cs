using Portwright.Physics.Statistics;

namespace Portwright.Physics.Tests.Statistics;

public sealed class ControlChartTests
{
    private static readonly ChartLimits Settled = ChartLimits.Stated(50, 1);

    [Fact]
    public void A_check_beyond_three_sigma_stops_the_work()
    {
        var chart = ControlChart.Judge(Settled, [50.2, 49.5, 53.2]);
        Assert.Equal(ChartAnswer.Stop, chart.Answer);
        Assert.Contains("3.2 standard deviations above", chart.Sentences[0]);
    }

    [Fact]
    public void A_slow_drift_inside_the_limits_asks_for_a_look()
    {
        var chart = ControlChart.Judge(Settled, [49.8, 50.4, 50.3, 50.2, 50.5, 50.1, 50.9, 50.3, 50.6]);
        Assert.Equal(ChartAnswer.Look, chart.Answer);
        Assert.Equal([4], chart.Rules);
        Assert.Contains("drifted", string.Join(' ', chart.Sentences));
    }

    [Fact]
    public void A_quiet_check_is_a_go_even_after_an_old_alarm()
    {
        var chart = ControlChart.Judge(Settled, [50, 54, 50.1, 49.7]);
        Assert.Equal(ChartAnswer.Go, chart.Answer);
        Assert.Equal(2, Assert.Single(chart.Signals).Point);
    }

    [Fact]
    public void The_first_mornings_have_no_limits_and_say_so()
    {
        var chart = ControlChart.Judge([50, 50.1, 49.8]);
        Assert.Equal(ChartAnswer.Look, chart.Answer);
        Assert.Contains("2 earlier checks", chart.Sentences[0]);
        Assert.Equal(ChartAnswer.Look, ControlChart.Judge([50.0]).Answer);
    }

    [Fact]
    public void Identical_earlier_checks_do_not_make_the_bench_perfect()
    {
        double[] same = [.. Enumerable.Repeat(50.0, 25), 50.1];
        Assert.Equal(ChartAnswer.Look, ControlChart.Judge(same).Answer);
        Assert.NotEqual(ChartAnswer.Stop, ControlChart.Judge(same, resolution: 0.2).Answer);
        Assert.Equal(ChartAnswer.Stop, ControlChart.Judge([.. same[..25], 51], resolution: 0.2).Answer);
    }

    [Theory]
    [InlineData(5)]
    [InlineData(12)]
    public void Provisional_limits_raise_a_false_stop_as_rarely_as_settled_ones(int earlier)
    {
        var random = new Random(earlier);
        double Gauss() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        const int mornings = 20_000;
        var stops = 0;
        for (var i = 0; i < mornings; i++)
        {
            double[] points = [.. Enumerable.Range(0, earlier + 1).Select(_ => 50 + 0.4 * Gauss())];
            var chart = ControlChart.Judge(points);
            Assert.Equal(LimitsBasis.Provisional, chart.Limits.Basis);
            if (chart.Answer == ChartAnswer.Stop) stops++;
        }
        // 0.27 percent of 20,000 is 54, three standard deviations 22.
        Assert.InRange(stops, 32, 76);
    }

    [Fact]
    public void From_twenty_checks_on_the_limits_are_those_of_the_moving_range()
    {
        var random = new Random(1);
        double[] points = [.. Enumerable.Range(0, 21).Select(_ => 50 + random.NextDouble())];
        var limits = ControlChart.Judge(points).Limits;
        Assert.Equal(LimitsBasis.Settled, limits.Basis);
        Assert.Equal(IndividualsChart.Of(points.AsSpan()[..20]).UpperLimit, limits.UpperLimit, 1e-12);
    }

    [Fact]
    public void Simulated_run_length_agrees_with_the_formula()
    {
        var random = new Random(3);
        double Gauss() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        double total = 0;
        const int runs = 4000;
        for (var run = 0; run < runs; run++)
        {
            do total++;
            while (Math.Abs(2 + Gauss()) <= 3);
        }
        Assert.Equal(AverageRunLength.Of(2), total / runs, 0.4);
    }

    [Fact]
    public void A_weighted_average_sees_a_small_shift_that_no_single_check_shows()
    {
        double[] shifted = [.. Enumerable.Repeat(51.2, 12)];
        Assert.True(ExponentiallyWeightedChart.Of(shifted, 50, 1, 0.2).Signals);
        Assert.DoesNotContain(1, WesternElectricRules.RulesAt([.. shifted.Select(Settled.Z)]));
        Assert.False(ExponentiallyWeightedChart.Of([50.1, 49.8, 50.2], 50, 1).Signals);
    }
}
