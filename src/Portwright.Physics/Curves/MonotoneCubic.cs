namespace Portwright.Physics.Curves;

/// <summary>A value of a curve.</summary>
/// <param name="Value">In the unit of the tested values.</param>
/// <param name="IsExtrapolated">It lies outside the tested range.</param>
public readonly record struct CurveValue(double Value, bool IsExtrapolated);

/// <summary>
/// Piecewise cubic through all points that rises where the points rise, falls where they fall and never passes the two
/// neighbours of an interval: F. N. Fritsch, R. E. Carlson, SIAM Journal on Numerical Analysis 17 (1980) 238-246.
/// </summary>
/// <remarks>
/// Slopes start as those of the parabola through three neighbours, are 0 at a turning point, and are shortened into the
/// circle of radius 3 of the paper (section 4, step 2B with the region S2), which keeps every piece monotone.
/// </remarks>
public sealed class MonotoneCubic
{
    private readonly double[] _x;
    private readonly double[] _y;
    private readonly double[] _slope;
    private readonly double[] _areaUpTo;

    /// <param name="x">Strictly rising, at least 2 points, in any unit.</param>
    /// <param name="y">As many values, in any unit.</param>
    /// <exception cref="ArgumentException">Lengths differ, too few points, x not rising, or a number is not finite.</exception>
    public MonotoneCubic(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        if (x.Length != y.Length) throw new ArgumentException($"{x.Length} values of x need as many of y.", nameof(y));
        if (x.Length < 2) throw new ArgumentException("A curve needs at least 2 points.", nameof(x));
        for (var i = 0; i < x.Length; i++)
        {
            if (!double.IsFinite(x[i]) || i > 0 && x[i] <= x[i - 1])
                throw new ArgumentException($"x must rise and be finite; point {i + 1} is {x[i]}.", nameof(x));
            if (!double.IsFinite(y[i])) throw new ArgumentException($"y must be finite; point {i + 1} is {y[i]}.", nameof(y));
        }
        (this._x, this._y) = (x.ToArray(), y.ToArray());
        _slope = Slopes(x, y);
        _areaUpTo = new double[x.Length];
        for (var i = 0; i + 1 < x.Length; i++) _areaUpTo[i + 1] = _areaUpTo[i] + AreaWithin(i, x[i + 1] - x[i]);
    }

    /// <summary>First x tested, in any unit.</summary>
    public double From => _x[0];

    /// <summary>Last x tested, in any unit.</summary>
    public double To => _x[^1];

    /// <summary>Tested x, in the unit they were given in.</summary>
    public ReadOnlySpan<double> X => _x;

    /// <summary>Tested y, in the unit they were given in.</summary>
    public ReadOnlySpan<double> Y => _y;

    /// <summary>Whether x lies in the tested range, ends included.</summary>
    /// <param name="x">In the unit of the tested x.</param>
    public bool Covers(double x) => x >= From && x <= To;

    /// <summary>The value at x.</summary>
    /// <param name="x">In the unit of the tested x.</param>
    /// <exception cref="ArgumentOutOfRangeException">x is outside the tested range and extrapolation is refused.</exception>
    public CurveValue At(double x, Extrapolation outside = Extrapolation.Refused)
    {
        if (Covers(x))
        {
            var i = Piece(x);
            return new(ValueWithin(i, x - this._x[i]), false);
        }
        if (outside == Extrapolation.Refused || !double.IsFinite(x)) throw Outside(nameof(x), x);
        var end = x < From ? 0 : _y.Length - 1;
        return new(_y[end] + _slope[end] * (x - this._x[end]), true);
    }

    /// <summary>The slope dy/dx at x, in units of y per unit of x.</summary>
    /// <param name="x">In the unit of the tested x.</param>
    /// <exception cref="ArgumentOutOfRangeException">x is outside the tested range.</exception>
    public double Derivative(double x)
    {
        if (!Covers(x)) throw Outside(nameof(x), x);
        var i = Piece(x);
        var h = this._x[i + 1] - this._x[i];
        var t = (x - this._x[i]) / h;
        var chord = (_y[i + 1] - _y[i]) / h;
        return 6 * t * (1 - t) * chord + (1 - t) * (1 - 3 * t) * _slope[i] + t * (3 * t - 2) * _slope[i + 1];
    }

    /// <summary>Area under the curve, exact for the cubic pieces. Negative where b is below a. In units of x times y.</summary>
    /// <param name="a">In the unit of the tested x.</param>
    /// <param name="b">In the unit of the tested x.</param>
    /// <exception cref="ArgumentOutOfRangeException">a or b is outside the tested range.</exception>
    public double Area(double a, double b)
    {
        if (!Covers(a)) throw Outside(nameof(a), a);
        if (!Covers(b)) throw Outside(nameof(b), b);
        return AreaFromStart(b) - AreaFromStart(a);
    }

    private double AreaFromStart(double to)
    {
        var i = Piece(to);
        return _areaUpTo[i] + AreaWithin(i, to - _x[i]);
    }

    private int Piece(double at)
    {
        var i = Array.BinarySearch(_x, at);
        return Math.Min(i < 0 ? ~i - 1 : i, _x.Length - 2);
    }

    private double ValueWithin(int i, double s)
    {
        var h = _x[i + 1] - _x[i];
        var t = s / h;
        var u = 1 - t;
        // Hermite form as distance from the left or right point, whichever is nearer: the points are met exactly.
        var rise = _y[i + 1] - _y[i];
        var bend = h * t * u * (u * _slope[i] - t * _slope[i + 1]);
        var value = t <= 0.5 ? _y[i] + (t * t * (3 - 2 * t) * rise + bend) : _y[i + 1] - (u * u * (3 - 2 * u) * rise - bend);
        // Rounding alone can pass a neighbour by a last digit.
        return Math.Clamp(value, Math.Min(_y[i], _y[i + 1]), Math.Max(_y[i], _y[i + 1]));
    }

    private double AreaWithin(int i, double s)
    {
        var h = _x[i + 1] - _x[i];
        var t = s / h;
        var (t2, t3, t4) = (t * t, t * t * t, t * t * t * t);
        return h * (_y[i] * t + (_y[i + 1] - _y[i]) * (t3 - t4 / 2)
            + h * _slope[i] * (t2 / 2 - 2 * t3 / 3 + t4 / 4) + h * _slope[i + 1] * (t4 / 4 - t3 / 3));
    }

    private static double[] Slopes(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        var n = x.Length;
        Span<double> chord = n <= 128 ? stackalloc double[n - 1] : new double[n - 1];
        for (var i = 0; i + 1 < n; i++) chord[i] = (y[i + 1] - y[i]) / (x[i + 1] - x[i]);
        var slope = new double[n];
        if (n == 2)
        {
            slope[0] = slope[1] = chord[0];
            return slope;
        }
        for (var i = 1; i + 1 < n; i++)
        {
            var (left, right) = (x[i] - x[i - 1], x[i + 1] - x[i]);
            slope[i] = chord[i - 1] * chord[i] <= 0 ? 0 : (right * chord[i - 1] + left * chord[i]) / (left + right);
        }
        slope[0] = EndSlope(x[1] - x[0], x[2] - x[1], chord[0], chord[1]);
        slope[^1] = EndSlope(x[^1] - x[^2], x[^2] - x[^3], chord[^1], chord[^2]);
        for (var i = 0; i + 1 < n; i++)
        {
            if (chord[i] == 0)
            {
                slope[i] = slope[i + 1] = 0;
                continue;
            }
            var (alpha, beta) = (slope[i] / chord[i], slope[i + 1] / chord[i]);
            var length = Math.Sqrt(alpha * alpha + beta * beta);
            if (length <= 3) continue;
            slope[i] = 3 / length * alpha * chord[i];
            slope[i + 1] = 3 / length * beta * chord[i];
        }
        return slope;
    }

    /// <summary>Slope at the end of the parabola through the last three points; 0 where it would turn against the end chord.</summary>
    private static double EndSlope(double near, double far, double nearChord, double farChord)
    {
        var slope = ((2 * near + far) * nearChord - near * farChord) / (near + far);
        return slope * nearChord <= 0 ? 0 : slope;
    }

    private ArgumentOutOfRangeException Outside(string name, double value) =>
        new(name, value, $"The curve was tested from {From} to {To}.");
}
