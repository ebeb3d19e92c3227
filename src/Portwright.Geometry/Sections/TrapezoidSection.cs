using Portwright.Geometry.Working;

namespace Portwright.Geometry.Sections;

/// <summary>A floor width, a roof width and the height between them, corners rounded. m.</summary>
/// <param name="FloorWidth">m, above zero.</param>
/// <param name="RoofWidth">m, above zero.</param>
/// <param name="Height">m, above zero.</param>
/// <param name="RoofShift">How far the middle of the roof lies towards the centre side from the middle of the floor, m; zero for an upright one.</param>
public sealed record TrapezoidSection(double FloorWidth, double RoofWidth, double Height, CornerRadii Corners, double RoofShift = 0) : SectionMeasure
{
    public override string Kind => "trapezoid";

    private protected override IReadOnlyList<SectionReading> ShapeReadings =>
    [
        SectionReading.Caliper("floor width", FloorWidth), SectionReading.Caliper("roof width", RoofWidth), SectionReading.Caliper("height", Height),
        .. Corners.Readings(),
    ];

    private protected override SectionMeasure WithShapeReadings(ReadOnlySpan<double> readings) =>
        this with { FloorWidth = readings[0], RoofWidth = readings[1], Height = readings[2], Corners = Corners.From(readings[3..]) };

    private protected override SectionProblem? ShapeProblem() =>
        SectionProblem.NotPositive("floor width", FloorWidth) ?? SectionProblem.NotPositive("roof width", RoofWidth)
        ?? SectionProblem.NotPositive("height", Height) ?? (double.IsFinite(RoofShift) ? null : new SectionProblem("roof shift", RoofShift, "Type it again."))
        ?? RoundedWall.Of(Widths.Levels, Corners).CornerProblem();

    internal override PlaneFigure Figure() => Widths.Figure();

    internal override IEnumerable<WorkingLine> ShapeWorking() => Widths.ShapeWorking();

    private WidthsSection Widths => new([new(0, FloorWidth), new(Height, RoofWidth, RoofShift)], Corners);
}
