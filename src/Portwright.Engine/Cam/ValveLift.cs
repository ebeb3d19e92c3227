namespace Portwright.Engine.Cam;

/// <summary>Lift of a valve over the whole cycle.</summary>
/// <remarks>
/// Crank angles in rad; 0 is top dead centre of gas exchange, 2 pi that of firing, and the curve repeats after 4 pi. Lift is lobe lift x rocker ratio - lash, never below zero; flex
/// and float of the valve train are left out. The lobe's acceleration has no step anywhere; with lash the valve is picked up at the speed of the ramp.
/// </remarks>
public sealed class ValveLift
{
    private const double Cycle = 4 * Math.PI;

    private readonly LiftCurve _curve;
    private readonly double _origin, _lash, _first, _last;

    private ValveLift(LiftCurve curve, double origin, double lash)
    {
        (this._curve, this._origin, this._lash) = (curve, origin, lash);
        (_first, _last) = (curve.Passes(lash, false), curve.Passes(lash, true));
        var top = 0;
        for (var i = 1; i < curve.Y.Length; i++)
            if (curve.Y[i] > curve.Y[top]) top = i;
        (Highest, HighestAt) = (curve.Y[top] - lash, origin + curve.X[top]);
    }

    /// <summary>Crank angle at which the valve leaves its seat, rad; below zero where it opens before top dead centre of gas exchange.</summary>
    public double Opens => _origin + _first;

    /// <summary>Crank angle at which it is back, rad, above <see cref="Opens"/>.</summary>
    public double Closes => _origin + _last;

    /// <summary>m.</summary>
    public double Highest { get; }

    /// <summary>Crank angle of the highest lift, rad, between <see cref="Opens"/> and <see cref="Closes"/>.</summary>
    public double HighestAt { get; }

    /// <summary>Lift summed over crank angle, m rad, exact for the curve.</summary>
    public double Area => _curve.Area(_first, _last) - _lash * (_last - _first);

    /// <summary>The lift of an intake valve: its nose stands <see cref="CamCard.LobeCentre"/> after top dead centre.</summary>
    /// <param name="problem">What is wrong with the card, with the cure; null where a curve is returned.</param>
    public static ValveLift? OfIntake(CamCard card, out string? problem) => FromCard(card, 1, out problem);

    /// <summary>The lift of an exhaust valve: its nose stands <see cref="CamCard.LobeCentre"/> before top dead centre.</summary>
    /// <inheritdoc cref="OfIntake"/>
    public static ValveLift? OfExhaust(CamCard card, out string? problem) => FromCard(card, -1, out problem);

    /// <summary>From a table of lift by crank angle.</summary>
    /// <param name="crank">rad, strictly rising, less than a cycle from first to last.</param>
    /// <param name="lift">m, as many; zero in the first and last row.</param>
    /// <param name="problem">What is wrong with the table, with the cure; null where a curve is returned.</param>
    /// <param name="rockerRatio">1 where the table was read at the valve, no unit.</param>
    /// <param name="lash">m; 0 where the table was read at the valve with its lash in.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static ValveLift? FromTable(ReadOnlySpan<double> crank, ReadOnlySpan<double> lift, out string? problem, double rockerRatio = 1, double lash = 0)
    {
        Require.Positive(rockerRatio, nameof(rockerRatio), "(no unit)");
        Require.NotNegative(lash, nameof(lash), "m");
        problem = TableProblem.Of(crank, lift, lash / rockerRatio);
        if (problem is not null) return null;
        double[] x = crank.ToArray(), y = lift.ToArray();
        for (var i = 0; i < x.Length; i++) (x[i], y[i]) = (x[i] - crank[0], y[i] * rockerRatio);
        return new(TableShape.Through(x, y), crank[0], lash);
    }

    /// <summary>Lift at a crank angle, m, zero or above.</summary>
    /// <param name="crank">Crank angle after top dead centre of gas exchange, rad.</param>
    public double At(double crank)
    {
        var at = Within(crank);
        return at < _first || at > _last ? 0 : Math.Max(0, _curve.Value(at) - _lash);
    }

    /// <summary>Slope of the lift, m/rad; zero on the seat. Times rad/s it is the valve's speed.</summary>
    /// <param name="crank">Crank angle after top dead centre of gas exchange, rad.</param>
    public double Speed(double crank)
    {
        var at = Within(crank);
        return at < _first || at > _last ? 0 : _curve.Slope(at);
    }

    /// <summary>Bend of the lift, m/rad2; zero on the seat. Times (rad/s)2 it is the valve's acceleration.</summary>
    /// <param name="crank">Crank angle after top dead centre of gas exchange, rad.</param>
    public double Acceleration(double crank)
    {
        var at = Within(crank);
        return at < _first || at > _last ? 0 : _curve.Bend(at);
    }

    /// <summary>Crank angle during which the valve stands above a lift, rad; from the first passing to the last.</summary>
    /// <param name="lift">m, zero or above; zero where the valve never gets there.</param>
    /// <exception cref="ArgumentOutOfRangeException">The lift is below zero.</exception>
    public double Duration(double lift)
    {
        Require.NotNegative(lift, nameof(lift), "m");
        return lift >= Highest ? 0 : _curve.Passes(lift + _lash, true) - _curve.Passes(lift + _lash, false);
    }

    private static ValveLift? FromCard(CamCard card, int side, out string? problem)
    {
        ArgumentNullException.ThrowIfNull(card);
        problem = card.Problem();
        if (problem is not null) return null;
        var ratio = card.RockerRatio;
        (double, double)[] points = [.. card.Durations().Select(d => (d.LobeLift * ratio, d.Duration / 2))];
        var lobe = LobeShape.Through(card.LobeLift * ratio, points);
        if (lobe is null) problem = card.NoLobe();
        return lobe is null ? null : new(lobe, side * card.LobeCentre, card.Lash);
    }

    /// <summary>The angle on the curve's own scale, brought into the cycle that starts with the curve.</summary>
    private double Within(double crank)
    {
        var at = (crank - _origin - _curve.From) / Cycle;
        return (at - Math.Floor(at)) * Cycle + _curve.From;
    }
}
