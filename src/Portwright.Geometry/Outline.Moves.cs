namespace Portwright.Geometry;

public sealed partial class Outline
{
    /// <summary>The outline moved, m.</summary>
    /// <param name="x">m.</param>
    /// <param name="y">m.</param>
    public Outline Moved(double x, double y) => Mapped(p => new(p.X + x, p.Y + y));

    /// <summary>The outline turned about the origin, rad, counter-clockwise.</summary>
    /// <param name="angle">rad, against the clock.</param>
    public Outline Turned(double angle)
    {
        var (sin, cos) = Math.SinCos(angle);
        return Mapped(p => new(p.X * cos - p.Y * sin, p.X * sin + p.Y * cos));
    }

    /// <summary>The outline stretched about the origin; both factors above zero.</summary>
    /// <param name="x">No unit, above zero.</param>
    /// <param name="y">No unit, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A factor is not above zero.</exception>
    public Outline Scaled(double x, double y)
    {
        Require.Positive(x, nameof(x), "(no unit)");
        Require.Positive(y, nameof(y), "(no unit)");
        return Mapped(p => new(p.X * x, p.Y * y));
    }

    /// <summary>The outline of the port on the other side of a mirror: X changes sign.</summary>
    public Outline Mirrored() => new(_points.Reverse().Select(p => new PlanePoint(-p.X, p.Y)).ToArray());

    private Outline Mapped(Func<PlanePoint, PlanePoint> map) => new(_points.Select(map).ToArray());
}
