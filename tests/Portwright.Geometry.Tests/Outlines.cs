using CsCheck;

namespace Portwright.Geometry.Tests;

/// <summary>Outlines for tests: simple random walls and plain shapes, SI metres.</summary>
internal static class Outlines
{
    /// <summary>A wall seen whole from one point: corners at growing angles, 8 to 40 mm out, 3 to 24 of them, anywhere within 0.1 m.</summary>
    public static readonly Gen<Outline> SeenWhole =
        from corners in Gen.Select(Gen.Double[0.2, 1], Gen.Double[0.008, 0.04]).Array[3, 24]
        from x in Gen.Double[-0.1, 0.1]
        from y in Gen.Double[-0.1, 0.1]
        select FromSteps(corners, x, y);

    public static Outline Rectangle(double width, double height) =>
        new([new(0, 0), new(width, 0), new(width, height), new(0, height)]);

    private static Outline FromSteps((double Step, double Radius)[] corners, double x, double y)
    {
        var turn = corners.Sum(c => c.Step);
        var angle = 0.0;
        var points = new List<PlanePoint>();
        foreach (var (step, radius) in corners)
        {
            points.Add(new(x + radius * Math.Cos(angle), y + radius * Math.Sin(angle)));
            angle += step / turn * 2 * Math.PI;
        }
        return new(points);
    }
}
