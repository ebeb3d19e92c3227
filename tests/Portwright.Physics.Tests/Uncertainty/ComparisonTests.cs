using Portwright.Physics.Uncertainty;

namespace Portwright.Physics.Tests.Uncertainty;

public sealed class ComparisonTests
{
    [Fact]
    public void A_result_compared_with_itself_is_inside_the_noise()
    {
        var e = new Estimate(200, [new("set-up 1", 0.5), new("plate 3 certificate", 1)]);
        var difference = Comparison.Compare(e, e);
        Assert.Equal(Verdict.InsideTheNoise, difference.Verdict);
        Assert.Equal(1, difference.PValue);
        Assert.Equal(0, difference.NoiseHalfWidth);
    }

    [Fact]
    public void Two_results_with_no_scatter_of_their_own_are_not_enough_readings()
    {
        var before = new Estimate(200, [new("plate 3 certificate", 1)]);
        var after = new Estimate(230, [new("plate 3 certificate", 1.15)]);
        Assert.Equal(Verdict.NotEnoughReadings, Comparison.Compare(before, after).Verdict);
        Assert.Equal(Verdict.NotEnoughReadings, Comparison.Compare(Estimate.Exact(200), Estimate.Exact(230)).Verdict);
    }

    [Fact]
    public void Two_degrees_of_freedom_are_not_enough_to_judge()
    {
        var before = new Estimate(200, [new("repeats 1", 0.1, 1, ContributionKind.Repeat, Readings: 2)]);
        var after = new Estimate(230, [new("repeats 2", 0.1, 1, ContributionKind.Repeat, Readings: 2)]);
        var difference = Comparison.Compare(before, after);
        Assert.Equal(Verdict.NotEnoughReadings, difference.Verdict);
        Assert.Equal(1, difference.MoreReadings);
    }

    [Fact]
    public void A_gain_beyond_the_noise_is_real_and_its_probability_says_which_way()
    {
        var before = new Estimate(200, [new("set-up 1", 0.5, 10)]);
        var gain = Comparison.Compare(before, new Estimate(203, [new("set-up 2", 0.5, 10)]));
        var loss = Comparison.Compare(before, new Estimate(197, [new("set-up 2", 0.5, 10)]));
        Assert.Equal(Verdict.Real, gain.Verdict);
        Assert.Equal(Verdict.Real, loss.Verdict);
        Assert.True(gain.ProbabilityOfGain > 0.99);
        Assert.Equal(1, gain.ProbabilityOfGain + loss.ProbabilityOfGain, 1e-12);
        Assert.Equal(gain.PValue, loss.PValue, 1e-15);
        Assert.Equal(gain.PValue, 2 * (1 - gain.ProbabilityOfGain), 1e-12);
    }

    [Fact]
    public void Set_up_scatter_that_repeats_do_not_show_keeps_a_small_gain_inside_the_noise()
    {
        Estimate Result(int setUp, double value) => new(value,
        [
            new($"repeats {setUp}", 0.05, 20, ContributionKind.Repeat, Readings: 3),
            new($"set-up {setUp}", 0.8, 12, ContributionKind.SetUp, "bench card set-up scatter"),
        ]);
        var difference = Comparison.Compare(Result(1, 200), Result(2, 201));
        Assert.Equal(Verdict.InsideTheNoise, difference.Verdict);
        Assert.Null(difference.MoreReadings);
    }

    [Fact]
    public void Where_repeats_alone_are_in_the_way_it_says_how_many_more_would_decide()
    {
        Estimate Result(int n, double value, int readings) => new(value,
            [new($"repeats {n}", 1.0 / Math.Sqrt(readings), 40 + 2 * readings, ContributionKind.Repeat, "pooled", readings)]);
        var difference = Comparison.Compare(Result(1, 200, 3), Result(2, 201.5, 3));
        Assert.Equal(Verdict.NotEnoughReadings, difference.Verdict);
        var more = Assert.NotNull(difference.MoreReadings);
        Assert.Equal(Verdict.Real, Comparison.Compare(Result(1, 200, 3 + more), Result(2, 201.5, 3 + more)).Verdict);
        Assert.NotEqual(Verdict.Real, Comparison.Compare(Result(1, 200, 2 + more), Result(2, 201.5, 2 + more)).Verdict);
    }

    [Fact]
    public void A_difference_that_would_take_many_more_readings_is_noise()
    {
        Estimate Result(int n, double value) => new(value, [new($"repeats {n}", 1, 60, ContributionKind.Repeat, "pooled", 3)]);
        var difference = Comparison.Compare(Result(1, 200), Result(2, 200.2));
        Assert.Equal(Verdict.InsideTheNoise, difference.Verdict);
    }
}
