using System.Globalization;
using Portwright.Geometry.Working;

namespace Portwright.Geometry.Sections;

/// <summary>Points traced or typed in order around the wall, straight between them, m.</summary>
public sealed record TracedSection(IReadOnlyList<PlanePoint> Points) : SectionMeasure
{
    public override string Kind => "traced";

    private protected override IReadOnlyList<SectionReading> ShapeReadings =>
        [.. Points.SelectMany((p, i) => new[] { SectionReading.Caliper($"point {i + 1} across", p.X), SectionReading.Caliper($"point {i + 1} up", p.Y) })];

    private protected override SectionMeasure WithShapeReadings(ReadOnlySpan<double> readings)
    {
        var points = new PlanePoint[Points.Count];
        for (var i = 0; i < points.Length; i++) points[i] = new(readings[2 * i], readings[2 * i + 1]);
        return this with { Points = points };
    }

    private protected override SectionProblem? ShapeProblem() =>
        Geometry.Outline.TryCreate(Points, out _, out var problem) ? null : new("outline", Points.Count, problem);

    internal override PlaneFigure Figure() => PlaneFigure.Of(new Outline(Points));

    /// <summary>Cross products about the first point: each triangle of it and two neighbours, taken off where the wall runs back.</summary>
    internal override IEnumerable<WorkingLine> ShapeWorking()
    {
        var wall = new Outline(Points).Points;
        for (var i = 1; i + 1 < wall.Count; i++)
        {
            var a = wall[i] - wall[0];
            var b = wall[i + 1] - wall[0];
            var half = PlanePoint.Cross(a, b) / 2;
            yield return new(
                string.Create(CultureInfo.InvariantCulture, $"triangle 1, {i + 1}, {i + 2}"), "({0} × {1} − {2} × {3}) / 2",
                [Quantity.Length(a.X), Quantity.Length(b.Y), Quantity.Length(b.X), Quantity.Length(a.Y)],
                Quantity.Area(half < 0 ? -half : half), half < 0 ? Effect.TakesOff : Effect.Adds);
        }
    }

    public bool Equals(TracedSection? other) => other is not null && base.Equals(other) && Points.SequenceEqual(other.Points);

    public override int GetHashCode() => HashCode.Combine(base.GetHashCode(), Points.Count);
}
