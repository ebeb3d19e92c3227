using Portwright.Physics.Uncertainty;

namespace Portwright.Physics.Tests.Uncertainty;

public sealed class SharedCauseTests
{
    private static readonly SharedCause Bench = new("bench of both", 0.003, ContributionKind.Calibration);

    [Fact]
    public void A_doubt_stated_whole_stays_whole_when_what_is_shared_is_told_apart()
    {
        var result = SharedCause.Apart(new InputEstimate("before", 220, 0.8), Bench);
        Assert.Equal(0.8, result.StandardUncertainty, 1e-12);
        Assert.Equal(0.66, result.Contributions.Single(c => c.Source == Bench.Source).Amount, 1e-12);
        Assert.Equal(Math.Sqrt(0.8 * 0.8 - 0.66 * 0.66), result.Contributions.Single(c => c.Source == "before").Amount, 1e-12);
    }

    [Fact]
    public void What_two_results_share_is_out_of_their_difference_but_for_what_they_differ_by()
    {
        var (a, b) = (SharedCause.Apart(new InputEstimate("before", 220, 0.8), Bench), SharedCause.Apart(new InputEstimate("after", 224, 0.9), Bench));
        var own = Math.Sqrt(0.8 * 0.8 - 0.66 * 0.66 + 0.9 * 0.9 - 0.672 * 0.672);
        Assert.Equal(Math.Sqrt(own * own + 0.012 * 0.012), b.Subtract(a).StandardUncertainty, 1e-12);
        Assert.Equal(0.66 * 0.672 / (0.8 * 0.9), Estimate.Correlation(a, b), 1e-12);
        Assert.Equal(Math.Sqrt(0.8 * 0.8 + 0.9 * 0.9 + 2 * 0.66 * 0.672), b.Add(a).StandardUncertainty, 1e-12);
    }

    [Fact]
    public void Repeats_do_not_show_what_moves_them_all_alike()
    {
        var repeats = InputEstimate.FromRepeats("before", 220.0, 221, 222);
        var result = SharedCause.Apart(repeats, Bench);
        Assert.Equal(repeats.StandardUncertainty, result.Contributions.Single(c => c.Kind == ContributionKind.Repeat).Amount, 1e-12);
        Assert.True(result.StandardUncertainty > repeats.StandardUncertainty);
    }

    [Fact]
    public void More_shared_than_there_is_doubt_is_refused_and_all_of_it_is_not()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => SharedCause.Apart(new InputEstimate("before", 220, 0.65), Bench));
        Assert.Throws<ArgumentOutOfRangeException>(() => SharedCause.Apart(InputEstimate.Exact("before", 220), Bench));
        Assert.Throws<ArgumentOutOfRangeException>(() => SharedCause.Apart(new InputEstimate("before", 220, 0.65), Bench with { Share = -0.001 }));
        Assert.Equal(0, SharedCause.Apart(new InputEstimate("before", 220, 220 * 0.003), Bench).Contributions.Single(c => c.Source == "before").Amount, 1e-6);
    }

    [Fact]
    public void A_cause_keeps_its_distribution_on_the_way_to_a_result()
    {
        var scale = InputEstimate.FromResolution("scale", 100, 0.1).ToEstimate();
        var result = Estimate.Ratio(scale.Multiply(Estimate.Exact(3)), new InputEstimate("plate", 2, 0.01).ToEstimate()).Add(scale);
        Assert.Equal(InputShape.Rectangular, result.Contributions.Single(c => c.Source == "scale").Shape);
        Assert.Equal(InputShape.Normal, result.Contributions.Single(c => c.Source == "plate").Shape);
    }
}
