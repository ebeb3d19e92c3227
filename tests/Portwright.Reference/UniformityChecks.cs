using Portwright.Physics.Rings;

namespace Portwright.Reference;

/// <summary>Uniformity index: Weltens, Bressler, Terres, Neumaier, Rammoser, SAE 930780 (1993).</summary>
public sealed class UniformityChecks
{
    public static TheoryData<PublishedCase> Cells =>
        [.. PublishedCases.Read("geometry-and-flow", "uniformity-").Where(c => c.Inputs.ContainsKey("area"))];

    public static TheoryData<PublishedCase> PowerLaws => [.. PublishedCases.Read("geometry-and-flow", "uniformity-power-")];

    [Theory, MemberData(nameof(Cells))]
    public void Mean_and_index_are_as_published(PublishedCase c)
    {
        double[] speeds = c.List("speed_ft_s"), areas = c.List("area");
        c.Check("mean_ft_s", UniformityIndex.Mean(speeds, areas));
        c.Check("uniformity_index", UniformityIndex.Of(speeds, areas));
    }

    [Theory, MemberData(nameof(PowerLaws))]
    public void A_power_law_in_a_pipe_fills_it_as_published(PublishedCase c)
    {
        var m = 1 / c.In("n");
        // Ring means are exact: the integral of 2 r (1-r)^m is -2 (1-r)^(m+1)/(m+1) + 2 (1-r)^(m+2)/(m+2).
        var (speeds, areas) = Rings(r => -2 * Math.Pow(1 - r, m + 1) / (m + 1) + 2 * Math.Pow(1 - r, m + 2) / (m + 2));
        c.Check("mean_over_max", UniformityIndex.Mean(speeds, areas));
        c.Check("uniformity_index", UniformityIndex.Of(speeds, areas));
    }

    [Fact]
    public void A_parabola_in_a_pipe_fills_three_quarters_of_it()
    {
        var c = PublishedCases.Read("geometry-and-flow", "uniformity-parabola").Single();
        var (speeds, areas) = Rings(r => 2 * (r * r - r * r * r * r / 2));
        c.Check("uniformity_index", UniformityIndex.Of(speeds, areas));
    }

    /// <summary>Mean speeds of equal-area rings from the integral of 2 r v. The crossing of the mean falls in one ring: an error of its share squared.</summary>
    private static (double[] Speeds, double[] Areas) Rings(Func<double, double> primitive)
    {
        const int n = 200_000;
        var speeds = Enumerable.Range(0, n).Select(i => (primitive(Math.Sqrt((i + 1.0) / n)) - primitive(Math.Sqrt((double)i / n))) * n).ToArray();
        return (speeds, Enumerable.Repeat(1.0 / n, n).ToArray());
    }
}
