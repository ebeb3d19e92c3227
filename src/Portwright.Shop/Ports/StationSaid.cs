using Portwright.Shop.Survey;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Ports;

/// <summary>A station and what was observed there, in one sentence.</summary>
public static class StationSaid
{
    public static Sentence Of(SurveyedStation station, PortSurvey survey)
    {
        ArgumentNullException.ThrowIfNull(station);
        ArgumentNullException.ThrowIfNull(survey);
        List<Sentence> words = [$"Section {station.Name}", $"{Quantity.Length(station.Distance)} from the flange"];
        words.Add(station.Section is { } section ? (Sentence)$"area {Quantity.Of(section.Area, Dimension.Area).By(PortNumber.SectionKey(station))}"
            : station.SectionProblem.Length > 0 ? (Sentence)$"its numbers make no section" : $"section not measured yet");
        if (station.Section is { InAir.Count: > 0 } with) words.Add(Sentence.Plain($"{ShapeSaid.And(with.InAir.Select(i => i.Name))} taken off"));
        if (station.Section is not null && survey.Schedule?.Smallest is { } least && least.Distance == station.Distance) words.Add($"the smallest");
        Count(station.Rings.Count, "ring");
        Count(station.Balls.Count, "ball");
        Count(station.Flags.Count, "flag");
        Count(station.Walls.Count, "wall point");
        if (station.Walls.Any(w => w.Stops)) words.Add($"thin metal");
        return $"{Sentence.Join(", ", words)}.";

        void Count(int number, string one)
        {
            if (number > 0) words.Add(Sentence.Plain(FlowSaid.Count(number, one)));
        }
    }
}
