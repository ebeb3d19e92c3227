using Portwright.Shop.Families;
using Portwright.Shop.Judgement;
using Portwright.Shop.Record;
using Portwright.Shop.Survey;
using Portwright.Shop.Walls;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>Slow or unsteady air behind the guide boss.</summary>
public sealed record GuideBossWake() : FindingRule("guide-boss-wake", "The guide boss leaves a wake")
{
    /// <summary>Air in a wake is this much slower than at a sound place, as a logarithm of the speed; judgement.</summary>
    public static readonly Step Slower = new(0.40, 1.6, StepWay.Down);

    /// <inheritdoc/>
    public override double? Prior => 0.15;

    /// <summary>A flag held in a wake is seen unsteady this often; common practice, no source.</summary>
    public const double UnsteadyInWake = 0.8;

    /// <summary>A flag held in sound air is seen unsteady this often, by a poor thread or an unsteady hand; common practice, no source.</summary>
    public const double UnsteadyInSoundAir = 0.1;

    /// <summary>Hours to each side of 12 that lie behind the boss.</summary>
    private const double Behind = 1;

    public override Sentence Evidence => $"On the roof of the bend or in the bowl: probe readings, a ball, or two flags.";

    public override Sentence Test => $"The air on the roof of the bend, by probe and ball together, is slower than sound ports show there, and flags that swing, hang or turn back there add their odds: 8 in 10 do so in a wake, 1 in 10 in sound air. One flag alone does not carry the finding.";

    public override Sentence ElseExplains => $"A bowl too large for its air; a flag too long, or held in the hand's own wake; the stem, which no shaping takes away.";

    public override Sentence LookFirst => $"A flag beside the boss at each side: still there and swinging behind it is a wake; swinging everywhere is something else.";

    public override Sentence Cut => $"Thin the boss at its sides and draw it out to a tail behind, like a drop; fair its front into the roof. Leave the guide its length.";

    public override Sentence Risk => $"The guide loses support and heat has a longer way out of the valve; more so on the exhaust. Water is often right beside the boss.";

    // The book is cited from memory: docs/theory/sources.md.
    public override string Source => "Wakes behind blunt and drawn-out bodies: Hoerner, Fluid-Dynamic Drag (1965); how chances are worked out: docs/theory/judgement.md";

    public override double Minutes => BenchMinutes.OnePlace;

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        var looked = port.InTheBend
            .Select(s => (Station: s, Places: Places.Of(port, [s]).Near(12, Behind), Flags: s.Flags.Where(f => f.Fact.Bearing is { } h && WallState.Apart(h, 12) <= Behind).ToList()))
            .Where(l => l.Places.Count > 0 || l.Flags.Count > 0).ToList();
        var chances = Court.AtOneOf(Prior!.Value, [.. looked.Select(l => ByFlags(l.Flags) * l.Places.Select(p => p.Ratio(Slower)).DefaultIfEmpty(1).Average())]);
        return looked.Zip(chances, (l, chance) => Found(port, l.Station, l.Places.MaxBy(p => p.Ratio(Slower)), l.Flags, chance));
    }

    private Finding Found(PortSurvey port, SurveyedStation station, PlaceRead? place, List<Kept<FlagReading>> flags, double chance)
    {
        var unsteady = flags.Count(IsUnsteady);
        List<Sentence> seen = [];
        if (place is not null)
        {
            seen.Add(place.Seen());
        }

        if (unsteady > 0)
        {
            seen.Add($"{unsteady} of {flags.Count} {(flags.Count == 1 ? "flag" : "flags")} there {(unsteady == 1 ? "does" : "do")} not stand still.");
        }
        else if (flags.Count > 0 && place is null)
        {
            seen.Add($"The {(flags.Count == 1 ? "flag stands" : "flags stand")} still.");
        }

        return new Finding(
            this,
            FindingKind.Port,
            Sentence.Join(" ", seen).Whole(),
            chance,
            station.Station,
            12,
            [.. place?.Behind() ?? [], .. flags.Select(f => f.Id)],
            flags.Count < 2 ? $"Hold a flag at {station.Letter}, {Bearings.Words(12)}, right behind the boss, and one beside it."
                : place is null ? $"Read the probe at {station.Letter}, {Bearings.Words(12)}." : place.Surer(port),
            JudgedCut.Of(port, $"Thin the guide boss at {station.Letter} at its sides, draw it out to a tail, fair it into the roof.", 0.08, 0.06, "guide boss faired", 12));
    }

    private static bool IsUnsteady(Kept<FlagReading> flag) => flag.Fact.Steadiness is Steadiness.Swings or Steadiness.Hangs or Steadiness.TurnsBack;

    /// <summary>Likelihood ratio of what the flags did.</summary>
    private static double ByFlags(List<Kept<FlagReading>> flags) => flags.Aggregate(1.0, (ratio, f) => ratio * (IsUnsteady(f)
        ? UnsteadyInWake / UnsteadyInSoundAir
        : (1 - UnsteadyInWake) / (1 - UnsteadyInSoundAir)));
}
