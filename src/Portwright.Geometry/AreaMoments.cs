namespace Portwright.Geometry;

/// <summary>
/// Area, centroid and second moments of a plane figure.
/// </summary>
/// <param name="Area">m2; above zero for an outline that runs counter-clockwise.</param>
/// <param name="Centroid">m.</param>
/// <param name="Ixx">Integral of (y - yc)^2, m4.</param>
/// <param name="Iyy">Integral of (x - xc)^2, m4.</param>
/// <param name="Ixy">Integral of (x - xc)(y - yc), m4.</param>
public readonly record struct AreaMoments(double Area, PlanePoint Centroid, double Ixx, double Iyy, double Ixy)
{
    /// <summary>Moments of a closed polygon by Green's theorem (shoelace sums), taken about its first point so that a far origin costs no figures.</summary>
    internal static AreaMoments Of(IReadOnlyList<PlanePoint> points)
    {
        var origin = points[0];
        double twice = 0, mx = 0, my = 0, xx = 0, yy = 0, xy = 0;
        for (var i = 0; i < points.Count; i++)
        {
            var a = points[i] - origin;
            var b = points[(i + 1) % points.Count] - origin;
            var cross = PlanePoint.Cross(a, b);
            twice += cross;
            mx += cross * (a.X + b.X);
            my += cross * (a.Y + b.Y);
            yy += cross * (a.Y * a.Y + a.Y * b.Y + b.Y * b.Y);
            xx += cross * (a.X * a.X + a.X * b.X + b.X * b.X);
            xy += cross * (a.X * b.Y + 2 * a.X * a.Y + 2 * b.X * b.Y + b.X * a.Y);
        }
        return AboutCentroid(origin, twice / 2, mx / 6, my / 6, xx / 12, yy / 12, xy / 24);
    }

    /// <summary>From integrals about <paramref name="origin"/>: 1, x, y, x^2, y^2, xy over the figure.</summary>
    internal static AreaMoments AboutCentroid(PlanePoint origin, double area, double mx, double my, double xx, double yy, double xy)
    {
        var c = new PlanePoint(mx / area, my / area);
        return new(area, origin + c, yy - area * c.Y * c.Y, xx - area * c.X * c.X, xy - area * c.X * c.Y);
    }
}
