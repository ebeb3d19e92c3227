using Portwright.Shop.Survey;
using Portwright.Shop.Units;

namespace Portwright.Figures;

/// <summary>A station and what was observed there, in one sentence.</summary>
internal static class StationWords
{
    public static string Say(SurveyedStation station, PortSurvey survey, UnitSystem units)
    {
        var words = new List<string> { $"station {station.Letter}" };
        if (station.Station.Fact.Mark.Length > 0) words.Add(station.Station.Fact.Mark);
        words.Add($"{Print.Number(station.Distance, Dimension.Length, units)} from the flange");
        words.Add(station.Section is { } section
            ? $"area {Print.WithDoubt(section.Area.Value, section.Area.Expanded(), Dimension.Area, units)}"
            : station.SectionProblem.Length > 0 ? "its section's numbers make none" : "section not measured yet");
        if (station.Section is not null && survey.Schedule?.Smallest is { } least && least.Distance == station.Distance) words.Add("the smallest section");
        Count(words, station.Rings.Count, "ring", "rings");
        Count(words, station.Balls.Count, "ball", "balls");
        Count(words, station.Flags.Count, "flag", "flags");
        Count(words, station.Walls.Count, "wall point", "wall points");
        if (station.Walls.Any(w => w.Stops)) words.Add("thin metal");
        return string.Join(", ", words);
    }

    private static void Count(List<string> words, int count, string one, string many)
    {
        if (count > 0) words.Add(count == 1 ? $"one {one}" : $"{count} {many}");
    }
}
