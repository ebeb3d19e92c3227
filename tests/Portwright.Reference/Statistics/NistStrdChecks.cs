using Portwright.Physics.Statistics;

namespace Portwright.Reference.Statistics;

/// <summary>NIST Statistical Reference Datasets: certified analysis of variance and straight line.</summary>
public sealed class NistStrdChecks
{
    [Theory]
    [InlineData("valve-port-engine", "strd-sirstv")]
    [InlineData("geometry-and-flow", "strd-atmwtag")]
    [InlineData("geometry-and-flow", "strd-smls")]
    [InlineData("geometry-and-flow", "anova-nist-handbook")]
    public void One_way_analysis_of_variance_meets_the_certified_values(string file, string id)
    {
        foreach (var c in PublishedCases.Read(file, id))
        {
            var anova = OneWayVariance.Of(Groups(c));
            c.Check("ss_between", anova.SumOfSquaresBetween);
            c.Check("ss_within", anova.SumOfSquaresWithin);
            c.Check("f", anova.F);
            if (!c.Expected.ContainsKey("df_between")) continue;
            c.Check("df_between", anova.DegreesOfFreedomBetween);
            c.Check("df_within", anova.DegreesOfFreedomWithin);
            c.Check("ms_between", anova.MeanSquareBetween);
            c.Check("ms_within", anova.MeanSquareWithin);
            c.Check("r_squared", anova.RSquared);
            c.Check("residual_sd", anova.StandardDeviationWithin);
        }
    }

    [Fact]
    public void Variance_components_follow_from_the_certified_mean_squares()
    {
        foreach (var c in PublishedCases.Read("geometry-and-flow", "variance-components-"))
        {
            var dataset = c.Text("dataset");
            var file = dataset == "strd-sirstv" ? "valve-port-engine" : "geometry-and-flow";
            var anova = OneWayVariance.Of(Groups(PublishedCases.Read(file, dataset).Single()));
            Assert.Equal(c.In("repeats"), anova.RepeatsPerGroup, 1e-12);
            c.Check("variance_within", anova.VarianceWithin);
            c.Check("variance_between", anova.VarianceBetween);
            c.Check("intraclass", anova.Intraclass);
        }
    }

    [Fact]
    public void Straight_line_meets_the_certified_values_of_Norris()
    {
        var c = PublishedCases.Read("valve-port-engine", "strd-norris").Single();
        var fit = StraightLineFit.Of(c.List("x"), c.List("y"));
        c.Check("b0", fit.Intercept);
        c.Check("b1", fit.Slope);
        c.Check("sd_b0", fit.StandardUncertaintyOfIntercept);
        c.Check("sd_b1", fit.StandardUncertaintyOfSlope);
        c.Check("residual_sd", fit.ResidualStandardDeviation);
    }

    private static double[][] Groups(PublishedCase c) =>
        [.. c.Inputs["groups"]!.AsArray().Select(g => g!.AsArray().Select(v => v!.GetValue<double>()).ToArray())];
}
