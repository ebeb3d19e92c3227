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
    /// <summary>One side over the other where they are uneven, as a logarithm of the speed; judgement.</summary>
    public static readonly Step Uneven = new(0.26, 1.5, StepWay.EitherWay);

    /// <summary>Sides of a sound port differ so, standard deviation of the logarithm, where no sister was read: ports come in at an angle. Judgement.</summary>
    public const double UsualBias = 0.08;

    /// <inheritdoc/>
    public override double? Prior => 0.15;

    /// <summary>Hours to each side of 3 and 9 that are the sides.</summary>
    private const double Side = 1;

    public override Sentence Evidence => $"Readings of the probe at 3 and at 9 o'clock of one section, or a ball at both.";

    public override Sentence Test => $"By probe and ball together one side is faster than the other by more than in sound ports: than in the sister ports read at both sides, or where none was, than by about {UsualBias * 100:0} percent either way. What a ball shares with its other places cancels.";

    public override Sentence ElseExplains => $"A port that comes in at an angle puts the air to one side, wanted or not; a clay radius at the flange that sits crooked; swirl, which leans the air and misleads the probe.";

    public override Sentence LookFirst => $"The radius at the flange: turn it over and read both sides again. The section before: where the bias begins is where to cut.";

    public override Sentence Cut => $"Take the wall back on the side that carries the air, from where the bias begins, and leave the slow side.";

    public override Sentence Risk => $"Pushrod or water behind the wall. Swirl that the chamber wanted may go with the bias.";

    public override string Source => "common practice, no source; how chances are worked out: docs/theory/judgement.md; a ball's loss: docs/theory/balls.md";

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        var pairs = PlaceRead.AllOf(port).GroupBy(p => p.Station.Station.Id)
            .Select(g => (Centre: Nearest(g, 3), Wall: Nearest(g, 9)))
            .Where(p => p.Centre is not null && p.Wall is not null)
            .Select(p => Apart(p.Centre!, p.Wall!)).OfType<(PlaceRead Centre, PlaceRead Wall, double Off, double Scatter)>().ToList();
        var chances = Court.AtOneOf(Prior!.Value, [.. pairs.Select(p => Uneven.Ratio(p.Off, p.Scatter, Degrees))]);
        return pairs.Zip(chances, (p, chance) => Found(port, p.Centre, p.Wall, p.Off, chance));
    }

    /// <summary>Degrees of freedom behind the usual scatter of sound sides; judgement.</summary>
    private const double Degrees = 30;

    private static PlaceRead? Nearest(IEnumerable<PlaceRead> places, double bearing) =>
        places.Where(p => WallState.Apart(p.Bearing, bearing) <= Side).MinBy(p => WallState.Apart(p.Bearing, bearing));

    /// <summary>How far the sides differ from what sound ports show, and what such a difference scatters; null where they cannot be compared.</summary>
    private static (PlaceRead Centre, PlaceRead Wall, double Off, double Scatter)? Apart(PlaceRead centre, PlaceRead wall)
    {
        // By one instrument on both sides, or by both: a ball here against a probe there shares nothing that cancels.
        if (centre.Said.Best is not { } a || wall.Said.Best is not { } b || ((centre.Air is null || wall.Air is null) && (centre.Ball is null || wall.Ball is null)))
        {
            return null;
        }

        var alone = centre.Sisters == 0 || wall.Sisters == 0;
        var usual = alone ? UsualBias * UsualBias : centre.Spread * centre.Spread + wall.Spread * wall.Spread;
        return (centre, wall, a.Mean - b.Mean - (alone ? 0 : centre.Usual - wall.Usual), Math.Sqrt(usual + a.Spread * a.Spread + b.Spread * b.Spread));
    }

    private Finding Found(PortSurvey port, PlaceRead centre, PlaceRead wall, double off, double chance)
    {
        var (busy, letter) = (off >= 0 ? 3 : 9, centre.Station.Letter);
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
            JudgedCut.Of(port, $"Take the wall back at {letter}, {Bearings.Words(busy)}, from where the bias begins; leave the other side.", 0.06, 0.045, "busy side opened", busy));
    }
}
