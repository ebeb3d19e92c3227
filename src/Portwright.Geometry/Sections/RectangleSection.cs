using Portwright.Geometry.Working;

namespace Portwright.Geometry.Sections;

/// <summary>A rectangle with rounded corners, all alike or each with its own radius. m.</summary>
/// <param name="Width">m, above zero.</param>
/// <param name="Height">m, above zero.</param>
public sealed record RectangleSection(double Width, double Height, CornerRadii Corners) : SectionMeasure
{
    public override string Kind => "rectangle";

    private protected override IReadOnlyList<SectionReading> ShapeReadings =>
        [SectionReading.Caliper("width", Width), SectionReading.Caliper("height", Height), .. Corners.Readings()];

    private protected override SectionMeasure WithShapeReadings(ReadOnlySpan<double> readings) =>
        this with { Width = readings[0], Height = readings[1], Corners = Corners.From(readings[2..]) };

    private protected override SectionProblem? ShapeProblem() =>
        SectionProblem.NotPositive("width", Width) ?? SectionProblem.NotPositive("height", Height) ?? Wall.CornerProblem();

    internal override PlaneFigure Figure() => PlaneFigure.Of(Wall.Path());

    private RoundedWall Wall => RoundedWall.Of([new(0, Width, 0), new(Height, Width, 0)], Corners);

    internal override IEnumerable<WorkingLine> ShapeWorking()
    {
        yield return new("rectangle", "{0} × {1}", [Quantity.Length(Width), Quantity.Length(Height)], Quantity.Area(Width * Height));
        foreach (var line in Wall.CornerWorking()) yield return line;
    }
}
