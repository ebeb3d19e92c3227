namespace Portwright.Engine.Cam;

/// <summary>Lift over crank angle in pieces of the fifth degree that share value, slope and bend where they meet: acceleration has no step.</summary>
internal sealed class LiftCurve
{
    private readonly double[] _x, _y, _terms, _areaUpTo;

    /// <param name="x">Strictly rising, rad.</param>
    /// <param name="y">m.</param>
    /// <param name="slope">m/rad.</param>
    /// <param name="bend">m/rad2.</param>
    public LiftCurve(double[] x, double[] y, double[] slope, double[] bend)
    {
        (this._x, this._y) = (x, y);
        _terms = new double[6 * (x.Length - 1)];
        _areaUpTo = new double[x.Length];
        for (var i = 0; i + 1 < x.Length; i++)
        {
            var h = x[i + 1] - x[i];
            Hermite(y[i + 1] - y[i], h * slope[i], h * slope[i + 1], h * h * bend[i], h * h * bend[i + 1], _terms.AsSpan(6 * i, 6));
            _terms[6 * i] = y[i];
            _areaUpTo[i + 1] = _areaUpTo[i] + AreaWithin(i, 1);
        }
    }

    public double From => _x[0];

    public double To => _x[^1];

    public ReadOnlySpan<double> X => _x;

    public ReadOnlySpan<double> Y => _y;

    /// <summary>Coefficients of t to t^5 for a piece of unit length that rises by <paramref name="rise"/>; the first place is left alone.</summary>
    public static void Hermite(double rise, double slope0, double slope1, double bend0, double bend1, Span<double> c)
    {
        c[1] = slope0;
        c[2] = bend0 / 2;
        c[3] = 10 * rise - 6 * slope0 - 4 * slope1 - 1.5 * bend0 + 0.5 * bend1;
        c[4] = -15 * rise + 8 * slope0 + 7 * slope1 + 1.5 * bend0 - bend1;
        c[5] = 6 * rise - 3 * (slope0 + slope1) + 0.5 * (bend1 - bend0);
    }

    public double Value(double at)
    {
        var c = Piece(at, out var t, out _);
        return c[0] + t * (c[1] + t * (c[2] + t * (c[3] + t * (c[4] + t * c[5]))));
    }

    public double Slope(double at)
    {
        var c = Piece(at, out var t, out var h);
        return (c[1] + t * (2 * c[2] + t * (3 * c[3] + t * (4 * c[4] + t * 5 * c[5])))) / h;
    }

    public double Bend(double at)
    {
        var c = Piece(at, out var t, out var h);
        return (2 * c[2] + t * (6 * c[3] + t * (12 * c[4] + t * 20 * c[5]))) / (h * h);
    }

    /// <summary>Area under the curve, exact, m rad.</summary>
    public double Area(double from, double to) => AreaFromStart(to) - AreaFromStart(from);

    /// <summary>First or last place where the curve passes a value; each piece must rise or fall throughout.</summary>
    public double Passes(double value, bool last)
    {
        for (var k = 0; k + 1 < _x.Length; k++)
        {
            var i = last ? _x.Length - 2 - k : k;
            double low = _x[i], high = _x[i + 1];
            var rising = _y[i + 1] > _y[i];
            if (last ? !(_y[i] > value && _y[i + 1] <= value) : !(_y[i] <= value && _y[i + 1] > value)) continue;
            // Halved here, not by Root: a ramp is flat where it starts, so a value near enough is no place near enough.
            // On a ramp that starts or ends at rest, rounding would stop the halving short of its end.
            if ((last ? _y[i + 1] : _y[i]) == value) return last ? high : low;
            for (var n = 0; n < 100 && high - low > 1e-15; n++)
            {
                var middle = low + (high - low) / 2;
                if (middle <= low || middle >= high) break;
                if (Value(middle) > value == rising) high = middle;
                else low = middle;
            }

            // The end at which the curve is still at or under the value.
            return rising ? low : high;
        }

        return double.NaN;
    }

    private double AreaFromStart(double at)
    {
        Piece(at, out var t, out _, out var i);
        return _areaUpTo[i] + AreaWithin(i, t);
    }

    private double AreaWithin(int i, double t)
    {
        var c = _terms.AsSpan(6 * i, 6);
        return (_x[i + 1] - _x[i]) * t * (c[0] + t * (c[1] / 2 + t * (c[2] / 3 + t * (c[3] / 4 + t * (c[4] / 5 + t * c[5] / 6)))));
    }

    private ReadOnlySpan<double> Piece(double at, out double t, out double length)
    {
        Piece(at, out t, out length, out var i);
        return _terms.AsSpan(6 * i, 6);
    }

    private void Piece(double at, out double t, out double length, out int i)
    {
        i = Array.BinarySearch(_x, at);
        i = Math.Clamp(i < 0 ? ~i - 1 : i, 0, _x.Length - 2);
        length = _x[i + 1] - _x[i];
        t = Math.Clamp((at - _x[i]) / length, 0, 1);
    }
}
