using Portwright.Geometry.Working;

namespace Portwright.Geometry.Sections;

/// <summary>A known shape stretched to the width and height two caliper readings give, m. The template itself is taken as true to shape.</summary>
/// <param name="Width">m, above zero.</param>
/// <param name="Height">m, above zero.</param>
public sealed record TemplateSection(Outline Template, double Width, double Height) : SectionMeasure
{
    public override string Kind => "template";

    private protected override IReadOnlyList<SectionReading> ShapeReadings =>
        [SectionReading.Caliper("width", Width), SectionReading.Caliper("height", Height)];

    private protected override SectionMeasure WithShapeReadings(ReadOnlySpan<double> readings) => this with { Width = readings[0], Height = readings[1] };

    private protected override SectionProblem? ShapeProblem() => SectionProblem.NotPositive("width", Width) ?? SectionProblem.NotPositive("height", Height);

    internal override PlaneFigure Figure()
    {
        var size = Template.Bounds;
        var middle = (size.Left + size.Right) / 2;
        return PlaneFigure.Of(Template.Moved(-middle, -size.Bottom).Scaled(Width / size.Width, Height / size.Height));
    }

    internal override IEnumerable<WorkingLine> ShapeWorking()
    {
        var size = Template.Bounds;
        yield return new("template stretched", "{0} × {1} / {2} × {3} / {4}",
            [Quantity.Area(Template.Area), Quantity.Length(Width), Quantity.Length(size.Width), Quantity.Length(Height), Quantity.Length(size.Height)],
            Quantity.Area(Template.Area * Width / size.Width * Height / size.Height));
    }
}
