namespace Portwright.Geometry.Paths;

/// <summary>A straight or round piece of a wall line, m. Straight when <see cref="Sweep"/> is zero.</summary>
internal readonly record struct WallPiece(PlanePoint From, PlanePoint To, PlanePoint Centre, double Radius, double Start, double Sweep)
{
    public static WallPiece Straight(PlanePoint from, PlanePoint to) => new(from, to, default, 0, 0, 0);

    /// <param name="start">Direction of the first point seen from the centre, rad from X.</param>
    /// <param name="sweep">rad, counter-clockwise above zero.</param>
    public static WallPiece Arc(PlanePoint centre, double radius, double start, double sweep) =>
        new(On(centre, radius, start), On(centre, radius, start + sweep), centre, radius, start, sweep);

    public double Length => Sweep == 0 ? From.To(To) : Radius * Math.Abs(Sweep);

    internal static PlanePoint On(PlanePoint centre, double radius, double angle)
    {
        var (sin, cos) = Math.SinCos(angle);
        return new(centre.X + radius * cos, centre.Y + radius * sin);
    }
}
