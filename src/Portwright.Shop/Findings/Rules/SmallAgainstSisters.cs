using Portwright.Shop.Families;
using Portwright.Shop.Judgement;
using Portwright.Shop.Sections;
using Portwright.Shop.Survey;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>A section smaller than the same section of the sister ports.</summary>
public sealed record SmallAgainstSisters() : FindingRule("small-against-sisters", "A section is small against its sisters")
{
    /// <summary>A small section has this much less area, as a logarithm; judgement.</summary>
    public static readonly Step Smaller = new(0.075, 1.7, StepWay.Down);

    /// <summary>Sections within this of each other in area are alike, as a logarithm: a fifth of a millimetre of wall all round a usual port. Common practice, no source.</summary>
    public const double Alike = 0.02;

    /// <inheritdoc/>
    public override double? Prior => 0.05;

    public override Sentence Evidence => $"The section of one station measured in the port and in two sisters or more, all as received or all cut.";

    public override Sentence Test => $"Its area is truly smaller than its sisters' by more than the {Alike * 100:0} percent that sections are called alike within: by a fault of its own, or as castings that differ so much among themselves do (usual ones by {SectionFamily.Usual * 100:0.0} percent). What the caliper may have taken is taken off.";

    public override Sentence ElseExplains => $"The caliper a few thousandths beside the narrowest place; a station drawn at another distance; core shift, where the next section is larger for it.";

    public override Sentence LookFirst => $"The same section again, and a sister's right after it with the same hand.";

    public override Sentence Cut => $"Open it to its sisters' size, from both sides, blended; sound the metal first.";

    public override Sentence Risk => $"Core shift makes one wall thin where the section is small: the metal missing inside is not there outside.";

    public override string Source => "Partial pooling: docs/theory/judgement.md; limits: common practice, no source";

    public override double Minutes => BenchMinutes.OneSection + BenchMinutes.OneSection;

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        List<(SurveyedStation Station, ReducedSection Section, Family Family, double Caliper, int Sisters)> compared = [];
        foreach (var station in port.Stations)
        {
            if (station.Section is not { Area.Value: > 0 } section)
            {
                continue;
            }

            // By the wall: what stands in the air may be noted in one port and not in another.
            double[] sisters = [.. port.Sisters.Select(s => PlaceRead.SameStation(s, station)?.Section?.WithinWall.Value).OfType<double>().Where(a => a > 0).Select(a => Math.Log(a))];
            if (sisters.Length > 1)
            {
                compared.Add((station, section, SectionFamily.Of(section, sisters), SectionFamily.Caliper(section), sisters.Length));
            }
        }

        // One fault a port: it may sit at any section compared.
        var each = Prior!.Value / Math.Max(1, compared.Count);
        return compared.Select(c => (c.Station, c.Section, c.Family, c.Sisters, Middle: Math.Exp(c.Family.Mean),
            Chance: c.Family.Below(Math.Log(c.Section.WithinWall.Value), c.Caliper, Alike, each, Smaller))).Select(c => new Finding(
            this,
            FindingKind.Port,
            $"{Quantity.Area(c.Section.WithinWall.Value)} against {Quantity.Area(c.Middle)} of its {FormattableString.Invariant($"{c.Sisters}")} sisters, {Quantity.Share(Math.Abs(c.Section.WithinWall.Value / c.Middle - 1)).About(2)} {(c.Section.WithinWall.Value < c.Middle ? "less" : "more")}; a sound one would lie within {Quantity.Share(2 * c.Family.Deviation).About(2)}.",
            c.Chance,
            c.Station.Station,
            null,
            [c.Section.Section.Id],
            $"Measure {c.Station.Letter} again here and in one sister, one right after the other.",
            JudgedCut.Of(port, $"Open {c.Station.Letter} to {Quantity.Area(c.Middle)} as its sisters are, both sides alike, blended.", 0.08, 0.05, "section opened to its sisters' size", null)));
    }
}
