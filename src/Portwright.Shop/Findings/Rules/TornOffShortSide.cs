using Portwright.Shop.Balls;
using Portwright.Shop.Families;
using Portwright.Shop.Judgement;
using Portwright.Shop.Record;
using Portwright.Shop.Survey;
using Portwright.Shop.Walls;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>The air leaves the floor where it turns down to the seat.</summary>
public sealed record TornOffShortSide() : FindingRule("short-side-torn-off", "The air is torn off the short side")
{
    /// <summary>A flag hangs or turns back in torn-off air this often, and in air on the wall; common practice, no source.</summary>
    public const double HangsTornOff = 0.7, HangsOnTheWall = 0.04;

    /// <inheritdoc/>
    public override double? Prior => FloorAir.TornOffPrior;

    public override Sentence Evidence => $"A ball, or a flag, on the floor at or after the bend; the ball with readings without it before and after.";

    public override Sentence Test => $"On the floor of the bend (4 to 8 o'clock) the flow rises with the ball, or the ball loses next to nothing of what it takes elsewhere in this port, against air that follows the wall as sound ports show it, lazy air, and a probe there that finds it sound; a flag that hangs or turns back there does so in 7 of 10 torn-off places and in 4 of 100 others.";

    public override Sentence ElseExplains => $"Slow air because the section is too large there; a ball that sat on the wrong place; drift of the bench between readings.";

    public override Sentence LookFirst => $"Hold the ball one station before and one after at the same bearing; hold a flag at the place and look whether it turns back.";

    public override Sentence Cut => $"Lay the short side back to a larger radius and widen the floor there, so that the air has less to turn through. Take nothing off the apex alone.";

    public override Sentence Risk => $"Water or the seat's support under the short side; a short side laid back too far shortens the seat's backing and costs low lift.";

    public override string Source => "Separation on the inside of a bend: Miller, Internal Flow Systems (1990); the ball as its sign: common practice, no source; how chances are worked out: docs/theory/judgement.md";

    public override double Minutes => BenchMinutes.OnePlace;

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        return Judged(port).Select(j => Found(port, j.Place, j.Flag, j.Chance));
    }

    private IEnumerable<(PlaceRead Place, Kept<FlagReading>? Flag, double Chance)> Judged(PortSurvey port)
    {
        var looked = FloorAir.MayBeTornOff(port);
        var flags = looked.Select(p => p.Station.Flags.Where(f => f.Fact.Bearing is { } h && FloorAir.IsFloor(h) && WallState.Apart(h, p.Bearing) <= 1).ToList()).ToList();
        var chances = Court.AtOneOf(Prior!.Value, [.. looked.Select((p, i) => FloorAir.TornOff(p, looked.Count) * ByFlags(flags[i]))]);
        return looked.Select((p, i) => (Place: p, Flag: flags[i].Find(Hangs), Chance: chances[i]))
            .GroupBy(j => j.Place.Station.Station.Id)
            .Select(g => (g.MaxBy(j => j.Chance).Place, g.MaxBy(j => j.Chance).Flag, Math.Min(Court.Surest, g.Sum(j => j.Chance))));
    }

    private static bool Hangs(Kept<FlagReading> flag) => flag.Fact.Steadiness is Steadiness.Hangs or Steadiness.TurnsBack;

    private static double ByFlags(List<Kept<FlagReading>> flags) =>
        flags.Aggregate(1.0, (ratio, f) => ratio * (Hangs(f) ? HangsTornOff / HangsOnTheWall : (1 - HangsTornOff) / (1 - HangsOnTheWall)));

    private Finding Found(PortSurvey port, PlaceRead place, Kept<FlagReading>? flag, double chance) => new(
        this,
        FindingKind.Port,
        Seen(place.Ball!, flag is not null),
        chance,
        place.Station.Station,
        place.Bearing,
        [.. place.Ball!.Readings.Select(r => r.Id), .. flag is null ? Array.Empty<Guid>() : [flag.Id]],
        flag is null ? (Sentence)$"Hold a flag at {place.Station.Letter}, {Bearings.Words(place.Bearing)}: if it turns back, the air is off." : Sentence.Empty,
        Suggestion(port, place.Station));

    private static Sentence Seen(BallPlace ball, bool flag)
    {
        var seen = ball.Fall.Value < 0
            ? (Sentence)$"With the ball at {Bearings.Words(ball.Bearing!.Value)} the flow rose by {Quantity.Flow(ball.Loss.Scale(-1))}"
            : $"The ball at {Bearings.Words(ball.Bearing!.Value)} lost {Quantity.Flow(ball.Loss)} of {Quantity.Flow(ball.Expected!.Value)} expected";
        return $"{seen}{(flag ? ", and a flag there hangs or turns back." : ".")}";
    }

    private static CutSuggestion? Suggestion(PortSurvey port, SurveyedStation station)
    {
        if (port.LiftThatCounts is not { } top || port.Sheet.Flow is not { } flow)
        {
            return null;
        }

        // A bend whose air stays on costs about half of one whose air leaves: Miller's charts of rounded against sharp bends, read roughly.
        var from = Math.Max(flow.Curve.LowestLift, top / 2);
        return ExpectedGain.OfPort(port, ExpectedGain.Judged(0.15, 0.08, "short side laid back"), from, top) is { } gain
            ? new CutSuggestion($"Lay the short side back at {station.Letter}, larger radius, floor wider; leave the apex height.", gain, from, top, 6, 2.5)
            : null;
    }
}
