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
    /// <summary>Moments of a closed polygon, summed about its first point so that a far origin costs no figures.</summary>
    internal static AreaMoments Of(IReadOnlyList<PlanePoint> points) => AreaIntegrals.OfPolygon(points, points[0]).AboutCentroid(points[0]);

    /// <summary>The integrals of the figure about <paramref name="origin"/> (parallel axes).</summary>
    internal AreaIntegrals About(PlanePoint origin)
    {
        var c = Centroid - origin;
        return new(Area, Area * c.X, Area * c.Y, Iyy + Area * c.X * c.X, Ixx + Area * c.Y * c.Y, Ixy + Area * c.X * c.Y);
    }
}
