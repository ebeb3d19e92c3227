using Portwright.Geometry.Working;

namespace Portwright.Geometry.Sections;

/// <summary>A round section by one diameter, m: a stem, a bored guide. Its doubt is that of the one reading.</summary>
/// <param name="Diameter">m, above zero.</param>
public sealed record RoundSection(double Diameter) : SectionMeasure
{
    public override string Kind => "round";

    private protected override IReadOnlyList<SectionReading> ShapeReadings => [SectionReading.Caliper("diameter", Diameter)];

    private protected override SectionMeasure WithShapeReadings(ReadOnlySpan<double> readings) => this with { Diameter = readings[0] };

    private protected override SectionProblem? ShapeProblem() => SectionProblem.NotPositive("diameter", Diameter);

    internal override PlaneFigure Figure() => OvalSection.Round(Diameter).Figure();

    internal override IEnumerable<WorkingLine> ShapeWorking() =>
        [new("round", "π/4 × {0}²", [Quantity.Length(Diameter)], Quantity.Area(Math.PI / 4 * Diameter * Diameter))];
}
