using Portwright.Shop.Families;
using Portwright.Shop.Judgement;
using Portwright.Shop.Survey;
using Portwright.Shop.Walls;

namespace Portwright.Shop.Findings;

/// <summary>The places of a port that a rule of the air looks at, and how likely its fault sits at each.</summary>
internal static class Places
{
    /// <summary>Places within some hours of a bearing.</summary>
    public static IReadOnlyList<PlaceRead> Near(this IEnumerable<PlaceRead> places, double bearing, double reach) =>
        [.. places.Where(p => WallState.Apart(p.Bearing, bearing) <= reach)];

    /// <summary>Places at some stations.</summary>
    public static IEnumerable<PlaceRead> Of(PortSurvey port, IEnumerable<SurveyedStation> stations)
    {
        var at = stations.Select(s => s.Station.Id).ToHashSet();
        return PlaceRead.AllOf(port).Where(p => at.Contains(p.Station.Station.Id));
    }

    /// <summary>
    /// The surest place of each station with its chance: the prior is the port's and shared by all places looked at; places of one section that are
    /// fast or slow together are one fault.
    /// </summary>
    public static IEnumerable<(PlaceRead Place, double Chance)> Judged(IReadOnlyList<PlaceRead> places, double prior, Func<PlaceRead, double> ratio)
    {
        var chances = Court.AtOneOf(prior, [.. places.Select(ratio)]);
        return places.Zip(chances).GroupBy(p => p.First.Station.Station.Id)
            .Select(g => (g.MaxBy(p => p.Second).First, Math.Min(Court.Surest, g.Sum(p => p.Second))));
    }
}
