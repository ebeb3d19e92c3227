using Portwright.Shop.Record;
using Portwright.Shop.Survey;
using Portwright.Shop.Walls;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>Slow or unsteady air behind the guide boss.</summary>
public sealed record GuideBossWake() : FindingRule("guide-boss-wake", "The guide boss leaves a wake")
{
    /// <summary>Air under this share of even air's speed at the roof of the bend is a wake; common practice, no source.</summary>
    public const double Slow = 0.8;

    /// <summary>A flag held in a wake is seen unsteady this often; common practice, no source.</summary>
    public const double UnsteadyInWake = 0.8;

    /// <summary>A flag held in sound air is seen unsteady this often, by a poor thread or an unsteady hand; common practice, no source.</summary>
    public const double UnsteadyInSoundAir = 0.1;

    /// <summary>Hours to each side of 12 that lie behind the boss.</summary>
    private const double Behind = 1;

    public override Sentence Evidence => $"On the roof of the bend or in the bowl: probe readings, a ball, or two flags.";

    public override Sentence Test => $"The probe shows less than four fifths of what even air would show there, or the ball loses less than two thirds of its due; flags that swing, hang or turn back there add their odds: 8 in 10 do so in a wake, 1 in 10 in sound air. One flag alone does not carry the finding, two do.";

    public override Sentence ElseExplains => $"A bowl too large for its air; a flag too long, or held in the hand's own wake; the stem, which no shaping takes away.";

    public override Sentence LookFirst => $"A flag beside the boss at each side: still there and swinging behind it is a wake; swinging everywhere is something else.";

    public override Sentence Cut => $"Thin the boss at its sides and draw it out to a tail behind, like a drop; fair its front into the roof. Leave the guide its length.";

    public override Sentence Risk => $"The guide loses support and heat has a longer way out of the valve; more so on the exhaust. Water is often right beside the boss.";

    // The book is cited from memory: docs/theory/sources.md.
    public override string Source => "Wakes behind blunt and drawn-out bodies: Hoerner, Fluid-Dynamic Drag (1965); the share taken: common practice, no source";

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        foreach (var station in port.InTheBend)
        {
            var air = LocalAir.At(station.Ring, 12, Behind);
            var ball = LocalBall.Near(station, 12, Behind).MaxBy(b => b.Little);
            var flags = station.Flags.Where(f => f.Fact.Bearing is { } h && WallState.Apart(h, 12) <= Behind).ToList();
            if (air is null && ball is null && flags.Count == 0)
            {
                continue;
            }

            var unsteady = flags.Where(f => f.Fact.Steadiness is Steadiness.Swings or Steadiness.Hangs or Steadiness.TurnsBack).ToList();
            var seen = new List<Sentence>();
            if (air is not null)
            {
                seen.Add($"the probe shows {air.Words}");
            }

            if (ball is not null)
            {
                seen.Add(ball.Words);
            }

            if (unsteady.Count > 0)
            {
                seen.Add($"{unsteady.Count} of {flags.Count} {(flags.Count == 1 ? "flag" : "flags")} there {(unsteady.Count == 1 ? "does" : "do")} not stand still");
            }

            var next = Bearings.Words(12);
            yield return new Finding(
                this,
                FindingKind.Port,
                Sentence.Join("; ", seen).Whole(),
                Confidence.Either(
                    air is null ? 0 : Confidence.Below(air.OverEven, Slow),
                    Confidence.Either(ball?.Little ?? 0, ByFlags(unsteady.Count, flags.Count - unsteady.Count))),
                station.Station,
                12,
                [.. air?.Behind ?? [], .. ball?.Behind ?? [], .. flags.Select(f => f.Id)],
                flags.Count < 2 ? $"Hold a flag at {station.Letter}, {next}, right behind the boss, and one beside it."
                    : air is null ? $"Read the probe at {station.Letter}, {next}." : air.NextReading,
                JudgedCut.Of(port, $"Thin the guide boss at {station.Letter} at its sides, draw it out to a tail, fair it into the roof.", 0.08, 0.06, "guide boss faired", 12));
        }
    }

    /// <summary>Odds of Bayes from even ones; no word where no flag was unsteady.</summary>
    private static double ByFlags(int unsteady, int still)
    {
        if (unsteady == 0)
        {
            return 0;
        }

        var odds = Math.Pow(UnsteadyInWake / UnsteadyInSoundAir, unsteady) * Math.Pow((1 - UnsteadyInWake) / (1 - UnsteadyInSoundAir), still);
        return odds / (1 + odds);
    }
}
