namespace Portwright.Geometry.LongView;

/// <summary>
/// The middle line of a port in the long view: straight in from the flange, then a circular arc down to the seat. X runs in from the flange, Y towards the roof, m; the origin is at the flange.
/// </summary>
public sealed record Centreline
{
    /// <param name="straight">Length of the straight from the flange, m, zero or above.</param>
    /// <param name="bendRadius">Radius of the arc, m, above zero.</param>
    /// <param name="turn">How far the port turns towards the chamber, rad, zero to pi.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range, or a line without length.</exception>
    public Centreline(double straight, double bendRadius, double turn)
    {
        Straight = Require.NotNegative(straight, nameof(straight), "m");
        BendRadius = Require.Positive(bendRadius, nameof(bendRadius), "m");
        Turn = Require.Between(turn, 0, Math.PI, nameof(turn), "rad");
        Require.Positive(Length, nameof(straight), "m together with the arc");
    }

    /// <summary>A line of known length that turns by an angle, its arc of a radius, the rest straight.</summary>
    /// <param name="length">m, above zero.</param>
    /// <param name="bendRadius">m, above zero.</param>
    /// <param name="turn">rad.</param>
    /// <exception cref="ArgumentOutOfRangeException">The arc alone is longer than the length.</exception>
    public static Centreline OfLength(double length, double bendRadius, double turn) => new(length - bendRadius * turn, bendRadius, turn);

    /// <summary>m.</summary>
    public double Straight { get; }

    /// <summary>m.</summary>
    public double BendRadius { get; }

    /// <summary>rad.</summary>
    public double Turn { get; }

    /// <summary>Flange to seat, m.</summary>
    public double Length => Straight + BendRadius * Turn;

    /// <summary>Bend of the line at a distance, 1/m: zero along the straight.</summary>
    /// <param name="distance">From the flange along the centreline, m, 0 to the port's length.</param>
    /// <exception cref="ArgumentOutOfRangeException">The distance lies outside the port.</exception>
    public double CurvatureAt(double distance) => Within(distance) > Straight ? 1 / BendRadius : 0;

    /// <summary>Heading at a distance, rad from X; below zero once it turns down.</summary>
    /// <param name="distance">From the flange along the centreline, m, 0 to the port's length.</param>
    /// <exception cref="ArgumentOutOfRangeException">The distance lies outside the port.</exception>
    public double HeadingAt(double distance) => -Math.Max(0, Within(distance) - Straight) / BendRadius;

    /// <summary>Unit vector along the port, away from the flange.</summary>
    /// <param name="distance">From the flange along the centreline, m, 0 to the port's length.</param>
    public PlanePoint DirectionAt(double distance)
    {
        var (sin, cos) = Math.SinCos(HeadingAt(distance));
        return new(cos, sin);
    }

    /// <summary>Unit vector from the line towards the roof.</summary>
    /// <param name="distance">From the flange along the centreline, m, 0 to the port's length.</param>
    public PlanePoint TowardsRoofAt(double distance)
    {
        var (x, y) = DirectionAt(distance);
        return new(-y, x);
    }

    /// <summary>The point at a distance from the flange.</summary>
    /// <param name="distance">m, zero to <see cref="Length"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The distance lies outside the port.</exception>
    public PlanePoint PointAt(double distance)
    {
        Within(distance);
        if (distance <= Straight) return new(distance, 0);
        var (sin, cos) = Math.SinCos((distance - Straight) / BendRadius);
        return new(Straight + BendRadius * sin, BendRadius * (cos - 1));
    }

    /// <summary>The point a height off the line, square to it; above zero towards the roof.</summary>
    /// <param name="distance">From the flange along the centreline, m, 0 to the port's length.</param>
    /// <param name="height">m, towards the roof.</param>
    public PlanePoint PointAt(double distance, double height) => PointAt(distance) + TowardsRoofAt(distance) * height;

    private double Within(double distance) => Require.Along(distance, 0, Length, nameof(distance));
}
