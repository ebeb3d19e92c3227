using Portwright.Shop.Families;
using Portwright.Shop.Judgement;
using Portwright.Shop.Survey;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>The roof carries more than its share.</summary>
public sealed record BusyRoof() : FindingRule("busy-roof", "The roof is busy")
{
    /// <summary>A busy roof carries this much more than a sound one, as a logarithm of the speed; judgement.</summary>
    public static readonly Step Faster = new(0.25, 1.6, StepWay.Up);

    /// <inheritdoc/>
    public override double? Prior => 0.15;

    /// <summary>Hours to each side of 12 that are the roof.</summary>
    private const double Roof = 1.75;

    public override Sentence Evidence => $"A ring with readings at the roof, or a ball held there with readings without it before and after.";

    public override Sentence Test => $"The air at the roof, by probe and ball together, is faster than sound ports show there: than the sister ports read there, or where none was, than even air, which sound places leave by about {SharedFactor.AheadOfTheBend * 100:0} percent ahead of the bend and {SharedFactor.InTheBend * 100:0} in it. What the ball takes is counted against its other places in this port.";

    public override Sentence ElseExplains => $"A lazy floor that pushes the air up: then the floor is the fault and the roof only shows it. The probe's mouth nearer to the middle than written down.";

    public override Sentence LookFirst => $"What the floor of the same section does, by probe and by ball; the section one station before.";

    public override Sentence Cut => $"Take metal where the air is: raise the roof and widen it at this station and a little before, and blend it out.";

    public override Sentence Risk => $"Spring seat, pushrod and water over the roof. A roof raised alone makes the turn sharper for the floor.";

    public override string Source => "common practice, no source; how chances are worked out: docs/theory/judgement.md; even air: docs/theory/rings.md";

    public override double Minutes => BenchMinutes.OnePlace;

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        return Places.Judged(PlaceRead.AllOf(port).Near(12, Roof), Prior!.Value, p => p.Ratio(Faster)).Select(j => new Finding(
            this,
            FindingKind.Port,
            j.Place.Seen(),
            j.Chance,
            j.Place.Station.Station,
            j.Place.Bearing,
            j.Place.Behind(),
            j.Place.Surer(port),
            JudgedCut.Of(port, $"Raise and widen the roof at {j.Place.Station.Letter}, blended out before and after.", 0.08, 0.06, "busy roof opened", j.Place.Bearing)));
    }
}
