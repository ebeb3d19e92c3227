using Portwright.Physics.Statistics;

namespace Portwright.Reference.Statistics;

/// <summary>
/// Montgomery, Runger, Applied Statistics and Probability for Engineers, example S14-1 (random effects); statsmodels
/// 0.13.5 (fixed effects).
/// </summary>
public sealed class TwoWayVarianceChecks
{
    [Theory]
    [InlineData("anova-two-way-cloth", FactorEffects.Random)]
    [InlineData("anova-two-way-fixed", FactorEffects.Fixed)]
    public void Two_way_analysis_of_variance_meets_the_textbook(string id, FactorEffects effects)
    {
        var c = PublishedCases.Read("geometry-and-flow", id).Single();
        var anova = TwoWayVariance.Of(Cells(c), effects);
        c.Check("df_rows", anova.DegreesOfFreedomRows);
        c.Check("df_columns", anova.DegreesOfFreedomColumns);
        c.Check("df_interaction", anova.DegreesOfFreedomInteraction);
        c.Check("df_error", anova.DegreesOfFreedomError);
        c.Check("ss_rows", anova.SumOfSquaresRows);
        c.Check("ss_columns", anova.SumOfSquaresColumns);
        c.Check("ss_interaction", anova.SumOfSquaresInteraction);
        c.Check("ss_error", anova.SumOfSquaresError);
        c.Check("ss_total", anova.SumOfSquaresTotal);
        c.Check("ms_rows", anova.MeanSquareRows);
        c.Check("ms_columns", anova.MeanSquareColumns);
        c.Check("ms_interaction", anova.MeanSquareInteraction);
        c.Check("ms_error", anova.MeanSquareError);
        c.Check("f_interaction", anova.FInteraction);
        c.Check("p_interaction", anova.PInteraction);
        c.Check("f_rows", anova.FRows);
        c.Check("p_rows", anova.PRows);
        c.Check("f_columns", anova.FColumns);
        c.Check("p_columns", anova.PColumns);
        if (effects != FactorEffects.Random) return;
        c.Check("variance_error", anova.VarianceError);
        c.Check("variance_interaction", anova.VarianceInteraction);
        c.Check("variance_rows", anova.VarianceRows);
        c.Check("variance_columns", anova.VarianceColumns);
    }

    private static double[][][] Cells(PublishedCase c) =>
    [
        .. c.Inputs["cells"]!.AsArray().Select(row => row!.AsArray()
            .Select(cell => cell!.AsArray().Select(v => v!.GetValue<double>()).ToArray()).ToArray()),
    ];
}
