using Portwright.Geometry;

namespace Portwright.Judging.Ports;

/// <summary>The true outline at a station: a rectangle with round corners, from nearly square to a racetrack or a circle. Its middle is the origin, x towards the centre side, y towards the roof, m.</summary>
public sealed record RoundedSection(double Width, double Height, double Corner)
{
    public static RoundedSection Round(double diameter) => new(diameter, diameter, diameter / 2);

    public bool IsRound => Width == Height && Corner == Width / 2;

    public double Area => Width * Height - (4 - Math.PI) * Corner * Corner;

    /// <summary>How far a place lies off the nearest wall, m; below zero outside.</summary>
    public double Depth(double x, double y)
    {
        var (across, up) = (Math.Abs(x) - Width / 2 + Corner, Math.Abs(y) - Height / 2 + Corner);
        var outside = Math.Sqrt(Math.Max(across, 0) * Math.Max(across, 0) + Math.Max(up, 0) * Math.Max(up, 0));
        return Corner - outside - Math.Min(Math.Max(across, up), 0);
    }

    /// <summary>The greatest depth there is, m.</summary>
    public double Deepest => Math.Min(Width, Height) / 2;

    /// <summary>The place on the way from the wall at a clock hour to the middle whose depth (m) is that; the middle itself where the section is not so deep.</summary>
    public (double X, double Y) Place(double? bearing, double depth)
    {
        if (bearing is not { } hours) return (0, 0);
        var (x, y) = Bearing.Direction(hours);
        double near = 0, far = Width + Height;
        for (var i = 0; i < 40; i++)
        {
            var middle = (near + far) / 2;
            if (Depth(x * middle, y * middle) > depth) near = middle;
            else far = middle;
        }

        return (x * near, y * near);
    }

    /// <summary>The same outline with its area times a factor, shape kept.</summary>
    public RoundedSection Sized(double area)
    {
        var f = Math.Sqrt(area);
        return new(Width * f, Height * f, Corner * f);
    }
}
