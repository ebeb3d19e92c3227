using Portwright.Physics.Uncertainty;

namespace Portwright.Reference.Statistics;

/// <summary>B. L. Welch, Biometrika 34 (1947) 28-35; SciPy 1.10.1 ttest_ind(equal_var=False).</summary>
public sealed class WelchTestChecks
{
    [Fact]
    public void Comparison_of_two_results_with_repeats_alone_is_the_welch_test()
    {
        var c = PublishedCases.Read("geometry-and-flow", "welch-test-1").Single();
        var difference = Comparison.Compare(
            InputEstimate.FromRepeats("repeats before", c.List("before_cfm")).ToEstimate(),
            InputEstimate.FromRepeats("repeats after", c.List("after_cfm")).ToEstimate());
        c.Check("difference", difference.Of.Value);
        c.Check("standard_uncertainty", difference.Of.StandardUncertainty);
        c.Check("t", difference.Of.Value / difference.Of.StandardUncertainty);
        c.Check("dof", difference.Of.EffectiveDegreesOfFreedom);
        c.Check("p", difference.PValue);
        Assert.Equal(Verdict.Real, difference.Verdict);
    }
}
