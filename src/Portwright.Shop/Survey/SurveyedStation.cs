using Portwright.Shop.Balls;
using Portwright.Shop.Record;
using Portwright.Shop.Rings;
using Portwright.Shop.Sections;
using Portwright.Shop.Walls;

namespace Portwright.Shop.Survey;

/// <summary>All that was observed at one station at one cut.</summary>
/// <param name="Section">As last measured; null where it never was.</param>
/// <param name="SectionProblem">Why the last section's numbers make none; empty where they do.</param>
public sealed record SurveyedStation(
    Kept<Station> Station,
    ReducedSection? Section,
    string SectionProblem,
    IReadOnlyList<ReducedRing> Rings,
    IReadOnlyList<BallPlace> Balls,
    IReadOnlyList<Kept<FlagReading>> Flags,
    IReadOnlyList<WallState> Walls)
{
    /// <summary>The ring at the highest lift that made a map: what the station's air looks like when it matters most.</summary>
    public ReducedRing? Ring => Rings.Where(r => r.Map is not null).OrderBy(r => r.Lift).LastOrDefault();

    /// <summary>m, from the flange along the centreline.</summary>
    public double Distance => Station.Fact.Distance;

    public string Letter => Station.Fact.Letter;

    /// <summary>As stated or as its name says; null where neither tells.</summary>
    public StationRole? Role => Station.Fact.RoleRead;

    /// <summary>Letter and what lies there: <c>C, short side</c>.</summary>
    public string Name => Station.Fact.Mark.Length > 0 ? $"{Letter}, {Station.Fact.Mark}" : Letter;
}
