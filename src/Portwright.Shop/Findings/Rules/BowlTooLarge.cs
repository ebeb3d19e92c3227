using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;
using Portwright.Shop.Sections;
using Portwright.Shop.Survey;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>A bowl that opens faster than the air can follow, with a step at the seat.</summary>
public sealed record BowlTooLarge() : FindingRule("bowl-too-large", "The bowl is too large")
{
    /// <summary>Bowl over throat area from which the bowl is much larger; common practice, no source.</summary>
    public const double MuchLarger = 1.2;

    /// <summary>
    /// Half angle of a cone up to which turbulent flow stays on its wall, rad: seven degrees, R. S. Azad, Exp. Therm. Fluid Sci. 13 (1996) 318-337, one of
    /// four papers named for it in a later one; itself not opened (docs/theory/sources.md). The stall charts in White, Fluid Mechanics, say much the same (from memory). A port that turns at the same place bears less, not more.
    /// </summary>
    public const double AttachedHalfAngle = 7 * Math.PI / 180;

    /// <summary>Standard uncertainty of a station's distance, m: a bent wire or a caliper's tail in a curved port; common practice, no source.</summary>
    public const double DistanceDoubt = 0.001;

    /// <summary>Share of the port's loss a blended bowl takes away, and its doubt; judgement, no source.</summary>
    private const double Blended = 0.12, BlendedDoubt = 0.07;

    public override Sentence Evidence => $"Sections at the bowl, at the station before it and at the throat (or the throat's diameter with the valve).";

    public override Sentence Test => $"The bowl's section is more than 1.2 times the throat's, and the way from the section before opens by more than seven degrees to the axis (round sections of the same areas); the two probabilities multiply. The step from bowl to throat is shown.";

    public override Sentence ElseExplains => $"The guide boss stands in the bowl and its section was measured round it; a section measured slanting; an oval bowl that only grows sideways where the air turns.";

    public override Sentence LookFirst => $"A ball and a flag in the bowl, floor and roof: where the air is off, the flow rises with the ball. Measure the bowl square to the centreline.";

    public override Sentence Cut => $"Nothing in the bowl itself. Lengthen the way into it (open the section before by its roof and sides), take the step under the seat off by blending the throat, or build the bowl up.";

    public override Sentence Risk => $"A bowl opened further grows the volume and slows the air right before it has to turn; water lies close round the bowl.";

    public override string Source => "Seven degrees: Azad, Exp. Therm. Fluid Sci. 13 (1996). Bowl over throat: common practice, no source";

    public override double Minutes => BenchMinutes.OneSection;

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        if (port.At(StationRole.Bowl) is not { Section: { } bowl } at
            || port.Stations.LastOrDefault(s => s.Section is not null && s.Distance < at.Distance) is not { Section: { } before } from
            || Throat(port) is not { } throat)
        {
            yield break;
        }

        var larger = Estimate.Ratio(bowl.Area, throat.Area);
        var angle = HalfAngle(before, bowl, at.Distance - from.Distance);
        var step = (Round(bowl.Area.Value) - Round(throat.Area.Value)) / 2;
        var (size, opening) = (Confidence.Above(larger, MuchLarger), Confidence.Above(angle, AttachedHalfAngle));
        yield return new Finding(
            this,
            FindingKind.Port,
            $"The bowl is {larger.Value:0.00} times the throat and opens by {angle.Value * 180 / Math.PI:0.#} degrees from {from.Letter}, where air bears about {AttachedHalfAngle * 180 / Math.PI:0}; the step down to the throat is {Quantity.Length(step)} all round.",
            size * opening,
            at.Station,
            null,
            [bowl.Section.Id, before.Section.Id, throat.Behind],
            size < opening
                ? (Sentence)$"Measure the bowl at {at.Letter} again, by widths at more heights."
                : $"Measure one more section between {from.Letter} and {at.Letter}: it shows where the port opens too fast.",
            JudgedCut.Of(
                port,
                $"Lengthen the way into the bowl from {from.Letter}, roof and sides; blend the step under the seat. Nothing off the bowl itself.",
                Blended, BlendedDoubt, "bowl blended", null));
    }

    private static (Estimate Area, Guid Behind)? Throat(PortSurvey port)
    {
        if (port.At(StationRole.Throat)?.Section is { } section)
        {
            return (section.Area, section.Section.Id);
        }

        return port.Sheet.Port is { Fact.Valve.ThroatDiameter: > 0 and var throat } owner
            ? (Estimate.Exact(Math.PI / 4 * throat * throat).With(new Contribution(
                Sources.OfValve(owner.Id, "throat"), Math.PI / 2 * throat * (port.Sheet.Bench?.Fact.Doubt.Calliper ?? BenchDoubt.Unknown.Calliper), double.PositiveInfinity, ContributionKind.Geometry)), owner.Id)
            : null;
    }

    /// <summary>Half angle between round sections of the same areas, rad: tan a = (d2 - d1) / (2 l).</summary>
    private static Estimate HalfAngle(ReducedSection from, ReducedSection to, double length)
    {
        var (d1, d2) = (Round(from.Area.Value), Round(to.Area.Value));
        var tan = (d2 - d1) / (2 * length);
        var slope = 1 / (1 + tan * tan);
        return Estimate.Linear(
            Math.Atan(tan),
            (slope * d2 / (2 * to.Area.Value) / (2 * length), to.Area),
            (-slope * d1 / (2 * from.Area.Value) / (2 * length), from.Area))
            .With(new Contribution(Sources.Way(from.Station.Id, to.Station.Id), slope * tan / length * DistanceDoubt * Math.Sqrt(2), double.PositiveInfinity, ContributionKind.Geometry));
    }

    private static double Round(double area) => Math.Sqrt(4 * area / Math.PI);
}
