using Portwright.Geometry.Views;
using Portwright.Shop.Families;
using Portwright.Shop.Judgement;
using Portwright.Shop.Survey;
using Portwright.Shop.Walls;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>One side of the port carries more than the other.</summary>
public sealed record UnevenSides() : FindingRule("uneven-sides", "The sides are uneven")
{
    /// <summary>One side over the other where they are uneven, as a logarithm of the speed, and within what factor; judgement.</summary>
    public const double Uneven = 0.26, Within = 1.5;

    private static readonly Step Fast = new(Uneven, Within, StepWay.Up), Slow = new(Uneven, Within, StepWay.Down),
        HalfFast = new(Uneven / 2, Within, StepWay.Up);

    /// <inheritdoc/>
    public override double? Prior => 0.15;

    /// <summary>Hours to each side of 3 and 9 that are the sides.</summary>
    private const double Side = 1;

    public override Sentence Evidence => $"Readings of the probe at 3 and at 9 o'clock of one section, or a ball at both.";

    public override Sentence Test => $"By probe and ball together one side is faster than the other by more than in sound ports: the one is fast, or the other slow, or each by half, against what the sister ports and the port's other places say of both. Places across from each other differ in sound ports by about {PlacesTogether.BetweenSides * 100:0} percent either way.";

    public override Sentence ElseExplains => $"A port that comes in at an angle puts the air to one side, wanted or not; a clay radius at the flange that sits crooked; swirl, which leans the air and misleads the probe.";

    public override Sentence LookFirst => $"The radius at the flange: turn it over and read both sides again. The section before: where the bias begins is where to cut.";

    public override Sentence Cut => $"Take the wall back on the side that carries the air, from where the bias begins, and leave the slow side.";

    public override Sentence Risk => $"Pushrod or water behind the wall. Swirl that the chamber wanted may go with the bias.";

    public override string Source => "common practice, no source; how chances are worked out: docs/theory/judgement.md; a ball's loss: docs/theory/balls.md";

    public override double Minutes => BenchMinutes.OnePlace + BenchMinutes.OnePlace;

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        var pairs = PlaceRead.AllOf(port).GroupBy(p => p.Station.Station.Id)
            .Select(g => (Centre: Nearest(g, 3), Wall: Nearest(g, 9)))
            .Where(p => p.Centre is not null && p.Wall is not null)
            // By one instrument on both sides, or by both: a ball here against a probe there are two places, not two sides.
            .Where(p => (p.Centre!.Air is not null && p.Wall!.Air is not null) || (p.Centre.Ball is not null && p.Wall!.Ball is not null))
            .Select(p => (Centre: p.Centre!, Wall: p.Wall!, CentreFaster: Faster(port, p.Centre!, p.Wall!), WallFaster: Faster(port, p.Wall!, p.Centre!))).ToList();
        var chances = Court.AtOneOf(Prior!.Value, [.. pairs.Select(p => (p.CentreFaster + p.WallFaster) / 2)]);
        return pairs.Zip(chances, (p, chance) => Found(port, p.Centre, p.Wall, p.CentreFaster >= p.WallFaster, chance));
    }

    /// <summary>Likelihood ratio of one side that is the faster: it is fast, or the other slow, or each by half.</summary>
    private static double Faster(PortSurvey port, PlaceRead fast, PlaceRead slow) =>
        (fast.RatioOfAWall(Fast) + slow.RatioOfAWall(Slow) + fast.Leaning(port, slow).RatioOfAWall(HalfFast)) / 3;

    private static PlaceRead? Nearest(IEnumerable<PlaceRead> places, double bearing) =>
        places.Where(p => WallState.Apart(p.Bearing, bearing) <= Side).MinBy(p => WallState.Apart(p.Bearing, bearing));

    private Finding Found(PortSurvey port, PlaceRead centre, PlaceRead wall, bool centreFaster, double chance)
    {
        var (busy, letter) = (centreFaster ? 3 : 9, centre.Station.Letter);
        return new Finding(
            this,
            FindingKind.Port,
            $"The {ViewWords.Metal(busy)} is the faster. {centre.Seen()} {wall.Seen()}",
            chance,
            centre.Station.Station,
            busy,
            [.. centre.Behind().Concat(wall.Behind()).Distinct()],
            centre.Ball is null || wall.Ball is null ? (Sentence)$"Hold a ball at {letter} at 3 and at 9 o'clock, one right after the other."
                : centre.Air is null || wall.Air is null ? (Sentence)$"Read a ring at {letter}."
                : $"Turn the radius at the flange over and hold the ball at {letter} at 3 and at 9 o'clock again.",
            JudgedCut.Of(port, $"Take the wall back at {letter}, {Bearings.Words(busy)}, from where the bias begins; leave the other side.", 0.06, 0.045, "busy side opened", busy))
        { Minutes = centre.Ball is not null && wall.Ball is not null && (centre.Air is null || wall.Air is null) ? BenchMinutes.OneRing : Minutes };
    }
}
