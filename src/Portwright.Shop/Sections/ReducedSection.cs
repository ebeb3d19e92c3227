using Portwright.Geometry;
using Portwright.Geometry.Sections;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;

namespace Portwright.Shop.Sections;

/// <summary>A section with its area and the doubt of the caliper.</summary>
/// <param name="Shape">As measured, with the hand working.</param>
/// <param name="Outline">Seen along the centreline, its centroid at the origin: x towards the centre side, y towards the roof.</param>
/// <param name="Area">m2, square to the centreline.</param>
/// <param name="Of">The cut it was measured at: an earlier one where this cut did not measure the station again.</param>
public sealed record ReducedSection(Kept<Station> Station, Kept<Section> Section, SectionMeasure Shape, Outline Outline, Estimate Area, Kept<Cut> Of)
{
    /// <summary>Standard relative error of a caliper's scale, common to all its readings; common practice, no source.</summary>
    public const double CaliperScale = 2e-4;

    /// <summary>Standard uncertainty of an angle set by eye or protractor, rad (one degree); common practice, no source.</summary>
    public const double TiltDoubt = Math.PI / 180;

    /// <summary>A thousandth of an inch: what a dial caliper is read to.</summary>
    private const double CaliperStep = 25.4e-6;

    /// <summary>Radius gauges come in steps of a sixteenth of an inch; common practice, no source.</summary>
    private const double RadiusStep = 0.0254 / 16;

    /// <summary>Standard uncertainty, as a share of the area, of a hand-shaped section known by two diameters alone: flats and bosses between them; common practice, no source.</summary>
    public const double BetweenDiameters = 0.005;

    /// <summary>What stands in it, seen along the centreline, where <see cref="Outline"/> has it, with its area, m2.</summary>
    public IReadOnlyList<(string Name, Outline Outline, double Area)> InAir { get; private init; } = [];

    /// <summary>m2, square to the centreline, by the wall alone: nothing that stands in it is taken off. A bore is judged by it.</summary>
    public Estimate WithinWall => InAir.Count == 0 ? Area : From(Station, Section with { Fact = Section.Fact with { InAir = null } }, Of, out _)!.Area;

    /// <summary>m.</summary>
    public double HydraulicDiameter => Shape.HydraulicDiameter;

    /// <summary>A station's section as last measured up to a cut; null where it never was, or where its numbers make none and the sentence says why.</summary>
    public static ReducedSection? Latest(Ledger ledger, Kept<Station> station, Kept<Cut> upTo, out string problem)
    {
        ArgumentNullException.ThrowIfNull(ledger);
        var cuts = ledger.CutsOf(upTo.Fact.Port).Where(c => c.Fact.Number <= upTo.Fact.Number).ToDictionary(c => c.Id);
        var latest = ledger.All<Section>()
            .Where(s => s.Fact.Station == station.Id && cuts.ContainsKey(s.Fact.Cut))
            .OrderBy(s => cuts[s.Fact.Cut].Fact.Number).ThenBy(s => s.Sequence)
            .LastOrDefault();
        problem = "";
        return latest is null ? null : From(station, latest, cuts[latest.Fact.Cut], out problem);
    }

    /// <summary>
    /// What two diameters leave open, m2: anything from an ellipse to a racetrack of that width and height is as likely, and a hand-shaped
    /// wall is neither. A throat whose diameters agree was cut round by a tool: there is nothing to leave open.
    /// </summary>
    private static double ShapeDoubt(Station station, Section section, SectionMeasure shape, double step)
    {
        if (section.Form is not (SectionForm.Oval or SectionForm.Racetrack) || section.Readings.Count != 2) return 0;
        double[] d = [.. section.Readings.Select(r => r.Si(Units.Dimension.Length)).Order()];
        if (station.RoleRead == StationRole.Throat && d[1] - d[0] <= step) return 0;
        var apart = (1 - Math.PI / 4) * (d[1] - d[0]) * d[0];
        return Math.Sqrt(apart * apart / 3 + Math.Pow(BetweenDiameters * shape.Area, 2));
    }

    /// <summary>What each reading of a section, the caliper's scale and the tilt leave in doubt of its area, with the doubt of each by itself.</summary>
    internal static AreaUncertainty DoubtOf(Section section, SectionMeasure shape)
    {
        var step = StepOf(section);
        return AreaUncertainty.Of(shape, step, CaliperScale, Math.Max(step, RadiusStep), shape.Tilt == 0 ? 0 : TiltDoubt);
    }

    private static double StepOf(Section section) => section.Step?.Si(Units.Dimension.Length) ?? CaliperStep;

    /// <summary>Null where the numbers make no section; the sentence says why.</summary>
    public static ReducedSection? From(Kept<Station> station, Kept<Section> section, Kept<Cut> cut, out string problem)
    {
        if (SectionShape.Of(section.Fact, out problem) is not { } shape)
        {
            return null;
        }

        var area = new Estimate(shape.Area, [.. DoubtOf(section.Fact, shape).Contributions.Select(c => new Contribution(
            c.Name == Sources.Caliper ? Sources.Caliper : Sources.OfSection(section.Id, c.Name),
            c.Sensitivity * c.InputDoubt,
            Kind: ContributionKind.Geometry,
            // A reading lies evenly within its step; a scale and an angle do not.
            Shape: shape.Readings.Any(r => r.Name == c.Name) ? InputShape.Rectangular : InputShape.Normal))]);
        if (ShapeDoubt(station.Fact, section.Fact, shape, StepOf(section.Fact)) is > 0 and var unseen)
            area = area.With(new Contribution(Sources.OfSection(section.Id, "shape between its diameters"), unseen, double.PositiveInfinity, ContributionKind.Geometry));
        var outline = shape.SquaredOutline();
        var middle = outline.Centroid;
        return new ReducedSection(station, section, shape, outline.Moved(-middle.X, -middle.Y), area, cut)
        {
            InAir = [.. shape.SquaredIslands().Select(i => (i.Name, i.Outline.Moved(-middle.X, -middle.Y), i.Outline.Area))],
        };
    }
}
