namespace Portwright.Engine.Cam;

/// <summary>A curve through every row of a lift table, with no step in acceleration, that rises where the table rises and falls where it falls.</summary>
/// <remarks>
/// Slopes and bends start as those of the cubic spline through all rows, at rest at both ends. They are then shortened until the six control ordinates of each piece of the fifth degree
/// rise (or fall) in order, which is enough for the piece to do so too: the idea of R. L. Dougherty, A. Edelman, J. M. Hyman, Mathematics of Computation 52 (1989) 471-494; the
/// condition is derived here from the Bernstein form. Nothing is smoothed: a table rounded to half a thousandth of an inch has that roughness in its acceleration.
/// </remarks>
internal static class TableShape
{
    /// <param name="x">Strictly rising, rad, 3 rows or more.</param>
    /// <param name="y">m; zero in the first and last row.</param>
    public static LiftCurve Through(double[] x, double[] y)
    {
        var n = x.Length;
        var slope = SplineSlopes(x, y);
        var bend = new double[n];
        for (var i = 1; i + 1 < n; i++)
        {
            var h = x[i + 1] - x[i];
            bend[i] = (6 * (y[i + 1] - y[i]) / h - 4 * slope[i] - 2 * slope[i + 1]) / h;
        }

        for (var i = 1; i + 1 < n; i++)
        {
            double left = x[i] - x[i - 1], right = x[i + 1] - x[i], before = y[i] - y[i - 1], after = y[i + 1] - y[i];
            if (before == 0 || after == 0)
            {
                (slope[i], bend[i]) = (0, 0);
            }
            else if (before * after < 0)
            {
                (slope[i], bend[i]) = (0, before > 0 ? Math.Min(bend[i], 0) : Math.Max(bend[i], 0));
            }
            else
            {
                var sign = Math.Sign(before);
                var steep = Math.Max(0, sign * slope[i]);
                slope[i] = sign * steep;
                bend[i] = sign * Math.Clamp(sign * bend[i], -4 * steep / right, 4 * steep / left);
            }
        }

        // Both ends add to what must stay below the rise, so shortening one piece never harms its neighbour: one pass is enough.
        for (var i = 0; i + 1 < n; i++)
        {
            var h = x[i + 1] - x[i];
            var rise = Math.Abs(y[i + 1] - y[i]);
            var taken = Math.Abs(h * (8 * (slope[i] + slope[i + 1]) + h * (bend[i] - bend[i + 1]))) / 20;
            if (taken <= rise) continue;
            var share = rise / taken;
            (slope[i], bend[i], slope[i + 1], bend[i + 1]) = (share * slope[i], share * bend[i], share * slope[i + 1], share * bend[i + 1]);
        }

        return new(x, y, slope, bend);
    }

    /// <summary>Slopes of the cubic spline at rest at both ends (three-term elimination).</summary>
    private static double[] SplineSlopes(double[] x, double[] y)
    {
        var n = x.Length;
        double[] slope = new double[n], carry = new double[n];
        for (var i = 1; i + 1 < n; i++)
        {
            double left = x[i] - x[i - 1], right = x[i + 1] - x[i];
            var side = 3 * (right * (y[i] - y[i - 1]) / left + left * (y[i + 1] - y[i]) / right);
            var pivot = 2 * (left + right) - right * carry[i - 1];
            carry[i] = left / pivot;
            slope[i] = (side - right * slope[i - 1]) / pivot;
        }

        for (var i = n - 2; i > 0; i--) slope[i] -= carry[i] * slope[i + 1];
        return slope;
    }
}
