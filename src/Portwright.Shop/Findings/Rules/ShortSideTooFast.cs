using Portwright.Shop.Record;
using Portwright.Shop.Survey;
using Portwright.Shop.Walls;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>The floor of the bend is too tight: the air still follows it, but far too fast.</summary>
public sealed record ShortSideTooFast() : FindingRule("short-side-too-fast", "The short side is too fast")
{
    /// <summary>Air over this much of even air's speed on the floor of the bend is too fast; common practice, no source.</summary>
    public const double Fast = 1.25;

    /// <summary>Hours to each side of 6 that are the floor.</summary>
    private const double Floor = 1;

    public override Sentence Evidence => $"A ring with readings on the floor of the bend, or a ball held there; a ball or a flag to tell that the air still follows the wall.";

    public override Sentence Test => $"The probe shows more than 1.25 times what even air would show at that depth, or the ball loses more than four thirds of its due, and the ball neither loses too little nor helps the flow. Silent where a flag there hangs or turns back: then the air is off.";

    public override Sentence ElseExplains => $"Air in any bend is faster on the inside, as a free vortex is: some of it belongs there. A section read too large makes its mean too slow.";

    public override Sentence LookFirst => $"A flag on the floor just past the fastest place at full lift: it trembles before the air leaves. The radius of the short side with a template.";

    public override Sentence Cut => $"Lay the short side back to a larger radius and widen the floor there; round it from side to side. Leave the height of its apex.";

    public override Sentence Risk => $"Water or the seat's support under the short side. Laid back too far, low lift suffers and the air may leave altogether.";

    // The book is cited from memory: docs/theory/sources.md.
    public override string Source => "Speed on the inside of a bend: Miller, Internal Flow Systems (1990); the share taken: common practice, no source";

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        foreach (var station in port.InTheBend)
        {
            var air = LocalAir.At(station.Ring, 6, Floor);
            var balls = LocalBall.Near(station, 6, Floor).ToList();
            var flags = station.Flags.Where(f => f.Fact.Bearing is { } h && WallState.Apart(h, 6) <= Floor).ToList();
            if (air is null && balls.Count == 0 || flags.Exists(f => f.Fact.Steadiness is Steadiness.Hangs or Steadiness.TurnsBack))
            {
                continue;
            }

            var busiest = balls.MaxBy(b => b.Busier);
            // Air that moves past the probe this fast follows the wall unless a ball says otherwise.
            var attached = 1 - (balls.Count == 0 ? 0 : balls.Max(b => b.Little));
            Sentence[] seen = [.. air is null ? Array.Empty<Sentence>() : [$"the probe shows {air.Words}"], .. busiest is null ? Array.Empty<Sentence>() : [busiest.Words]];
            var place = Bearings.Words(6);
            yield return new Finding(
                this,
                FindingKind.Port,
                Sentence.Join("; ", seen).Whole(),
                attached * Confidence.Either(air is null ? 0 : Confidence.Above(air.OverEven, Fast), busiest?.Busier ?? 0),
                station.Station,
                6,
                [.. air?.Behind ?? [], .. busiest?.Behind ?? [], .. flags.Select(f => f.Id)],
                busiest is null ? $"Hold a ball at {station.Letter}, {place}: if the flow rises, the air is off already."
                    : flags.Count == 0 ? $"Hold a flag at {station.Letter}, {place}: it shows whether the air still follows." : air is null ? $"Read the probe at {station.Letter}, {place}." : air.NextReading,
                JudgedCut.Of(port, $"Lay the short side back at {station.Letter}, larger radius, floor wider and rounded; leave the apex height.", 0.1, 0.06, "short side eased", 6));
        }
    }
}
