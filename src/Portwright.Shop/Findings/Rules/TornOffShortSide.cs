using Portwright.Shop.Balls;
using Portwright.Shop.Record;
using Portwright.Shop.Survey;
using Portwright.Shop.Walls;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>The air leaves the floor where it turns down to the seat.</summary>
public sealed record TornOffShortSide() : FindingRule("short-side-torn-off", "The air is torn off the short side")
{
    public override Sentence Evidence => $"A ball, or a flag, on the floor at or after the bend; the ball with readings without it before and after.";

    public override Sentence Test => $"The flow rises with the ball on the floor of the bend (4 to 8 o'clock), or it loses less than two thirds of what moving air would cost there; a flag that hangs or turns back on the same floor adds to it. Probability from the doubt of the readings and of published sphere drag.";

    public override Sentence ElseExplains => $"Slow air because the section is too large there; a ball that sat on the wrong place; drift of the bench between readings.";

    public override Sentence LookFirst => $"Hold the ball one station before and one after at the same bearing; hold a flag at the place and look whether it turns back.";

    public override Sentence Cut => $"Lay the short side back to a larger radius and widen the floor there, so that the air has less to turn through. Take nothing off the apex alone.";

    public override Sentence Risk => $"Water or the seat's support under the short side; a short side laid back too far shortens the seat's backing and costs low lift.";

    public override string Source => "Separation on the inside of a bend: Miller, Internal Flow Systems (1990); the ball as its sign: common practice, no source";

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        foreach (var station in port.InTheBend)
        {
            var floor = station.Balls.Where(b => b.Response is not null && b.Bearing is { } h && WallState.Apart(h, 6) <= 2)
                .Select(b => (Ball: b, Response: b.Response!))
                .OrderByDescending(b => b.Response.ProbabilityTornOff + b.Response.ProbabilityLazy).ToList();
            if (floor.Count == 0)
            {
                continue;
            }

            var (ball, response) = floor[0];
            var flag = station.Flags.FirstOrDefault(f => f.Fact.Steadiness is Steadiness.Hangs or Steadiness.TurnsBack && f.Fact.Bearing is { } h && WallState.Apart(h, 6) <= 2);
            // A flag that turns back tells torn-off air from merely slow air; without one only a rising flow does.
            var probability = flag is null ? response.ProbabilityTornOff : response.ProbabilityTornOff + response.ProbabilityLazy;
            yield return new Finding(
                this,
                FindingKind.Port,
                Seen(ball, flag is not null),
                probability,
                station.Station,
                ball.Bearing,
                [.. ball.Readings.Select(r => r.Id), .. flag is null ? Array.Empty<Guid>() : [flag.Id]],
                flag is null ? (Sentence)$"Hold a flag at {station.Letter}, {Bearings.Words(ball.Bearing!.Value)}: if it turns back, the air is off." : Sentence.Empty,
                Suggestion(port, station));
        }
    }

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
