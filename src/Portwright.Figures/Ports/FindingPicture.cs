using Portwright.Geometry.Views;
using Portwright.Shop.Findings;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;

namespace Portwright.Figures;

/// <summary>
/// A finding's evidence as a small picture: the section with the one place it speaks of, else the flow curve with the lifts it speaks of,
/// else the areas along the port.
/// </summary>
public static class FindingPicture
{
    private const double Width = 184, Height = 132, T = 12;

    /// <summary>Draws the picture, 184 by 132.</summary>
    public static Drawing Of(PortSurvey survey, Finding finding, UnitSystem units = UnitSystem.UsCustomary, View? view = null)
    {
        ArgumentNullException.ThrowIfNull(survey);
        ArgumentNullException.ThrowIfNull(finding);
        var pen = new Pen();
        var caption = survey.Stations.FirstOrDefault(s => s.Station.Id == finding.Station?.Id) is { } station
            ? Section(pen, survey, station, finding, units, view ?? new View())
            : Along(pen, survey, finding, units);
        pen.Text(Width / 2, Height - 4, Lettering.Fit(caption, T, Width - 4), T, Role.Quiet, Anchor.Middle);
        return pen.Done(Width, Height, finding.Title, finding.Sentence.In(units));
    }

    private static string Section(Pen pen, PortSurvey survey, SurveyedStation station, Finding finding, UnitSystem units, View view)
    {
        var frame = new SectionFrame(SectionFrame.OutlineOf(survey, station), view, new Box(16, 16, 84, Height - 48));
        var behind = finding.Behind.ToHashSet();
        var ball = station.Balls.LastOrDefault(b => b.Readings.Any(r => behind.Contains(r.Id)));
        var wall = station.Walls.FirstOrDefault(w => behind.Contains(w.Point.Id));
        var ring = station.Rings.LastOrDefault(r => r.Map is not null && (behind.Contains(r.Ring.Id) || r.Readings.Any(p => behind.Contains(p.Reading.Id))));
        if (ball is null && wall is null && ring?.Map is { } filled) SectionSpeeds.Fill(pen, frame, filled);
        pen.Area(frame.Wall, null, new Stroke(Role.Ink, 2, station.Section is null ? LineType.Dashed : LineType.Continuous));
        (string Words, Role Role)[] beside = [];
        var at = finding.Bearing is { } hours ? frame.WallAt(hours) : frame.At(frame.Outline.BearingCentre);
        if (wall is not null)
        {
            SectionWalls.Bar(pen, frame, wall, T);
            at = frame.OffWall(wall.Point.Fact.Bearing, 6);
            beside = [($"{Print.Bare(wall.Thickness, Dimension.Lift, units)} {Print.UnitName(Dimension.Length, units)}", Role.Thin), ("thin", Role.Thin), ($"limit {Print.Bare(wall.Limit, Dimension.Lift, units)}", Role.Quiet)];
        }
        else if (ball is { Point: { } point })
        {
            at = frame.At(point);
            SectionBalls.Ring(pen, frame, ball, at, 1);
            BallMark.Draw(pen, at, 6, ball.Response?.Answer, 1.5);
            var (loss, answer) = BallMark.Short(ball, units);
            beside = [(loss, Role.Ink), (Print.UnitName(Dimension.VolumeFlow, units), Role.Quiet), (answer, Role.Ink)];
        }
        else if (ring?.Map is { } map)
        {
            var (fast, lazy) = (frame.At(map.Fastest.Point), frame.At(map.Laziest.Point));
            foreach (var (place, speed, row) in (ReadOnlySpan<(Place, double, int)>)[(fast, map.Fastest.Speed, fast.Y <= lazy.Y ? 0 : 2), (lazy, map.Laziest.Speed, fast.Y <= lazy.Y ? 2 : 0)])
            {
                var y = 40 + row * 1.5 * T;
                pen.Line(place.X, place.Y, 110, y - 0.35 * T, new Stroke(Role.Ink, 1));
                pen.Circle(place, 3.6, Role.Ground, new Stroke(Role.Ink, 1.2));
                pen.Text(113, y, Print.Number(speed, Dimension.Speed, units, 0), T);
            }
        }
        else
        {
            pen.Circle(at, 5.5, Role.Brass, new Stroke(Role.Ink, 1));
            if (station.Section is { } section) beside = [(Print.Number(section.Area.Value, Dimension.Area, units, units == UnitSystem.UsCustomary ? 2 : 0), Role.Ink)];
        }

        if (beside.Length > 0)
        {
            if (wall is not null || ball is not null) pen.Line(at.X, at.Y, 110, 44, new Stroke(Role.Ink, 1));
            // The line's end is drawn first: the shape lies over its start.
            if (ball is not null) BallMark.Draw(pen, at, 6, ball.Response?.Answer, 1.5);
            for (var i = 0; i < beside.Length; i++)
                pen.Text(113, 48 + 1.25 * T * i, Lettering.Fit(beside[i].Words, T, Width - 115), T, beside[i].Role, Anchor.Start, i == 0 ? Weight.SemiBold : Weight.Regular);
        }

        return finding.Bearing is { } bearing ? FormattableString.Invariant($"{station.Letter}, {bearing:0.#} o'clock, {Short(bearing)}") : $"section {station.Letter}";
    }

    private static string Short(double bearing) => ViewWords.Metal(bearing).Replace("between ", "", StringComparison.Ordinal).Replace(" and ", " to ", StringComparison.Ordinal);

    private static string Along(Pen pen, PortSurvey survey, Finding finding, UnitSystem units)
    {
        var behind = finding.Behind.ToHashSet();
        var sections = survey.Sections.ToList();
        var onCurve = survey.Sheet.Flow is { } f && (f.Sweeps.Any(s => behind.Contains(s.Sweep.Id)) || f.Curve.Points.SelectMany(p => p.Readings).Any(r => behind.Contains(r.Reading.Id)));
        if (!onCurve && survey.Schedule is { } schedule && sections.Exists(s => behind.Contains(s.Section.Id)))
        {
            Line(pen, [.. schedule.Stations.Select(s => (s.Distance, s.Area, sections.Exists(x => x.Station.Fact.Letter == s.Name && behind.Contains(x.Section.Id))))]);
            return "area along the port";
        }

        if (survey.Sheet.Flow is { } flow)
        {
            var points = flow.Curve.Points.Where(p => p.Lift > 0).ToList();
            Line(pen, [.. points.Select(p => (p.Lift, p.Flow.Value, finding.Lifts.Contains(p.Lift)))]);
            return points.Count > 0 ? $"flow over lift, to {Print.Number(points[^1].Lift, Dimension.Lift, units)}" : "flow over lift";
        }

        pen.Text(Width / 2, Height / 2, "no drawing of this", T, Role.Quiet, Anchor.Middle);
        return finding.Rule.Name;
    }

    private static void Line(Pen pen, IReadOnlyList<(double X, double Y, bool Here)> points)
    {
        pen.Segments([(new(16, 10), new(16, Height - 30)), (new(16, Height - 30), new(Width - 10, Height - 30))], new Stroke(Role.Quiet, 1.2));
        if (points.Count == 0) return;
        var (low, high) = (points.Min(p => p.Y), points.Max(p => p.Y));
        var across = new Scale(points.Min(p => p.X), Math.Max(points.Max(p => p.X), points.Min(p => p.X) + 1e-9), 26, Width - 20);
        var up = new Scale(low, Math.Max(high, low + 1e-12), Height - 40, 20);
        pen.Polyline(points.Select(p => new Place(across.At(p.X), up.At(p.Y))), new Stroke(Role.Blue, 2));
        foreach (var (x, y, here) in points)
        {
            var at = new Place(across.At(x), up.At(y));
            pen.Circle(at, 3, Role.Blue);
            if (here) pen.Circle(at, 7.5, null, new Stroke(Role.Brass, 2));
        }
    }
}
