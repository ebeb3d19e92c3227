using Portwright.Shop.Families;
using Portwright.Shop.Judgement;
using Portwright.Shop.Record;
using Portwright.Shop.Survey;
using Portwright.Shop.Walls;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>The floor of the bend is too tight: the air still follows it, but far too fast.</summary>
public sealed record ShortSideTooFast() : FindingRule("short-side-too-fast", "The short side is too fast")
{
    /// <summary>A short side that is too fast carries this much more than a sound one, as a logarithm of the speed; judgement.</summary>
    public static readonly Step Faster = new(0.30, 1.5, StepWay.Up);

    /// <summary>Air on the inside of a sound bend is so much faster than even air already, as a logarithm; a free vortex, judgement.</summary>
    public const double InsideOfABend = 0.05;

    /// <inheritdoc/>
    public override double? Prior => 0.15;

    /// <summary>Hours to each side of 6 that are the floor.</summary>
    private const double Floor = 1;

    public override Sentence Evidence => $"A ring with readings on the floor of the bend, or a ball held there; a ball or a flag to tell that the air still follows the wall.";

    public override Sentence Test => $"The air on the floor of the bend, by probe and ball together, is faster than sound ports show there: than the sister ports read there, or where none was, than even air and a little more for the inside of a bend. Where the ball tells of air off the wall, or against the probe, the chance falls. Silent where a flag there hangs or turns back: then the air is off.";

    public override Sentence ElseExplains => $"Air in any bend is faster on the inside, as a free vortex is: some of it belongs there. A section read too large makes its mean too slow.";

    public override Sentence LookFirst => $"A flag on the floor just past the fastest place at full lift: it trembles before the air leaves. The radius of the short side with a template.";

    public override Sentence Cut => $"Lay the short side back to a larger radius and widen the floor there; round it from side to side. Leave the height of its apex.";

    public override Sentence Risk => $"Water or the seat's support under the short side. Laid back too far, low lift suffers and the air may leave altogether.";

    // The book is cited from memory: docs/theory/sources.md.
    public override string Source => "Speed on the inside of a bend: Miller, Internal Flow Systems (1990); the share taken: common practice, no source";

    public override double Minutes => BenchMinutes.OnePlace;

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        var flags = port.InTheBend.ToDictionary(
            s => s.Station.Id, s => s.Flags.Where(f => f.Fact.Bearing is { } h && WallState.Apart(h, 6) <= Floor).ToList());
        var places = Places.Of(port, port.InTheBend).Near(6, Floor);
        return Places.Judged(places, Prior!.Value, Ratio)
            .Where(j => !flags[j.Place.Station.Station.Id].Exists(f => f.Fact.Steadiness is Steadiness.Hangs or Steadiness.TurnsBack))
            .Select(j => new Finding(
                this,
                FindingKind.Port,
                j.Place.Seen(),
                j.Chance,
                j.Place.Station.Station,
                6,
                [.. j.Place.Behind(), .. flags[j.Place.Station.Station.Id].Select(f => f.Id)],
                j.Place.Ball is not null && flags[j.Place.Station.Station.Id].Count == 0
                    ? $"Hold a flag at {j.Place.Station.Letter}, {Bearings.Words(6)}: it shows whether the air still follows." : j.Place.Surer(port),
                JudgedCut.Of(port, $"Lay the short side back at {j.Place.Station.Letter}, larger radius, floor wider and rounded; leave the apex height.", 0.1, 0.06, "short side eased", 6)));

        double Ratio(PlaceRead p) => FloorAir.Fast(p, p.Sisters > 0 ? p.Ratio(Faster) : p.Ratio(Faster, InsideOfABend), places.Count);
    }
}
