namespace Portwright.Geometry;

/// <summary>A point of a section's plane, m: X towards the centre side, Y towards the roof.</summary>
/// <param name="X">m.</param>
/// <param name="Y">m.</param>
public readonly record struct PlanePoint(double X, double Y)
{
    /// <summary>Distance to another point, m.</summary>
    public double To(PlanePoint other) => Math.Sqrt((X - other.X) * (X - other.X) + (Y - other.Y) * (Y - other.Y));

    public static PlanePoint operator +(PlanePoint a, PlanePoint b) => new(a.X + b.X, a.Y + b.Y);

    public static PlanePoint operator -(PlanePoint a, PlanePoint b) => new(a.X - b.X, a.Y - b.Y);

    /// <param name="factor">No unit.</param>
    public static PlanePoint operator *(PlanePoint a, double factor) => new(a.X * factor, a.Y * factor);

    /// <summary>Twice the area of the triangle (origin, a, b), m2; above zero when b lies counter-clockwise of a.</summary>
    internal static double Cross(PlanePoint a, PlanePoint b) => a.X * b.Y - a.Y * b.X;

    internal static double Dot(PlanePoint a, PlanePoint b) => a.X * b.X + a.Y * b.Y;
}
