using Portwright.Geometry.Paths;
using Portwright.Geometry.Working;

namespace Portwright.Geometry.Sections;

/// <summary>A roof circle above a floor circle of another radius, joined by their common tangents, m.</summary>
/// <param name="RoofRadius">m, above zero.</param>
/// <param name="FloorRadius">m, above zero.</param>
/// <param name="Height">Floor to roof, m: both radii and the distance between the centres.</param>
public sealed record EggSection(double RoofRadius, double FloorRadius, double Height) : SectionMeasure
{
    public override string Kind => "egg";

    /// <summary>Distance between the circles' centres, m.</summary>
    public double CentreDistance => Height - RoofRadius - FloorRadius;

    private protected override IReadOnlyList<SectionReading> ShapeReadings =>
        [SectionReading.Radius("roof radius", RoofRadius), SectionReading.Radius("floor radius", FloorRadius), SectionReading.Caliper("height", Height)];

    private protected override SectionMeasure WithShapeReadings(ReadOnlySpan<double> readings) =>
        this with { RoofRadius = readings[0], FloorRadius = readings[1], Height = readings[2] };

    private protected override SectionProblem? ShapeProblem() =>
        SectionProblem.NotPositive("roof radius", RoofRadius) ?? SectionProblem.NotPositive("floor radius", FloorRadius)
        ?? SectionProblem.NotPositive("height", Height)
        ?? (CentreDistance > Math.Abs(RoofRadius - FloorRadius) ? null
            : new SectionProblem("height", Height, "One circle swallows the other: the height must be more than twice the larger radius."));

    /// <summary>Lean of the tangents from upright: sin = (roof radius - floor radius) / centre distance.</summary>
    private double Lean => Math.Asin((RoofRadius - FloorRadius) / CentreDistance);

    internal override PlaneFigure Figure()
    {
        var lean = Lean;
        var floor = new PlanePoint(0, FloorRadius);
        var roof = new PlanePoint(0, Height - RoofRadius);
        var below = WallPiece.Arc(floor, FloorRadius, Math.PI + lean, Math.PI - 2 * lean);
        var above = WallPiece.Arc(roof, RoofRadius, -lean, Math.PI + 2 * lean);
        return PlaneFigure.Of(new WallPath([below, WallPiece.Straight(below.To, above.From), above, WallPiece.Straight(above.To, below.From)]));
    }

    internal override IEnumerable<WorkingLine> ShapeWorking()
    {
        var lean = Lean;
        yield return new("lean of the walls", "asin (({0} − {1}) / {2})",
            [Quantity.Length(RoofRadius), Quantity.Length(FloorRadius), Quantity.Length(CentreDistance)], Quantity.Angle(lean), Effect.Aside);
        yield return new("roof sector", "{0}² × (π/2 + {1})", [Quantity.Length(RoofRadius), Quantity.Number(lean)], Quantity.Area(RoofRadius * RoofRadius * (Math.PI / 2 + lean)));
        yield return new("floor sector", "{0}² × (π/2 − {1})", [Quantity.Length(FloorRadius), Quantity.Number(lean)], Quantity.Area(FloorRadius * FloorRadius * (Math.PI / 2 - lean)));
        yield return new("between the circles", "({0} + {1}) × {2} × cos {3}",
            [Quantity.Length(RoofRadius), Quantity.Length(FloorRadius), Quantity.Length(CentreDistance), Quantity.Angle(lean)],
            Quantity.Area((RoofRadius + FloorRadius) * CentreDistance * Math.Cos(lean)));
    }
}
