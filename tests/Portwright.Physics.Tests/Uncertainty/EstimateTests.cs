using CsCheck;
using Portwright.Physics.Uncertainty;

namespace Portwright.Physics.Tests.Uncertainty;

public sealed class EstimateTests
{
    private static readonly Gen<Estimate> AnyEstimate = Gen.Select(
        Gen.Double[-500, 500],
        Gen.Select(Gen.Int[1, 8], Gen.Double[-5, 5], Gen.Int[1, 30]).Array[0, 10],
        (value, causes) => new Estimate(value, [.. causes.Select(c => new Contribution($"cause {c.Item1}", c.Item2, c.Item3))]));

    [Fact]
    public void A_result_less_itself_is_exactly_zero_without_doubt()
    {
        AnyEstimate.Sample(e =>
        {
            var difference = e - e;
            Assert.Equal(0, difference.Value);
            Assert.Equal(0, difference.StandardUncertainty);
            Assert.Equal(0, difference.Expanded());
        });
    }

    [Fact]
    public void A_shared_certificate_cancels_and_two_set_ups_do_not()
    {
        var before = new Estimate(200, [new("plate 3 certificate", 1.2), new("set-up 1", 0.5)]);
        var after = new Estimate(206, [new("plate 3 certificate", 1.2), new("set-up 2", 0.5)]);
        Assert.Equal(Math.Sqrt(0.5), (after - before).StandardUncertainty, 1e-12);
        Assert.Equal(Math.Sqrt(2.4 * 2.4 + 0.5), (after + before).StandardUncertainty, 1e-12);
    }

    [Fact]
    public void A_common_relative_error_leaves_a_ratio_unchanged()
    {
        AnyEstimate.Where(e => Math.Abs(e.Value) > 1).Sample(e =>
        {
            var after = e.Scale(1.07);
            var ratio = Estimate.Ratio(after, e);
            Assert.Equal(1.07, ratio.Value, 1e-12);
            Assert.Equal(0, ratio.StandardUncertainty, 1e-12);
        });
        Assert.Throws<ArgumentOutOfRangeException>(() => Estimate.Ratio(Estimate.Exact(1), Estimate.Exact(0)));
    }

    [Fact]
    public void Variance_of_a_sum_is_that_of_the_parts_and_twice_their_covariance()
    {
        Gen.Select(AnyEstimate, AnyEstimate).Sample((a, b) =>
        {
            var expected = a.Variance + b.Variance + 2 * Estimate.Covariance(a, b);
            Assert.Equal(expected, (a + b).Variance, 1e-9 * (1 + a.Variance + b.Variance));
            Assert.InRange(Estimate.Correlation(a, b), -1, 1);
        });
    }

    [Fact]
    public void Combining_is_the_same_whatever_the_order()
    {
        Gen.Select(AnyEstimate, AnyEstimate, AnyEstimate).Sample((a, b, c) =>
        {
            var one = Estimate.Mean(a, b, c);
            var other = (a + b + c).Scale(1 / 3.0);
            Assert.Equal(one.Value, other.Value, 1e-9);
            Assert.Equal(one.StandardUncertainty, other.StandardUncertainty, 1e-9);
            Assert.Equal(one.Contributions.Select(x => x.Source), other.Contributions.Select(x => x.Source));
        });
    }

    [Fact]
    public void One_cause_named_twice_adds_before_it_is_squared()
    {
        var e = new Estimate(10, [new("day barometer", 0.3), new("thermometer", 0.4), new("day barometer", -0.1)]);
        Assert.Equal(2, e.Contributions.Length);
        Assert.Equal(Math.Sqrt(0.04 + 0.16), e.StandardUncertainty, 1e-15);
    }

    [Fact]
    public void Estimates_with_the_same_figures_are_equal()
    {
        var a = new Estimate(10, [new("b", 1), new("a", 2)]);
        var b = new Estimate(10, [new("a", 2), new("b", 1)]);
        Assert.Equal(a, b);
        Assert.Equal(a.GetHashCode(), b.GetHashCode());
        Assert.NotEqual(a, b.With(new("c", 1)));
    }

    [Fact]
    public void Two_set_ups_judged_by_one_bench_card_scatter_do_not_double_its_degrees_of_freedom()
    {
        Contribution SetUp(int n, string? pool) => new($"set-up {n}", 0.5, 4, ContributionKind.SetUp, pool);
        Assert.Equal(4, new Estimate(0, [SetUp(1, "bench card set-up scatter"), SetUp(2, "bench card set-up scatter")]).EffectiveDegreesOfFreedom, 1e-12);
        Assert.Equal(8, new Estimate(0, [SetUp(1, null), SetUp(2, null)]).EffectiveDegreesOfFreedom, 1e-12);
    }

    [Fact]
    public void Budget_by_kind_adds_up_to_the_whole()
    {
        var e = new Estimate(100, [new("a", 3, Kind: ContributionKind.SetUp), new("b", 2, Kind: ContributionKind.Repeat), new("c", 1, Kind: ContributionKind.SetUp)]);
        var shares = e.ByKind();
        Assert.Equal(ContributionKind.SetUp, shares[0].Kind);
        Assert.Equal(Math.Sqrt(10), shares[0].StandardUncertainty, 1e-12);
        Assert.Equal(1, shares.Sum(s => s.ShareOfVariance), 1e-12);
    }

    [Fact]
    public void Impossible_contributions_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new Estimate(double.NaN, []));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Estimate(1, [new("a", double.NaN)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Estimate(1, [new("a", 1, 0)]));
        Assert.ThrowsAny<ArgumentException>(() => new Estimate(1, [new("", 1)]));
    }
}
