using MathNet.Numerics.LinearAlgebra;

namespace Portwright.Engine.Cam;

/// <summary>The smoothest lobe through what a cam card says.</summary>
/// <remarks>
/// Our own construction. Half the lobe, from nose to the end of the ramp, is the curve with the least integral of squared jerk (third derivative) among those that stand
/// at the lobe's lift with no speed on the nose, pass each lift of the card at half its duration, and end on the base circle with no speed and no acceleration. Such a
/// curve is a spline of the fifth degree with its third and fourth derivatives continuous at the card's points; the jerk is zero on the nose, where the two halves meet. The
/// card does not say how long the ramp is: of ramps of 2 to 60 degrees, the one whose opening acceleration is least is taken, among those in which the lift
/// never falls on its way up. A real lobe with the same card may be fuller or leaner between the card's points: state a third duration if the card has one.
/// </remarks>
internal static class LobeShape
{
    private const double Degree = Math.PI / 180;
    private const int ShortestRamp = 2, LongestRamp = 60, LooksAPiece = 48;

    /// <summary>The whole lobe about its nose at angle 0 (rad of crank), or null where no ramp gives one that rises all the way.</summary>
    /// <param name="lift">On the nose, m.</param>
    /// <param name="points">Lift (m) and half duration (rad of crank), from high lift to low; the last may stand at no lift, which is then the end.</param>
    public static LiftCurve? Through(double lift, ReadOnlySpan<(double Lift, double Half)> points)
    {
        var endsThere = points[^1].Lift == 0;
        LiftCurve? best = null;
        var least = double.PositiveInfinity;
        for (var ramp = ShortestRamp; ramp <= (endsThere ? ShortestRamp : LongestRamp); ramp++)
        {
            var n = points.Length + (endsThere ? 1 : 2);
            double[] x = new double[n], y = new double[n];
            (x[0], y[0]) = (0, lift);
            for (var i = 0; i < points.Length; i++) (x[i + 1], y[i + 1]) = (points[i].Half, points[i].Lift);
            if (!endsThere) (x[^1], y[^1]) = (x[^2] + ramp * Degree, 0);
            var (slope, bend) = LeastJerk(x, y);
            var half = new LiftCurve(x, y, slope, bend);
            if (HardestAcceleration(half) is { } hardest && hardest < least)
            {
                least = hardest;
                best = Mirror(x, y, slope, bend);
            }
        }

        return best;
    }

    /// <summary>Slopes and bends at the points that make third and fourth derivatives continuous, the jerk zero at the first point.</summary>
    private static (double[] Slope, double[] Bend) LeastJerk(double[] x, double[] y)
    {
        // Unknown: the bend on the nose, then slope and bend at each point between. In units of the whole lift and length, for the sake of rounding.
        int n = x.Length, unknowns = 2 * (n - 2) + 1;
        double length = x[^1], lift = y[0];
        double[] slope = new double[n], bend = new double[n], without = new double[unknowns], with = new double[unknowns];
        double[] p = [.. x.Select(v => v / length)], q = [.. y.Select(v => v / lift)], u = new double[unknowns];
        Misfit(p, q, u, slope, bend, without);
        var matrix = Matrix<double>.Build.Dense(unknowns, unknowns);
        for (var k = 0; k < unknowns; k++)
        {
            u[k] = 1;
            Misfit(p, q, u, slope, bend, with);
            u[k] = 0;
            for (var row = 0; row < unknowns; row++) matrix[row, k] = with[row] - without[row];
        }

        var found = matrix.Solve(-Vector<double>.Build.DenseOfArray(without)).ToArray();
        Misfit(p, q, found, slope, bend, with);
        for (var i = 0; i < n; i++) (slope[i], bend[i]) = (slope[i] * lift / length, bend[i] * lift / (length * length));
        return (slope, bend);
    }

    private static void Misfit(double[] x, double[] y, double[] unknown, double[] slope, double[] bend, double[] misfit)
    {
        bend[0] = unknown[0];
        for (var i = 1; i + 1 < x.Length; i++) (slope[i], bend[i]) = (unknown[2 * i - 1], unknown[2 * i]);
        Span<double> c = stackalloc double[6];
        double jerk = 0, fourth = 0;
        for (var i = 0; i + 1 < x.Length; i++)
        {
            var h = x[i + 1] - x[i];
            LiftCurve.Hermite(y[i + 1] - y[i], h * slope[i], h * slope[i + 1], h * h * bend[i], h * h * bend[i + 1], c);
            double h3 = h * h * h, h4 = h3 * h;
            if (i == 0) misfit[0] = 6 * c[3] / h3;
            else (misfit[2 * i - 1], misfit[2 * i]) = (6 * c[3] / h3 - jerk, 24 * c[4] / h4 - fourth);
            jerk = (6 * c[3] + 24 * c[4] + 60 * c[5]) / h3;
            fourth = (24 * c[4] + 120 * c[5]) / h4;
        }
    }

    /// <summary>Greatest acceleration away from the seat; null where the lift rises again on its way from nose to seat.</summary>
    private static double? HardestAcceleration(LiftCurve half)
    {
        double hardest = 0, before = half.Y[0];
        for (var i = 0; i + 1 < half.X.Length; i++)
        {
            for (var k = 1; k <= LooksAPiece; k++)
            {
                var at = half.X[i] + (half.X[i + 1] - half.X[i]) * k / LooksAPiece;
                var value = half.Value(at);
                if (value > before || !double.IsFinite(value) || value < 0 && at < half.To) return null;
                before = value;
                hardest = Math.Max(hardest, half.Bend(at));
            }
        }

        return hardest;
    }

    private static LiftCurve Mirror(double[] x, double[] y, double[] slope, double[] bend)
    {
        static double[] Both(double[] half, int sign) => [.. half.Skip(1).Reverse().Select(v => sign * v), .. half];
        return new(Both(x, -1), Both(y, 1), Both(slope, -1), Both(bend, 1));
    }
}
