using System.Globalization;
using Portwright.Cli.Terminal;
using Portwright.Geometry.Schedules;
using Portwright.Geometry.Views;
using Portwright.Shop.Findings;
using Portwright.Shop.Runs;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;

namespace Portwright.Cli.Sheet;

/// <summary>What was seen in the port, as plain text at 80 columns: sections, rings, balls, and what it says.</summary>
internal sealed class SurveyPage(Page page, PortSurvey survey, IReadOnlyList<Finding> findings, UnitSystem units, EngineAnswer? engine = null)
{
    public void Write()
    {
        Sections();
        Balls();
        Findings();
    }

    private void Sections()
    {
        var measured = survey.Stations.Where(s => s.Section is not null).ToList();
        if (measured.Count == 0) return;
        page.Line();
        page.Line($"sections, mean speed at lift {(survey.LiftThatCounts is { } lift ? Print.Bare(lift, Dimension.Lift, units) : "-")} in standard air");
        foreach (var station in measured)
        {
            var section = station.Section!;
            var words = new List<string> { Print.WithDoubt(section.Area.Value, section.Area.Expanded(), Dimension.Area, units) };
            if (survey.Sheet.Port.Fact.Valve is { } valve) words.Add(FormattableString.Invariant($"{AreaSchedule.ShareOfValve(section.Area.Value, valve.HeadDiameter) * 100:0} % of the valve"));
            if (survey.StreamAt(section) is { } stream) words.Add(Print.Number(stream.Speed, Dimension.Speed, units, 0));
            if (station.Ring is { Map: { } map } ring)
            {
                words.Add(FormattableString.Invariant($"evenness {map.UniformityIndex:0.00}"));
                if (ring.Closure is { } closure) words.Add(FormattableString.Invariant($"ring {closure.Relative * 100:+0.0;-0.0} % of bench{(closure.IsInside ? "" : ", outside its doubt")}"));
            }
            page.Pair($"{station.Letter} at {Print.Number(station.Distance, Dimension.Length, units, units == UnitSystem.Si ? 1 : 2)} {station.Station.Fact.Mark}".TrimEnd(), string.Join(", ", words));
        }
        if (survey.Volume is { } gap) page.Pair("burette less sections", Print.WithDoubt(gap.Difference, 2 * gap.Standard, Dimension.Volume, units));
    }

    private void Balls()
    {
        var balls = survey.Balls.ToList();
        if (balls.Count == 0) return;
        page.Line();
        page.Line("balls");
        foreach (var ball in balls)
            page.Pair(string.Create(CultureInfo.InvariantCulture, $"{ball.Station.Fact.Letter} {(ball.Bearing is { } hours ? $"{hours:0.#} {ViewWords.Metal(hours)}" : "middle")}"), SurveyWords.Of(ball, units));
    }

    private void Findings()
    {
        if (findings.Count == 0) return;
        page.Line();
        page.Line("what it says");
        foreach (var finding in findings)
        {
            page.Paragraph($"- {finding.Title}, {Confidence.Words(finding.Confidence)}. {FindingWords.Show(finding.Sentence, units)}", 2, 2);
            if (finding.Suggestion is { } cut) page.Paragraph($"Next cut: {FindingWords.Show(cut.What, units)} Expected {Print.WithDoubt(cut.Gain.Value, cut.Gain.Expanded(), Dimension.VolumeFlow, units)}{(NextCuts.TorqueOf(engine, survey, cut) is { } torque ? $", {EngineSentences.Signed(torque, units)} over the range" : "")}.", 4);
            else if (finding.NextObservation.Length > 0) page.Paragraph($"Before cutting: {FindingWords.Show(finding.NextObservation, units)}", 4);
        }
    }
}
