using Portwright.Shop.Balls;
using Portwright.Shop.Findings.Rules;
using Portwright.Shop.Survey;
using Portwright.Shop.Words;

namespace Portwright.Shop.Ports;

/// <summary>What the balls and flags said, place by place.</summary>
internal static class BallsSaid
{
    public static Part? Of(PortAtCut port)
    {
        List<Block> blocks = [];
        if (port.Survey.Balls.ToList() is { Count: > 0 } balls)
        {
            blocks.Add(new Values("balls", [.. balls.Select((b, i) => (Ball: b, Number: i)).OrderBy(b => At(port, b.Ball)).Select(b => new NamedValue(
                FormattableString.Invariant($"ball-{b.Number + 1}"),
                $"{b.Ball.Station.Fact.Letter}, {(b.Ball.Bearing is { } hours ? Bearings.Words(hours) : "middle")}",
                $"{SurveyWords.Of(b.Ball, PortNumber.BallKey(b.Number))}{(Disputed(port, b.Ball) ? "; the probe contradicts it" : "")}"))]));
        }

        var flags = port.Survey.Stations.SelectMany(s => s.Flags.Select(f => (Station: s, Flag: f.Fact))).ToList();
        if (flags.Count > 0)
        {
            blocks.Add(new Values("flags", [.. flags.Select((f, i) => new NamedValue(
                FormattableString.Invariant($"flag-{i + 1}"),
                $"flag at {f.Station.Letter}, {(f.Flag.Bearing is { } hours ? Bearings.Words(hours) : "middle")}",
                Sentence.Plain(SurveyWords.Of(f.Flag.Steadiness))))]));
        }

        return blocks.Count == 0 ? null : new Part("balls", $"Balls and flags", blocks);
    }

    /// <summary>Where along the port: its stations from flange to seat.</summary>
    private static double At(PortAtCut port, BallPlace ball) => port.Survey.Stations.First(s => s.Station.Id == ball.Station.Id).Distance;

    private static bool Disputed(PortAtCut port, BallPlace ball) => port.Findings.Any(f =>
        f.Rule is InstrumentsDisagree && f.Station?.Id == ball.Station.Id && f.Behind.Contains(ball.Readings[0].Id));
}
