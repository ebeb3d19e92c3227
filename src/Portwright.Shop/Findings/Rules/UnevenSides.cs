using Portwright.Physics.Uncertainty;
using Portwright.Shop.Survey;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>One side of the port carries more than the other.</summary>
public sealed record UnevenSides() : FindingRule("uneven-sides", "The sides are uneven")
{
    /// <summary>A side faster than the other by this share of the mean is uneven; common practice, no source.</summary>
    public const double Bias = 0.08;

    /// <summary>What a ball takes goes with the cube of the speed (drag times speed): so much more on the faster side (docs/theory/balls.md).</summary>
    public static double BallRatio => Math.Pow(1 + Bias, 3);

    /// <summary>Hours to each side of 3 and 9 that are the sides.</summary>
    private const double Side = 1;

    public override Sentence Evidence => $"A ring with readings on both sides, or a ball at 3 and at 9 o'clock of one section.";

    public override Sentence Test => $"The map's mean of one half less that of the other is over 8 percent of the section's mean, or the ball takes over 1.26 times (1.08 cubed) as much on one side as on the other. The probability is that at least one of the two is so on the same side.";

    public override Sentence ElseExplains => $"A port that comes in at an angle puts the air to one side, wanted or not; a clay radius at the flange that sits crooked; swirl, which leans the air and misleads the probe.";

    public override Sentence LookFirst => $"The radius at the flange: turn it over and read both sides again. The section before: where the bias begins is where to cut.";

    public override Sentence Cut => $"Take the wall back on the side that carries the air, from where the bias begins, and leave the slow side.";

    public override Sentence Risk => $"Pushrod or water behind the wall. Swirl that the chamber wanted may go with the bias.";

    public override string Source => "common practice, no source; side balance and its doubt: docs/theory/rings.md; a ball's loss: docs/theory/balls.md";

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        foreach (var station in port.Stations)
        {
            var balance = station.Ring?.Map is { } map ? Estimate.Ratio(map.SideBalance, map.Mean) : null;
            var balls = Balls(station);
            if (balance is null && balls is null)
            {
                continue;
            }

            var centre = On(balance, balls?.Centre, balls?.Wall);
            var wall = On(balance?.Scale(-1), balls?.Wall, balls?.Centre);
            yield return Found(port, station, balance, balls, centre >= wall ? 3 : 9, Math.Max(centre, wall));
        }
    }

    private Finding Found(PortSurvey port, SurveyedStation station, Estimate? balance, (LocalBall Centre, LocalBall Wall)? balls, double busy, double confidence)
    {
        var seen = new List<Sentence>();
        if (balance is not null)
        {
            seen.Add($"the {(balance.Value > 0 ? "centre side" : "cylinder-wall side")} is faster than the other by {Quantity.Share(Math.Abs(balance.Value))} of the mean, give or take {Quantity.Share(balance.Expanded())}");
        }

        if (balls is { } pair)
        {
            var verdict = Comparison.Compare(pair.Wall.Ball.Fall, pair.Centre.Ball.Fall).Verdict;
            seen.Add($"the ball lost {Quantity.Flow(pair.Centre.Ball.Loss)} on the centre side, {Quantity.Flow(pair.Wall.Ball.Loss)} on the cylinder-wall side: {(verdict == Verdict.Real ? "a real difference" : VerdictWords.Key(verdict))}");
        }

        return new Finding(
            this,
            FindingKind.Port,
            Sentence.Join("; ", seen).Whole(),
            confidence,
            station.Station,
            busy,
            [
                .. station.Ring is { Map: not null } ring ? ring.Readings.Select(r => r.Reading.Id).Append(ring.Ring.Id).Append(ring.Section.Section.Id) : [],
                .. balls is { } two ? two.Centre.Behind.Concat(two.Wall.Behind) : [],
            ],
            balls is null ? (Sentence)$"Hold a ball at {station.Letter} at 3 and at 9 o'clock, one right after the other."
                : balance is null ? (Sentence)$"Read a ring at {station.Letter}." : $"Turn the radius at the flange over and hold the ball at {station.Letter} at 3 and at 9 o'clock again.",
            JudgedCut.Of(port, $"Take the wall back at {station.Letter}, {Bearings.Words(busy)}, from where the bias begins; leave the other side.", 0.05, 0.05, "busy side opened", busy));
    }

    /// <summary>Probability that the first side is the busy one.</summary>
    private static double On(Estimate? balance, LocalBall? here, LocalBall? there) => Confidence.Either(
        balance is null ? 0 : Confidence.Above(balance, Bias),
        here is null || there is null ? 0
            // The far side may have lost nothing, or less than nothing: then any fall here is more.
            : Confidence.Above(Estimate.Combine((1, here.Ball.Fall), (-BallRatio, there.Ball.Fall)), 0) * Confidence.Above(here.Ball.Fall, 0));

    /// <summary>Two balls of one check, one on each side, read often enough to compare.</summary>
    private static (LocalBall Centre, LocalBall Wall)? Balls(SurveyedStation station)
    {
        var centre = LocalBall.Near(station, 3, Side).ToList();
        foreach (var wall in LocalBall.Near(station, 9, Side))
        {
            if (centre.Find(c => c.Ball.Check.Id == wall.Ball.Check.Id) is { } other)
            {
                return (other, wall);
            }
        }

        return null;
    }
}
