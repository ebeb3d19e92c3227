namespace Portwright.Physics.Crank;

/// <summary>Crank, rod and piston: where the piston is and how fast it moves a radian of crank.</summary>
/// <remarks>
/// J. B. Heywood, Internal Combustion Engine Fundamentals (1988), equations 2.5 and 2.11, extended by the pin offset: the piston pin runs on a line beside
/// the crank's centre. Angles are counted from the piston's own top dead centre, as a degree wheel with a piston stop finds it; with an offset that is not
/// where the crank pin is topmost.
/// </remarks>
public sealed record SliderCrank
{
    private readonly double _throwRadius, _rodSquared, _topAngle, _topHeight;

    /// <param name="stroke">Twice the crank's throw, m, above zero. With a pin offset the piston travels a little more: <see cref="Travel"/>.</param>
    /// <param name="rod">Centre to centre, m, longer than half the stroke and the offset together.</param>
    /// <param name="pinOffset">
    /// Of the pin's line from the crank's centre, m, positive towards the side on which the crank pin goes down, which straightens the rod on the power stroke.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public SliderCrank(double stroke, double rod, double pinOffset = 0)
    {
        Stroke = Require.Positive(stroke, nameof(stroke), "m");
        Rod = Require.Positive(rod, nameof(rod), "m");
        _throwRadius = stroke / 2;
        if (!double.IsFinite(pinOffset)) Require.Refuse(pinOffset, nameof(pinOffset), "a finite number, in m");
        if (!(rod > _throwRadius + Math.Abs(pinOffset))) Require.Refuse(rod, nameof(rod), "longer than half the stroke and the pin offset together, in m");
        PinOffset = pinOffset;
        _rodSquared = rod * rod;
        _topAngle = Math.Asin(pinOffset / (rod + _throwRadius));
        _topHeight = Math.Sqrt((rod + _throwRadius - pinOffset) * (rod + _throwRadius + pinOffset));
        var bottomHeight = Math.Sqrt((rod - _throwRadius - pinOffset) * (rod - _throwRadius + pinOffset));
        Travel = _topHeight - bottomHeight;
        // The rod lies over the crank at the bottom: sin = -offset/(rod - throw), past half a turn.
        BottomAngle = Math.PI + Math.Asin(pinOffset / (rod - _throwRadius)) - _topAngle;
    }

    /// <summary>Twice the throw, m.</summary>
    public double Stroke { get; }

    /// <summary>m.</summary>
    public double Rod { get; }

    /// <summary>m.</summary>
    public double PinOffset { get; }

    /// <summary>From the piston's top to its bottom dead centre, m; the stroke itself without an offset.</summary>
    public double Travel { get; }

    /// <summary>Crank angle from the piston's top to its bottom dead centre, rad; pi without an offset.</summary>
    public double BottomAngle { get; }

    /// <summary>Distance of the piston from its top dead centre, m.</summary>
    /// <param name="crank">rad after the piston's top dead centre.</param>
    public double FromTop(double crank)
    {
        var (sin, cos) = Math.SinCos(crank + _topAngle);
        var beside = _throwRadius * sin - PinOffset;
        return _topHeight - _throwRadius * cos - Math.Sqrt(_rodSquared - beside * beside);
    }

    /// <summary>Piston speed over crank speed, m/rad, positive downwards: the slope of <see cref="FromTop"/>. Times rad/s it is the piston's speed.</summary>
    /// <param name="crank">rad after the piston's top dead centre.</param>
    public double Slope(double crank)
    {
        var (sin, cos) = Math.SinCos(crank + _topAngle);
        var beside = _throwRadius * sin - PinOffset;
        return _throwRadius * (sin + cos * beside / Math.Sqrt(_rodSquared - beside * beside));
    }

    /// <summary>Piston speed over its mean 2 stroke n, no unit (Heywood's equation 2.11 where the offset is zero).</summary>
    /// <param name="crank">rad after the piston's top dead centre.</param>
    public double SpeedOverMean(double crank) => Math.PI * Slope(crank) / Stroke;

    /// <summary>Crank angle after top dead centre at which the piston goes down fastest, rad, to <see cref="Root.Tolerance"/>.</summary>
    /// <remarks>The slope rises from the top and falls to the bottom: its own slope changes sign once.</remarks>
    public double FastestAngle => Root.Between(crank => Bend(crank) / _throwRadius, 0, BottomAngle);

    /// <summary>Slope of <see cref="Slope"/>, m/rad2.</summary>
    private double Bend(double crank)
    {
        var (sin, cos) = Math.SinCos(crank + _topAngle);
        double beside = _throwRadius * sin - PinOffset, along = Math.Sqrt(_rodSquared - beside * beside);
        return _throwRadius * (cos - sin * beside / along + _throwRadius * cos * cos * _rodSquared / (along * along * along));
    }
}
