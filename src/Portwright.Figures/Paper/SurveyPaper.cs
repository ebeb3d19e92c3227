using Portwright.Geometry.Views;
using Portwright.Shop.Findings;
using Portwright.Shop.Runs;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;

namespace Portwright.Figures;

/// <summary>What was seen in the port on paper: the long view, the areas, a row of sections for each station, and what it says.</summary>
internal static class SurveyPaper
{
    private const double Gap = 12;

    public static void Put(PaperColumn column, PortSurvey survey, UnitSystem units, double left, double width, EngineAnswer? engine = null)
    {
        if (survey.Stations.Count == 0) return;
        var view = new View(Mirrored: survey.Sheet.Port.Fact.Mirrored);
        var findings = PortFindings.Of(survey);
        Said(column, survey, findings, units, left, width, engine);
        column.Space(10);
        Figure(column, LongViewDrawing.Of(survey, null, view, units, 760, findings: findings), left, width, 0.92 * width);
        if (survey.Schedule is not null) Figure(column, AreaScheduleFigure.Of(survey, units, new FigureSize(width, 170, 8.5), AreaTarget.Of(survey)), left, width, width);
        foreach (var station in survey.Stations) Station(column, survey, station, view, units, left, width);
    }

    private static void Figure(PaperColumn column, Drawing drawing, double left, double width, double shown)
    {
        var scale = shown / drawing.Width;
        column.Put(drawing.Height * scale + Gap, (pen, y) => Draw(pen, drawing, left + (width - shown) / 2, y, scale));
    }

    /// <summary>The drawings of a station that show something, three abreast.</summary>
    private static void Station(PaperColumn column, PortSurvey survey, SurveyedStation station, View view, UnitSystem units, double left, double width)
    {
        var shows = new List<SectionShows>();
        if (station.Ring is not null) shows.Add(SectionShows.Speeds);
        if (station.Balls.Count > 0) shows.Add(SectionShows.Balls);
        if (station.Flags.Count > 0 && shows.Count < 3) shows.Add(SectionShows.Flags);
        // Metal alone is drawn where it is thin; the rest is in the record.
        if (shows.Count < 3 && (station.Walls.Any(w => w.Stops) || (shows.Count > 0 && station.Walls.Count > 0))) shows.Add(SectionShows.Walls);
        if (shows.Count == 0) return;
        var each = (width - 2 * Gap) / 3;
        var drawings = shows.Select(s => SectionDrawing.Of(survey, station, view, s, units, 340)).ToList();
        var scale = each / 340;
        column.Put(16 + drawings.Max(d => d.Height) * scale + Gap, (pen, y) =>
        {
            pen.Text(left, y + 9, StationWords.Say(station, survey, units), 9.2, Role.Ink, Anchor.Start, Weight.SemiBold);
            for (var i = 0; i < drawings.Count; i++) Draw(pen, drawings[i], left + i * (each + Gap), y + 16, scale);
        });
    }

    private static void Said(PaperColumn column, PortSurvey survey, IReadOnlyList<Finding> findings, UnitSystem units, double left, double width, EngineAnswer? engine)
    {
        if (findings.Count == 0) return;
        column.Space(7);
        column.Put(14, (pen, y) => pen.Text(left, y + 9, "What it says", 9.2, Role.Ink, Anchor.Start, Weight.SemiBold), keep: 24);
        foreach (var finding in findings)
        {
            var words = $"{finding.Title}, {Confidence.Words(finding.Confidence)}. {FindingWords.Show(finding.Sentence, units)}"
                + (finding.Suggestion is { } cut ? $" Next cut: {FindingWords.Show(cut.What, units)} Expected {Print.WithDoubt(cut.Gain.Value, cut.Gain.Expanded(), Dimension.VolumeFlow, units)}{(NextCuts.TorqueOf(engine, survey, cut) is { } torque ? $", {EngineSentences.Signed(torque, units)} over the range" : "")}." : "");
            foreach (var line in Lettering.Wrap(words, 8.2, width - 10)) column.Put(10.8, (pen, y) => pen.Text(left, y + 8, line, 8.2));
            column.Space(1.5);
        }
    }

    private static void Draw(Pen pen, Drawing drawing, double x, double y, double scale)
    {
        foreach (var mark in Moved.To(drawing, x, y, scale)) pen.Put(mark);
    }
}
