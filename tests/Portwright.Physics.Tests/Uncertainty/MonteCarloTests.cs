using Portwright.Physics.Uncertainty;

namespace Portwright.Physics.Tests.Uncertainty;

public sealed class MonteCarloTests
{
    [Fact]
    public void Monte_carlo_agrees_with_the_law_where_the_model_is_nearly_straight()
    {
        InputEstimate[] inputs =
        [
            new("coefficient", 0.62, 0.003),
            InputEstimate.FromResolution("manometer", 28, 0.1),
            InputEstimate.FromHalfWidth("temperature", 293, 1, InputShape.Triangular),
        ];
        var law = Propagation.Propagate(new PlateFlow(), inputs);
        var drawn = MonteCarlo.Propagate(new PlateFlow(), inputs, 400_000, seed: 3);
        // 5 standard deviations of the drawn figures: u/sqrt(M) and u/sqrt(2M).
        Assert.Equal(law.Value, drawn.Mean, 5 * law.StandardUncertainty / Math.Sqrt(400_000) + 1e-5 * law.Value);
        Assert.Equal(1, drawn.StandardUncertainty / law.StandardUncertainty, 0.006);
        Assert.Equal(1, drawn.Symmetric.HalfWidth / law.Expanded(), 0.01);
    }

    [Fact]
    public void One_seed_gives_one_answer()
    {
        InputEstimate[] inputs = [new("a", 1, 0.1), new("b", 2, 0.1, 5), new("c", 3, 0.1, Shape: InputShape.ArcSine)];
        Assert.Equal(MonteCarlo.Propagate(new PlateFlow(), inputs, 5000, 8), MonteCarlo.Propagate(new PlateFlow(), inputs, 5000, 8));
        Assert.NotEqual(MonteCarlo.Propagate(new PlateFlow(), inputs, 5000, 8), MonteCarlo.Propagate(new PlateFlow(), inputs, 5000, 9));
    }

    [Theory]
    [InlineData(InputShape.Normal, 1.959964)]
    [InlineData(InputShape.Rectangular, 1.645448)]
    [InlineData(InputShape.Triangular, 1.901730)]
    [InlineData(InputShape.ArcSine, 1.409854)]
    public void Each_shape_has_unit_deviation_and_its_own_95_percent_half_width(InputShape shape, double halfWidth)
    {
        // Closed forms: 1.959964; 0.95 sqrt(3); (1 - sqrt(0.05)) sqrt(6); sqrt(2) sin(0.95 pi/2).
        var drawn = MonteCarlo.Propagate(new Itself(), [new("x", 0, 1, Shape: shape)], 400_000, seed: 5);
        Assert.Equal(1, drawn.StandardUncertainty, 0.006);
        Assert.Equal(halfWidth, drawn.Symmetric.HalfWidth, 0.012);
    }

    [Fact]
    public void Few_repeats_are_drawn_from_students_t()
    {
        var drawn = MonteCarlo.Propagate(new Itself(), [InputEstimate.FromRepeats("x", -1, 0, 1, 0, 0)], 400_000, seed: 6);
        var u = Math.Sqrt(0.5) / Math.Sqrt(5);
        Assert.Equal(2.776445 * u, drawn.Symmetric.HalfWidth, 0.02);
    }

    [Fact]
    public void Inputs_of_one_cause_are_drawn_together()
    {
        var drawn = MonteCarlo.Propagate(new Less(), [new("tape", 5, 0.1), new("tape", 3, 0.1)], 2000);
        Assert.Equal(0, drawn.StandardUncertainty, 1e-12);
    }

    [Fact]
    public void The_95_percent_interval_covers_the_truth_in_95_percent_of_trials()
    {
        // Three repeats of two readings each through a product, with a shared certificate: 2,000 days at the bench.
        var random = new Random(2024);
        double Gauss() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        var covered = 0;
        for (var day = 0; day < 2000; day++)
        {
            var flow = InputEstimate.FromRepeats("flow", [.. Enumerable.Range(0, 5).Select(_ => 200 + 1.5 * Gauss())]);
            var pressure = InputEstimate.FromRepeats("pressure", [.. Enumerable.Range(0, 5).Select(_ => 28 + 0.3 * Gauss())]);
            var factor = new InputEstimate("certificate", 1 + 0.002 * Gauss(), 0.002);
            var e = Propagation.Propagate(new Restated(), flow, pressure, factor);
            if (e.Interval().Contains(200 / Math.Sqrt(28))) covered++;
        }
        Assert.InRange(covered, 1860, 1940);
    }

    private readonly struct PlateFlow : IMeasurementModel
    {
        public double Evaluate(ReadOnlySpan<double> inputs) => inputs[0] * Math.Sqrt(inputs[1] * inputs[2]);
    }

    private readonly struct Restated : IMeasurementModel
    {
        public double Evaluate(ReadOnlySpan<double> inputs) => inputs[2] * inputs[0] / Math.Sqrt(inputs[1]);
    }

    private readonly struct Itself : IMeasurementModel
    {
        public double Evaluate(ReadOnlySpan<double> inputs) => inputs[0];
    }

    private readonly struct Less : IMeasurementModel
    {
        public double Evaluate(ReadOnlySpan<double> inputs) => inputs[0] - inputs[1];
    }
}
