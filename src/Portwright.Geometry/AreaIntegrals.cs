namespace Portwright.Geometry;

/// <summary>Integrals over a plane figure about an origin the caller keeps: of 1, x, y, x^2, y^2 and xy. Figures add and subtract.</summary>
internal readonly record struct AreaIntegrals(double One, double X, double Y, double XX, double YY, double XY)
{
    public static AreaIntegrals operator +(AreaIntegrals a, AreaIntegrals b) =>
        new(a.One + b.One, a.X + b.X, a.Y + b.Y, a.XX + b.XX, a.YY + b.YY, a.XY + b.XY);

    public static AreaIntegrals operator -(AreaIntegrals a, AreaIntegrals b) =>
        new(a.One - b.One, a.X - b.X, a.Y - b.Y, a.XX - b.XX, a.YY - b.YY, a.XY - b.XY);

    public AreaMoments AboutCentroid(PlanePoint origin)
    {
        var c = new PlanePoint(X / One, Y / One);
        return new(One, origin + c, YY - One * c.Y * c.Y, XX - One * c.X * c.X, XY - One * c.X * c.Y);
    }

    /// <summary>Green's theorem on straight edges (shoelace sums).</summary>
    public static AreaIntegrals OfPolygon(IReadOnlyList<PlanePoint> points, PlanePoint origin)
    {
        double twice = 0, mx = 0, my = 0, xx = 0, yy = 0, xy = 0;
        for (var i = 0; i < points.Count; i++)
        {
            var a = points[i] - origin;
            var b = points[i + 1 == points.Count ? 0 : i + 1] - origin;
            var cross = PlanePoint.Cross(a, b);
            twice += cross;
            mx += cross * (a.X + b.X);
            my += cross * (a.Y + b.Y);
            yy += cross * (a.Y * a.Y + a.Y * b.Y + b.Y * b.Y);
            xx += cross * (a.X * a.X + a.X * b.X + b.X * b.X);
            xy += cross * (a.X * b.Y + 2 * a.X * a.Y + 2 * b.X * b.Y + b.X * a.Y);
        }
        return new(twice / 2, mx / 6, my / 6, xx / 12, yy / 12, xy / 24);
    }

    /// <summary>
    /// The segment between an arc and its chord: sector less triangle. Clockwise arcs (sweep below zero) give a figure to be taken off.
    /// </summary>
    /// <param name="centre">Centre of the arc from the origin, m.</param>
    /// <param name="radius">m.</param>
    /// <param name="middle">Direction of the arc's middle, rad from X.</param>
    /// <param name="sweep">rad, counter-clockwise above zero.</param>
    public static AreaIntegrals OfSegment(PlanePoint centre, double radius, double middle, double sweep)
    {
        // u runs from the centre through the arc's middle, v square to it.
        var (sin, cos) = Math.SinCos(sweep / 2);
        var square = radius * radius;
        var area = square * (sweep / 2 - sin * cos);
        var u = 2.0 / 3 * square * radius * sin * sin * sin;
        var uu = square * square * ((sweep / 2 + sin * cos) / 4 - cos * cos * cos * sin / 2);
        var vv = square * square * ((sweep / 2 - sin * cos) / 4 - cos * sin * sin * sin / 6);
        var (s, c) = Math.SinCos(middle);
        return new(
            area,
            area * centre.X + u * c,
            area * centre.Y + u * s,
            area * centre.X * centre.X + 2 * centre.X * u * c + uu * c * c + vv * s * s,
            area * centre.Y * centre.Y + 2 * centre.Y * u * s + uu * s * s + vv * c * c,
            area * centre.X * centre.Y + centre.X * u * s + centre.Y * u * c + (uu - vv) * s * c);
    }
}
