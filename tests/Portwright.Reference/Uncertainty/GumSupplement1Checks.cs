using Portwright.Physics.Uncertainty;

namespace Portwright.Reference.Uncertainty;

/// <summary>JCGM 101:2008 (GUM Supplement 1), 9.2: the additive model, by the linear law and by Monte Carlo.</summary>
public sealed class GumSupplement1Checks
{
    private const int Trials = 1_000_000;

    [Fact]
    public void Additive_model_agrees_by_the_law_and_by_monte_carlo()
    {
        foreach (var c in PublishedCases.Read("geometry-and-flow", "jcgm101-additive-"))
        {
            var shape = c.Text("shape") == "normal" ? InputShape.Normal : InputShape.Rectangular;
            InputEstimate[] inputs = [.. c.List("standard_deviations").Select((u, i) => new InputEstimate($"X{i + 1}", 0, u, Shape: shape))];
            var law = Propagation.Propagate(new Additive(), inputs);
            c.Check("combined", law.StandardUncertainty);
            c.Check("gum_half_width", law.Expanded());

            var drawn = MonteCarlo.Propagate(new Additive(), inputs, Trials, seed: 20);
            // Scatter of u over the trials is at most u/sqrt(2 M); 5 of them.
            c.Check("combined", drawn.StandardUncertainty, 5 / Math.Sqrt(2.0 * Trials));
            // An end of the interval scatters by sqrt(p(1-p)/M)/density: below 0.3 percent of the half width for all three.
            c.Check("exact_half_width", drawn.Symmetric.HalfWidth, 0.004);
            Assert.True(drawn.Shortest.HalfWidth <= drawn.Symmetric.HalfWidth);
            c.Check("exact_half_width", drawn.Shortest.HalfWidth, 0.004);
        }
    }

    private readonly struct Additive : IMeasurementModel
    {
        public double Evaluate(ReadOnlySpan<double> inputs) => inputs[0] + inputs[1] + inputs[2] + inputs[3];
    }
}
