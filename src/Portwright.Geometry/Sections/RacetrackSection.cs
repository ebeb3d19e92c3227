using Portwright.Geometry.Paths;
using Portwright.Geometry.Working;

namespace Portwright.Geometry.Sections;

/// <summary>Two half circles joined by straight walls, m; the shorter of width and height is the circles' diameter.</summary>
/// <param name="Width">m, above zero.</param>
/// <param name="Height">m, above zero.</param>
public sealed record RacetrackSection(double Width, double Height) : SectionMeasure
{
    public override string Kind => "racetrack";

    private protected override IReadOnlyList<SectionReading> ShapeReadings =>
        [SectionReading.Caliper("width", Width), SectionReading.Caliper("height", Height)];

    private protected override SectionMeasure WithShapeReadings(ReadOnlySpan<double> readings) => this with { Width = readings[0], Height = readings[1] };

    private protected override SectionProblem? ShapeProblem() => SectionProblem.NotPositive("width", Width) ?? SectionProblem.NotPositive("height", Height);

    internal override PlaneFigure Figure()
    {
        var r = Math.Min(Width, Height) / 2;
        WallPath path = Width <= Height
            ? new([
                WallPiece.Arc(new(0, r), r, Math.PI, Math.PI), WallPiece.Straight(new(r, r), new(r, Height - r)),
                WallPiece.Arc(new(0, Height - r), r, 0, Math.PI), WallPiece.Straight(new(-r, Height - r), new(-r, r)),
            ])
            : new([
                WallPiece.Straight(new(r - Width / 2, 0), new(Width / 2 - r, 0)), WallPiece.Arc(new(Width / 2 - r, r), r, -Math.PI / 2, Math.PI),
                WallPiece.Straight(new(Width / 2 - r, Height), new(r - Width / 2, Height)), WallPiece.Arc(new(r - Width / 2, r), r, Math.PI / 2, Math.PI),
            ]);
        return PlaneFigure.Of(path);
    }

    internal override IEnumerable<WorkingLine> ShapeWorking()
    {
        var (small, large) = Width <= Height ? (Width, Height) : (Height, Width);
        if (large > small)
            yield return new("rectangle between the half circles", "{0} × ({1} − {0})", [Quantity.Length(small), Quantity.Length(large)], Quantity.Area(small * (large - small)));
        yield return new("two half circles", "π/4 × {0}²", [Quantity.Length(small)], Quantity.Area(Math.PI / 4 * small * small));
    }
}
