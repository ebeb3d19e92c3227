using CsCheck;
using Portwright.Physics.Uncertainty;

namespace Portwright.Physics.Tests.Uncertainty;

public sealed class PropagationTests
{
    [Fact]
    public void Contributions_are_the_derivatives_times_the_uncertainties()
    {
        Gen.Select(Gen.Double[0.1, 50], Gen.Double[0.1, 50], Gen.Double[1e-4, 0.05], Gen.Double[1e-4, 0.05]).Sample((a, b, ra, rb) =>
        {
            double[] x = [a, b];
            double[] u = [ra * a, rb * b];
            Span<double> amounts = stackalloc double[2];
            var value = Propagation.Propagate(new AreaTimesRoot(), x, u, amounts);
            Assert.Equal(a * Math.Sqrt(b), value);
            Assert.Equal(1, amounts[0] / (u[0] * Math.Sqrt(b)), 1e-6);
            Assert.Equal(1, amounts[1] / (u[1] * a / (2 * Math.Sqrt(b))), 1e-6);
        });
    }

    [Fact]
    public void Small_relative_uncertainties_lose_nothing_to_rounding()
    {
        Span<double> amounts = stackalloc double[2];
        Propagation.Propagate(new AreaTimesRoot(), [3, 7], [3e-10, 7e-10], amounts);
        Assert.Equal(1, amounts[1] / (7e-10 * 3 / (2 * Math.Sqrt(7))), 1e-9);
    }

    [Fact]
    public void Many_readings_are_propagated_without_allocation()
    {
        double[] x = [3, 7];
        double[] u = [0.1, 0.2];
        var amounts = new double[2];
        Propagation.Propagate(new AreaTimesRoot(), x, u, amounts);
        var start = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 1000; i++) Propagation.Propagate(new AreaTimesRoot(), x, u, amounts);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - start);
    }

    [Fact]
    public void At_the_edge_of_the_model_the_slope_is_taken_from_the_inside()
    {
        var e = Propagation.Propagate(new NotBelowZero(), new InputEstimate("leak", 0, 0.1));
        Assert.Equal(0.2, e.StandardUncertainty, 1e-9);
    }

    [Fact]
    public void A_model_without_a_value_is_refused() =>
        Assert.Throws<ArgumentException>(() => Propagation.Propagate(new NotBelowZero(), new InputEstimate("leak", -1, 0.1)));

    [Fact]
    public void Inputs_of_one_cause_move_together()
    {
        var e = Propagation.Propagate(new FirstLessSecond(), new InputEstimate("tape", 5, 0.1), new InputEstimate("tape", 3, 0.1));
        Assert.Equal(0, e.StandardUncertainty, 1e-12);
        var apart = Propagation.Propagate(new FirstLessSecond(), new InputEstimate("tape", 5, 0.1), new InputEstimate("calliper", 3, 0.1));
        Assert.Equal(0.1 * Math.Sqrt(2), apart.StandardUncertainty, 1e-12);
    }

    [Fact]
    public void Results_that_share_a_cause_keep_it_through_a_further_model()
    {
        var a = new Estimate(5, [new("plate 3 certificate", 0.1), new("set-up 1", 0.2)]);
        var b = new Estimate(3, [new("plate 3 certificate", 0.1)]);
        var e = Propagation.Propagate(new FirstLessSecond(), a, b);
        Assert.Equal(0.2, e.StandardUncertainty, 1e-12);
    }

    [Fact]
    public void Type_b_inputs_carry_the_divisor_of_their_shape()
    {
        Assert.Equal(0.1 / Math.Sqrt(12), InputEstimate.FromResolution("scale", 10, 0.1).StandardUncertainty, 1e-15);
        Assert.Equal(0.5 / Math.Sqrt(6), InputEstimate.FromHalfWidth("t", 20, 0.5, InputShape.Triangular).StandardUncertainty, 1e-15);
        Assert.Equal(0.5 / Math.Sqrt(2), InputEstimate.FromHalfWidth("t", 20, 0.5, InputShape.ArcSine).StandardUncertainty, 1e-15);
        Assert.Equal(0.6, InputEstimate.FromExpanded("certificate", 100, 1.2).StandardUncertainty, 1e-15);
        Assert.Throws<ArgumentOutOfRangeException>(() => InputEstimate.FromHalfWidth("t", 20, 0.5, InputShape.Normal));
        Assert.Throws<ArgumentOutOfRangeException>(() => new InputEstimate("t", 20, -1));
    }

    [Fact]
    public void Repeats_give_mean_scatter_and_degrees_of_freedom()
    {
        var own = InputEstimate.FromRepeats("repeats", 118.2, 118.6, 117.9, 118.4, 118.1);
        Assert.Equal(118.24, own.Value, 1e-12);
        Assert.Equal(0.2701851217221259 / Math.Sqrt(5), own.StandardUncertainty, 1e-12);
        Assert.Equal(4, own.DegreesOfFreedom);
        Assert.Throws<ArgumentException>(() => InputEstimate.FromRepeats("repeats", 118.2));

        var pooled = RepeatScatter.Pooled([[1.0, 3.0], [10.0, 12.0, 14.0], [7.0]]);
        Assert.Equal(Math.Sqrt((2 + 8) / 3.0), pooled.StandardDeviation, 1e-12);
        Assert.Equal(3, pooled.DegreesOfFreedom);
        Assert.Equal(pooled.StandardDeviation, InputEstimate.FromPooledRepeats("r", [5], pooled, "sweep 4").StandardUncertainty);
    }

    private readonly struct AreaTimesRoot : IMeasurementModel
    {
        public double Evaluate(ReadOnlySpan<double> inputs) => inputs[0] * Math.Sqrt(inputs[1]);
    }

    private readonly struct FirstLessSecond : IMeasurementModel
    {
        public double Evaluate(ReadOnlySpan<double> inputs) => inputs[0] - inputs[1];
    }

    private readonly struct NotBelowZero : IMeasurementModel
    {
        public double Evaluate(ReadOnlySpan<double> inputs) => inputs[0] < 0 ? double.NaN : 2 * inputs[0];
    }
}
