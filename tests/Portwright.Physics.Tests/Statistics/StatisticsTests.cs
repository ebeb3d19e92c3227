using Portwright.Physics.Statistics;

namespace Portwright.Physics.Tests.Statistics;

public sealed class StatisticsTests
{
    [Fact]
    public void Student_factor_and_tail_are_inverse_to_each_other()
    {
        foreach (var dof in new[] { 0.5, 1, 2.7, 10, 300, 999, 1001, 1e4, 1e7, double.PositiveInfinity })
        {
            foreach (var level in new[] { 0.1, 0.5, 0.9, 0.95, 0.9973, 0.999999 })
                Assert.Equal(1, Student.TwoSidedP(Student.TwoSidedFactor(level, dof), dof) / (1 - level), 1e-9);
        }
    }

    [Theory]
    [InlineData(0.01)]
    [InlineData(0.7)]
    [InlineData(3)]
    [InlineData(8)]
    [InlineData(20)]
    public void Student_tail_has_no_step_where_the_method_changes(double t)
    {
        // The incomplete beta function up to 1000 degrees of freedom, Hill's normal equivalent above: two roads to one figure.
        Assert.Equal(1, Student.TwoSidedP(t, 1000) / Student.TwoSidedP(t, Math.BitIncrement(1000)), 1e-9);
    }

    [Fact]
    public void Student_becomes_the_normal_distribution()
    {
        // Abramowitz, Stegun, table 26.1 and 26.5: 0.975 at 1.959964, 0.995 at 2.575829.
        Assert.Equal(1.959963985, Student.TwoSidedFactor(0.95, double.PositiveInfinity), 1e-8);
        Assert.Equal(2.575829304, Student.TwoSidedFactor(0.99, double.PositiveInfinity), 1e-8);
        Assert.Equal(1.959963985, Student.TwoSidedFactor(0.95, 1e9), 1e-7);
    }

    [Fact]
    public void Set_up_scatter_is_found_again_from_repeated_set_ups()
    {
        var random = new Random(42);
        double Gauss() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        double between = 0, within = 0;
        const int benches = 400;
        for (var bench = 0; bench < benches; bench++)
        {
            var anova = OneWayVariance.Of([.. Enumerable.Range(0, 8).Select(_ =>
            {
                var setUp = 200 + 0.9 * Gauss();
                return Enumerable.Range(0, 3).Select(_ => setUp + 0.3 * Gauss()).ToArray();
            })]);
            between += anova.VarianceBetween / benches;
            within += anova.VarianceWithin / benches;
        }
        Assert.Equal(0.81, between, 0.08);
        Assert.Equal(0.09, within, 0.006);
    }

    [Fact]
    public void Upper_limit_of_set_up_scatter_lies_above_the_truth_in_95_percent_of_benches()
    {
        var random = new Random(43);
        double Gauss() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        var above = 0;
        for (var bench = 0; bench < 1000; bench++)
        {
            var anova = OneWayVariance.Of([.. Enumerable.Range(0, 5).Select(_ =>
            {
                var setUp = 200 + 0.9 * Gauss();
                return Enumerable.Range(0, 4).Select(_ => setUp + 0.3 * Gauss()).ToArray();
            })]);
            if (anova.UpperLimitBetween() >= 0.9) above++;
        }
        Assert.InRange(above, 930, 970);
    }

    [Fact]
    public void Groups_that_agree_better_than_their_repeats_show_no_set_up_scatter()
    {
        var anova = OneWayVariance.Of([1, 3], [2.2, 3.8], [1.4, 2.6]);
        Assert.Equal(0, anova.StandardDeviationBetween);
        Assert.Equal(2, anova.EffectiveDegreesOfFreedomBetween);
        // What three set-ups cannot exclude is still far from nothing.
        Assert.True(anova.UpperLimitBetween() > 1);
        Assert.Throws<ArgumentException>(() => OneWayVariance.Of([1, 2]));
        Assert.Throws<ArgumentException>(() => OneWayVariance.Of([1], [2]));
    }

    [Fact]
    public void Line_read_at_the_mean_knows_the_level_alone_and_away_from_it_the_slope_too()
    {
        var fit = StraightLineFit.Of([1, 2, 3, 4], [2.1, 3.9, 6.1, 7.9]);
        Assert.Equal(fit.ResidualStandardDeviation / 2, fit.At(2.5, "fit").StandardUncertainty, 1e-12);
        Assert.True(fit.At(4, "fit").StandardUncertainty > fit.At(3, "fit").StandardUncertainty);
        // Two places on one line differ by the slope alone.
        var rise = fit.At(4, "fit") - fit.At(1, "fit");
        Assert.Equal(3 * fit.StandardUncertaintyOfSlope, rise.StandardUncertainty, 1e-12);
        Assert.Equal(2, rise.EffectiveDegreesOfFreedom, 1e-12);
        Assert.Throws<ArgumentOutOfRangeException>(() => fit.At(5, "fit"));
    }
}
