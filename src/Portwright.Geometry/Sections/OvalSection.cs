using Portwright.Geometry.Working;

namespace Portwright.Geometry.Sections;

/// <summary>An ellipse by its width and height, m; a round throat or stem where both are alike.</summary>
/// <param name="Width">m, above zero.</param>
/// <param name="Height">m, above zero.</param>
public sealed record OvalSection(double Width, double Height) : SectionMeasure
{
    public override string Kind => "oval";

    /// <summary>A round section of a diameter, m.</summary>
    /// <param name="diameter">m, above zero.</param>
    public static OvalSection Round(double diameter) => new(diameter, diameter);

    private protected override IReadOnlyList<SectionReading> ShapeReadings =>
        [SectionReading.Caliper("width", Width), SectionReading.Caliper("height", Height)];

    private protected override SectionMeasure WithShapeReadings(ReadOnlySpan<double> readings) => this with { Width = readings[0], Height = readings[1] };

    private protected override SectionProblem? ShapeProblem() => SectionProblem.NotPositive("width", Width) ?? SectionProblem.NotPositive("height", Height);

    internal override PlaneFigure Figure()
    {
        double a = Width / 2, b = Height / 2, area = Math.PI * a * b;
        var moments = new AreaMoments(area, new(0, b), area * b * b / 4, area * a * a / 4, 0);
        return new(moments, EllipsePerimeter(a, b), Chords);
    }

    internal override IEnumerable<WorkingLine> ShapeWorking() =>
        [new("oval", "π/4 × {0} × {1}", [Quantity.Length(Width), Quantity.Length(Height)], Quantity.Area(Math.PI / 4 * Width * Height))];

    /// <summary>4 a E(k) by the arithmetic-geometric mean (NIST Digital Library of Mathematical Functions, 19.8.6), m.</summary>
    /// <param name="a">Half axis, m, above zero.</param>
    /// <param name="b">Other half axis, m, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double EllipsePerimeter(double a, double b)
    {
        Require.Positive(a, nameof(a), "m");
        Require.Positive(b, nameof(b), "m");
        if (a < b) (a, b) = (b, a);
        double mean = a, root = b, weight = 0.5, taken = weight * (a * a - b * b);
        // The difference squares itself each round: eight rounds reach full precision even for a needle.
        for (var round = 0; round < 12 && mean != root; round++)
        {
            var half = (mean - root) / 2;
            (mean, root) = ((mean + root) / 2, Math.Sqrt(mean * root));
            weight *= 2;
            taken += weight * half * half;
        }
        return 2 * Math.PI * (a * a - taken) / mean;
    }

    /// <summary>A regular polygon of the unit circle's area, stretched: area is kept exactly.</summary>
    private Outline Chords(double widest)
    {
        var n = (int)Math.Ceiling(2 * Math.PI / widest - 1e-9);
        var d = 2 * Math.PI / n;
        var q = Math.Sqrt(d / Math.Sin(d));
        return new(Enumerable.Range(0, n).Select(i => new PlanePoint(Width / 2 * q * Math.Cos(i * d), Height / 2 * (1 + q * Math.Sin(i * d)))));
    }
}
