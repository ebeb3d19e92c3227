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
            blocks.Add(new Values("balls", [.. balls.Select((b, i) => new NamedValue(
                FormattableString.Invariant($"ball-{i + 1}"),
                $"{b.Station.Fact.Letter}, {(b.Bearing is { } hours ? Bearings.Words(hours) : "middle")}",
                SurveyWords.Of(b)))]));
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
}
