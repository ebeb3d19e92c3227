using CsCheck;
using Portwright.Physics.Curves;

namespace Portwright.Physics.Tests.Curves;

public sealed class MonotoneCubicTests
{
    /// <summary>Points with rising x at uneven distances and any y.</summary>
    private static readonly Gen<(double[] X, double[] Y)> AnyPoints =
        Gen.Select(Gen.Double[0.01, 10].Array[2, 15], Gen.Double[-100, 100].Array[15])
            .Select((steps, y) => (Cumulative(steps), y[..steps.Length]));

    private static readonly Gen<(double[] X, double[] Y)> RisingPoints =
        Gen.Select(Gen.Double[0.01, 10].Array[2, 15], Gen.Double[0, 50].Array[15])
            .Select((steps, rises) => (Cumulative(steps), Cumulative(rises[..steps.Length])));

    [Fact]
    public void Curve_meets_every_point()
    {
        AnyPoints.Sample(p =>
        {
            var curve = new MonotoneCubic(p.X, p.Y);
            for (var i = 0; i < p.X.Length; i++) Assert.Equal(p.Y[i], curve.At(p.X[i]).Value);
        });
    }

    [Fact]
    public void Curve_never_passes_the_neighbours_even_where_flow_falls_off()
    {
        AnyPoints.Sample(p =>
        {
            var curve = new MonotoneCubic(p.X, p.Y);
            for (var i = 0; i + 1 < p.X.Length; i++)
            {
                var slack = 1e-12 * (1 + Math.Abs(p.Y[i]) + Math.Abs(p.Y[i + 1]));
                for (var k = 0; k <= 32; k++)
                {
                    var x = Math.Min(p.X[i] + (p.X[i + 1] - p.X[i]) * k / 32, p.X[i + 1]);
                    var y = curve.At(x).Value;
                    Assert.InRange(y, Math.Min(p.Y[i], p.Y[i + 1]), Math.Max(p.Y[i], p.Y[i + 1]));
                    // The value is clipped to the last digit only: the slope shows that the piece itself does not turn.
                    var chord = p.Y[i + 1] - p.Y[i];
                    Assert.True(curve.Derivative(x) * Math.Sign(chord) >= -slack / (p.X[i + 1] - p.X[i]) * 16);
                }
            }
        });
    }

    [Fact]
    public void Rising_flow_stays_rising_between_the_lifts()
    {
        RisingPoints.Sample(p =>
        {
            var curve = new MonotoneCubic(p.X, p.Y);
            var last = p.Y[0];
            for (var k = 1; k <= 400; k++)
            {
                var y = curve.At(Math.Min(curve.From + (curve.To - curve.From) * k / 400, curve.To)).Value;
                Assert.True(y >= last - 1e-12 * Math.Abs(last));
                last = y;
            }
        });
    }

    [Fact]
    public void Area_adds_over_neighbouring_stretches()
    {
        Gen.Select(AnyPoints, Gen.Double[0, 1].Array[3]).Sample((p, at) =>
        {
            var curve = new MonotoneCubic(p.X, p.Y);
            double Place(int i) => Math.Min(curve.From + (curve.To - curve.From) * at[i], curve.To);
            var whole = curve.Area(Place(0), Place(2));
            var parts = curve.Area(Place(0), Place(1)) + curve.Area(Place(1), Place(2));
            Assert.Equal(whole, parts, 1e-9 * (1 + 100 * (curve.To - curve.From)));
            Assert.Equal(whole, -curve.Area(Place(2), Place(0)));
        });
    }

    [Fact]
    public void Area_is_that_of_the_pieces_by_simpsons_rule_which_is_exact_for_cubics()
    {
        AnyPoints.Sample(p =>
        {
            var curve = new MonotoneCubic(p.X, p.Y);
            var sum = 0.0;
            for (var i = 0; i + 1 < p.X.Length; i++)
            {
                var h = p.X[i + 1] - p.X[i];
                sum += h / 6 * (p.Y[i] + 4 * curve.At(p.X[i] + h / 2).Value + p.Y[i + 1]);
            }
            Assert.Equal(sum, curve.Area(curve.From, curve.To), 1e-10 * (1 + 100 * (curve.To - curve.From)));
        });
    }

    [Fact]
    public void Derivative_is_the_slope_of_the_curve()
    {
        var curve = new MonotoneCubic([0, 1, 2.5, 4, 7], [0, 60, 110, 150, 155]);
        foreach (var x in new[] { 0.3, 0.9, 1.7, 3.2, 5.5 })
        {
            var slope = (curve.At(x + 1e-6).Value - curve.At(x - 1e-6).Value) / 2e-6;
            Assert.Equal(slope, curve.Derivative(x), 1e-6);
        }
    }

    [Fact]
    public void Straight_lines_are_kept_straight()
    {
        var curve = new MonotoneCubic([0, 0.05, 0.1, 0.3, 0.7], [1, 1.1, 1.2, 1.6, 2.4]);
        for (var x = 0.0; x <= 0.7; x += 0.01) Assert.Equal(1 + 2 * x, curve.At(x).Value, 1e-12);
    }

    [Fact]
    public void Parabola_in_its_rising_half_is_met_where_no_slope_is_shortened()
    {
        // y = x(8 - x) over 0..3: chord ratios stay inside the circle, so the three-point slopes are the true ones.
        double[] x = [0, 0.5, 1, 1.7, 2.2, 3];
        var curve = new MonotoneCubic(x, [.. x.Select(v => v * (8 - v))]);
        for (var v = 0.0; v <= 3; v += 0.05) Assert.Equal(v * (8 - v), curve.At(v).Value, 1e-12);
    }

    [Fact]
    public void Outside_the_tested_lifts_there_is_no_value_unless_asked_and_then_it_is_marked()
    {
        var curve = new MonotoneCubic([1, 2, 3], [10, 20, 25]);
        Assert.Throws<ArgumentOutOfRangeException>(() => curve.At(3.01));
        Assert.Throws<ArgumentOutOfRangeException>(() => curve.At(0.99));
        Assert.Throws<ArgumentOutOfRangeException>(() => curve.At(double.NaN, Extrapolation.Marked));
        Assert.Throws<ArgumentOutOfRangeException>(() => curve.Area(0, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => curve.Derivative(4));
        var beyond = curve.At(3.5, Extrapolation.Marked);
        Assert.True(beyond.IsExtrapolated);
        Assert.Equal(25 + 0.5 * curve.Derivative(3), beyond.Value, 1e-12);
        Assert.False(curve.At(3, Extrapolation.Marked).IsExtrapolated);
    }

    [Fact]
    public void Points_out_of_order_or_missing_are_refused()
    {
        Assert.Throws<ArgumentException>(() => new MonotoneCubic([1, 1], [2, 3]));
        Assert.Throws<ArgumentException>(() => new MonotoneCubic([2, 1], [2, 3]));
        Assert.Throws<ArgumentException>(() => new MonotoneCubic([1], [2]));
        Assert.Throws<ArgumentException>(() => new MonotoneCubic([1, 2], [2]));
        Assert.Throws<ArgumentException>(() => new MonotoneCubic([1, 2], [2, double.NaN]));
    }

    private static double[] Cumulative(double[] steps)
    {
        var sums = new double[steps.Length];
        var sum = 0.0;
        for (var i = 0; i < steps.Length; i++) sums[i] = sum += steps[i];
        return sums;
    }
}
