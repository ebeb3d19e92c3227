using Portwright.Geometry.Schedules;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;

namespace Portwright.Figures;

/// <summary>A target of the plan at a place along the port: area from and to, m2, at a distance from the flange, m.</summary>
public sealed record AreaTarget(double Distance, double From, double To)
{
    /// <summary>What the plan wants of this port from its first station to its last; empty where the plan does not say.</summary>
    public static IReadOnlyList<AreaTarget> Of(PortSurvey survey)
    {
        ArgumentNullException.ThrowIfNull(survey);
        return survey is { AreaWanted: var (least, most), Schedule: { } schedule }
            ? [new(schedule.Stations[0].Distance, least, most), new(schedule.Stations[^1].Distance, least, most)]
            : [];
    }
}

/// <summary>
/// Area over distance from the flange: stations with their doubt, the line between them, the smallest section marked, the share of the
/// valve's area on the scale at the right, the plan's target as a band behind.
/// </summary>
public static class AreaScheduleFigure
{
    /// <summary>Draws the schedule.</summary>
    /// <param name="target">The plan's band from the flange inwards; null or fewer than two: none.</param>
    public static Drawing Of(PortSurvey survey, UnitSystem units, FigureSize? size = null, IReadOnlyList<AreaTarget>? target = null)
    {
        ArgumentNullException.ThrowIfNull(survey);
        var room = size ?? new FigureSize(760, 360, 15);
        var t = room.Text;
        var pen = new Pen();
        var sections = survey.Stations.Where(s => s.Section is not null).ToList();
        var title = $"Areas of {survey.Sheet.Port.Fact.Name}";
        if (survey.Schedule is not { } schedule)
        {
            const string sentence = "Measure two sections or more: the area along the port goes here.";
            pen.Segments([(new(3 * t, 2 * t), new(3 * t, room.Height - 3 * t)), (new(3 * t, room.Height - 3 * t), new(room.Width - 2 * t, room.Height - 3 * t))], new Stroke(Role.Quiet, room.Thick(1.2)));
            pen.Polyline(Enumerable.Range(0, 33).Select(i => new Place(3 * t + i / 32.0 * (room.Width - 5 * t), room.Height * (0.45 + 0.14 * Math.Cos(i / 32.0 * 5)))), new Stroke(Role.Hairline, room.Thick(2), LineType.Dashed));
            var y = room.Height * 0.62;
            foreach (var line in Lettering.Wrap(sentence, t, room.Width - 8 * t))
            {
                pen.Text(room.Width / 2, y, line, t, Role.Quiet, Anchor.Middle);
                y += 1.3 * t;
            }

            return pen.Done(room.Width, room.Height, title, sentence);
        }

        var axes = new ScheduleAxes(survey, schedule, sections, target ?? [], room, units);
        if (target is { Count: >= 2 })
            pen.Area(target.Select(p => axes.At(p.Distance, p.To)).Concat(target.Reverse().Select(p => axes.At(p.Distance, p.From))), Role.Noise);
        axes.Draw(pen);
        var (first, last) = (schedule.Stations[0].Distance, schedule.Stations[^1].Distance);
        pen.Polyline(Enumerable.Range(0, 97).Select(i => first + (last - first) * i / 96).Select(d => axes.At(d, schedule.AreaAt(d))), new Stroke(Role.Blue, room.Thick(2.2)));
        Points(pen, axes, sections, schedule, room, units, target is { Count: >= 2 } ? axes.At(target[^1].Distance, target[^1].To) : null);
        var least = schedule.Smallest;
        var words = $"{sections.Count} sections; smallest {least.Name}, {Print.Number(least.Area, Dimension.Area, units)}, {Print.Number(least.Distance, Dimension.Length, units)} from the flange. "
            + string.Join("; ", sections.Select(s => $"{s.Letter} {Print.WithDoubt(s.Section!.Area.Value, s.Section.Area.Expanded(), Dimension.Area, units)}")) + ".";
        return pen.Done(room.Width, room.Height, title, words);
    }

    private static void Points(Pen pen, ScheduleAxes axes, List<SurveyedStation> sections, AreaSchedule schedule, FigureSize room, UnitSystem units, Place? target)
    {
        var t = room.Text;
        var labels = new LabelPlaces(new Box(axes.Left, 1.6 * t, axes.Right - axes.Left, axes.Bottom - 1.7 * t));
        labels.Avoid([.. Enumerable.Range(0, 49).Select(i => schedule.Stations[0].Distance + schedule.Length * i / 48).Select(d => axes.At(d, schedule.AreaAt(d)))]);
        foreach (var station in sections)
        {
            var area = station.Section!.Area;
            var at = axes.At(station.Distance, area.Value);
            var (top, bottom) = (axes.At(station.Distance, area.Value + area.Expanded()).Y, axes.At(station.Distance, area.Value - area.Expanded()).Y);
            var cap = room.Thick(5);
            pen.Segments([(new(at.X, top), new(at.X, bottom)), (new(at.X - cap, top), new(at.X + cap, top)), (new(at.X - cap, bottom), new(at.X + cap, bottom))], new Stroke(Role.Ink, room.Thick(1.2)));
            var smallest = station.Distance == schedule.Smallest.Distance;
            pen.Circle(at, room.Thick(4.2), Role.Blue);
            if (smallest) pen.Circle(at, room.Thick(9), null, new Stroke(Role.Ink, room.Thick(1.6)));
            labels.Take(new Box(at.X, Math.Min(top, at.Y - cap), 0, Math.Max(bottom, at.Y + cap) - Math.Min(top, at.Y - cap)).Grown(cap));
        }

        foreach (var station in sections)
        {
            var smallest = station.Distance == schedule.Smallest.Distance;
            var words = Print.Bare(station.Section!.Area.Value, Dimension.Area, units, units == UnitSystem.UsCustomary ? 2 : 0);
            if (smallest) words = $"smallest {words}";
            var at = axes.At(station.Distance, station.Section.Area.Value);
            var weight = smallest ? Weight.SemiBold : Weight.Regular;
            if (labels.Find(at, Lettering.Width(words, t, weight), t, room.Thick(smallest ? 11 : 8)) is { } box)
                pen.Text(box.X, box.Y + 0.8 * t, words, t, Role.Ink, Anchor.Start, weight);
        }

        if (target is { } end && labels.Find(new(end.X - 3 * t, end.Y), Lettering.Width("target", t), t, 0.2 * t) is { } free) pen.Text(free.X, free.Y + 0.8 * t, "target", t, Role.Quiet);
    }
}
