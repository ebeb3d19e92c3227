using Portwright.Shop.Survey;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>The roof carries more than its share.</summary>
public sealed record BusyRoof() : FindingRule("busy-roof", "The roof is busy")
{
    /// <summary>Air over this much of even air's speed counts as busy; common practice, no source.</summary>
    public const double Fast = 1.15;

    /// <summary>Hours to each side of 12 that are the roof.</summary>
    private const double Roof = 1;

    public override Sentence Evidence => $"A ring with readings at the roof, or a ball held there with readings without it before and after.";

    public override Sentence Test => $"The probe shows more than 1.15 times what even air would show at that depth, or the ball loses more than four thirds of what air at that speed should cost. The probability is that at least one of the two is so.";

    public override Sentence ElseExplains => $"A lazy floor that pushes the air up: then the floor is the fault and the roof only shows it. The probe's mouth nearer to the middle than written down.";

    public override Sentence LookFirst => $"What the floor of the same section does, by probe and by ball; the section one station before.";

    public override Sentence Cut => $"Take metal where the air is: raise the roof and widen it at this station and a little before, and blend it out.";

    public override Sentence Risk => $"Spring seat, pushrod and water over the roof. A roof raised alone makes the turn sharper for the floor.";

    public override string Source => "common practice, no source; even air: docs/theory/rings.md";

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        foreach (var station in port.Stations)
        {
            var air = LocalAir.At(station.Ring, 12, Roof);
            var ball = LocalBall.Near(station, 12, Roof).MaxBy(b => b.Busier);
            if (air is null && ball is null)
            {
                continue;
            }

            Sentence[] seen = [.. air is null ? Array.Empty<Sentence>() : [$"the probe shows {air.Words}"], .. ball is null ? Array.Empty<Sentence>() : [ball.Words]];
            yield return new Finding(
                this,
                FindingKind.Port,
                Sentence.Join("; ", seen).Whole(),
                Confidence.Either(air is null ? 0 : Confidence.Above(air.OverEven, Fast), ball?.Busier ?? 0),
                station.Station,
                12,
                [.. air?.Behind ?? [], .. ball?.Behind ?? []],
                ball is null ? $"Hold a ball at {station.Letter}, {Bearings.Words(12)}, and one on the floor: the two losses tell who carries the air."
                    : air is null ? $"Read a ring at {station.Letter}." : air.NextReading,
                JudgedCut.Of(port, $"Raise and widen the roof at {station.Letter}, blended out before and after.", 0.08, 0.06, "busy roof opened", 12));
        }
    }
}
