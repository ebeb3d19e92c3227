namespace Portwright.Geometry;

/// <summary>The upright rectangle around an outline, m.</summary>
/// <param name="Left">m.</param>
/// <param name="Bottom">m.</param>
/// <param name="Right">m.</param>
/// <param name="Top">m.</param>
public readonly record struct Bounds(double Left, double Bottom, double Right, double Top)
{
    /// <summary>m.</summary>
    public double Width => Right - Left;

    /// <summary>m.</summary>
    public double Height => Top - Bottom;

    internal static Bounds Around(IReadOnlyList<PlanePoint> points)
    {
        double left = double.PositiveInfinity, bottom = left, right = double.NegativeInfinity, top = right;
        foreach (var p in points)
        {
            left = Math.Min(left, p.X);
            right = Math.Max(right, p.X);
            bottom = Math.Min(bottom, p.Y);
            top = Math.Max(top, p.Y);
        }
        return new(left, bottom, right, top);
    }
}
