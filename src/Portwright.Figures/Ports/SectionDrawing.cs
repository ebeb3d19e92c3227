using System.Globalization;
using Portwright.Geometry;
using Portwright.Geometry.Views;
using Portwright.Shop.Ports;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;

namespace Portwright.Figures;

/// <summary>What a drawing of a section shows.</summary>
public enum SectionShows
{
    /// <summary>The ring: air speed over the section.</summary>
    Speeds,
    Balls,
    Flags,

    /// <summary>Thickness of the metal round about.</summary>
    Walls,
}

/// <summary>
/// The section at a station as the view shows it: its outline, the hours of the metal ticked round it, what was recorded at its place, and a
/// place to touch at every hour and in the middle. The hours are the record's, so they run backwards where the view swaps the sides.
/// </summary>
public static class SectionDrawing
{
    private const double Finger = 44;

    /// <summary>Room over and under the outline, in letters: hours, two lines, the name of the metal.</summary>
    private const double Over = 6.8;

    /// <summary>Draws the section.</summary>
    /// <param name="width">Room, 300 or more; under 480 the letters are those of a phone.</param>
    /// <param name="href">Where touching a bearing leads (null: the middle); null: the places are named without a link. <c>data-key</c> is <c>bearing-3</c> or <c>bearing-middle</c>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The width is under 300.</exception>
    public static Drawing Of(
        PortSurvey survey, SurveyedStation station, View view, SectionShows what, UnitSystem units, double width = 560, Func<double?, string?>? href = null)
    {
        ArgumentNullException.ThrowIfNull(survey);
        ArgumentNullException.ThrowIfNull(station);
        ArgumentNullException.ThrowIfNull(view);
        if (!(width >= 300)) throw new ArgumentOutOfRangeException(nameof(width), width, "300 or more.");
        var text = width < 480 ? 12.5 : 15;
        var frame = FrameOf(survey, station, view, width, text);
        var bottom = frame.Wall.Max(p => p.Y);
        var room = new Box(2, 1.5 * text, width - 4, bottom + (Over - 3) * text);
        var labels = new SectionLabels(frame, room, text);
        var pen = new Pen();
        var sheet = new SectionSheet(pen, frame, labels, survey, station, units, text);

        var ticks = new Pen();
        Hours(ticks, frame, text, inside: what == SectionShows.Walls, labels);
        var generic = station.Section is null;
        var recorded = new Pen();
        sheet = sheet with { Pen = recorded };
        switch (what)
        {
            case SectionShows.Speeds: SectionSpeeds.Draw(sheet, width); break;
            case SectionShows.Balls: SectionBalls.Draw(sheet, width); break;
            case SectionShows.Flags: SectionFlags.Draw(sheet, width); break;
            case SectionShows.Walls: SectionWalls.Draw(sheet, width); break;
            default: throw new ArgumentOutOfRangeException(nameof(what), what, "Speeds, balls, flags or walls.");
        }

        // Colours lie under the wall, everything else over it.
        foreach (var mark in recorded.Marks.OfType<Shades>()) pen.Put(mark);
        pen.Area(frame.Wall, null, new Stroke(Role.Ink, Math.Round(2.4 * text / 15, 2), generic ? LineType.Dashed : LineType.Continuous));
        InAir(pen, frame, station, text);
        foreach (var mark in recorded.Marks.Where(m => m is not Shades)) pen.Put(mark);
        foreach (var mark in ticks.Marks) pen.Put(mark);
        Sides(pen, frame, labels, width, room, text);
        var y = room.Bottom + 1.6 * text;
        if (sheet.Foot is { } foot) y = foot(pen, y);
        foreach (var line in Notes(sheet, generic).SelectMany(n => Lettering.Wrap(n, text, width - 8)))
        {
            pen.Text(width / 2, y + text, line, text, Role.Quiet, Anchor.Middle);
            y += 1.25 * text;
        }

        Touches(pen, frame, view, sheet, href);
        return pen.Done(width, y + 0.4 * text, $"Section {station.Letter}, {Name(what)}", Describe(sheet, view, generic));
    }

    /// <summary>The metal on the drawing of the same width: what lies where, both ways.</summary>
    public static SectionFrame FrameOf(PortSurvey survey, SurveyedStation station, View view, double width = 560) =>
        FrameOf(survey, station, view, width, width < 480 ? 12.5 : 15);

    private static SectionFrame FrameOf(PortSurvey survey, SurveyedStation station, View view, double width, double text)
    {
        var outline = SectionFrame.OutlineOf(survey, station);
        var side = 6.9 * text;
        var high = Math.Min((width - 2 * side) * outline.Bounds.Height / outline.Bounds.Width, width < 480 ? 300 : 400);
        return new SectionFrame(outline, view, new Box(side, Over * text, width - 2 * side, high));
    }

    private static void Hours(Pen pen, SectionFrame frame, double text, bool inside, SectionLabels labels)
    {
        var size = Math.Max(11, 0.82 * text);
        for (var hour = 1; hour <= 12; hour++)
        {
            var (a, b) = (frame.OffWall(hour, 0), frame.OffWall(hour, (inside ? -0.35 : 0.35) * text));
            pen.Line(a.X, a.Y, b.X, b.Y, new Stroke(Role.Ink, Math.Round(text / 12, 2)));
            var at = frame.OffWall(hour, (inside ? -1.05 : 1.05) * text);
            var words = hour.ToString(CultureInfo.InvariantCulture);
            var box = new Box(at.X, at.Y, 0, 0).Grown(0.5 * size) is var b2 ? new Box(b2.Centre.X - Lettering.Width(words, size) / 2 - 2, b2.Y, Lettering.Width(words, size) + 4, size) : default;
            if (!inside)
            {
                labels.Take(box);
                // A leader that runs under a number leaves it free.
                pen.Box(box, 0, Role.Ground);
            }

            pen.Text(at.X, at.Y + 0.36 * size, words, size, Role.Quiet, Anchor.Middle);
        }
    }

    /// <summary>What stands in the section, as cut metal.</summary>
    private static void InAir(Pen pen, SectionFrame frame, SurveyedStation station, double text)
    {
        foreach (var (_, outline, _) in station.Section?.InAir ?? [])
        {
            Place[] edge = [.. outline.Points.Select(frame.At)];
            pen.Area(edge, Role.Ground);
            pen.Segments(Hatching.Over(edge, [], 0.45 * text), new Stroke(Role.Quiet, 1));
            pen.Area(edge, null, new Stroke(Role.Ink, Math.Round(2 * text / 15, 2)));
        }
    }

    /// <summary>Roof, floor and the two sides at the edges where this view shows them.</summary>
    private static void Sides(Pen pen, SectionFrame frame, SectionLabels labels, double width, Box room, double text)
    {
        foreach (var bearing in (double[])[12, 3, 6, 9])
        {
            var words = ViewWords.Metal(bearing);
            var away = frame.Outward(bearing);
            if (Math.Abs(away.Y) > 0.5)
            {
                pen.Text(frame.WallAt(bearing).X, away.Y < 0 ? 1.1 * text : room.Bottom + 1.1 * text, words, text, Role.Quiet, Anchor.Middle);
                continue;
            }

            IReadOnlyList<string> lines = bearing == 9 ? ["cylinder-", "wall side"] : [words];
            var wide = lines.Max(l => Lettering.Width(l, text));
            var high = lines.Count * 1.15 * text;
            // Below the middle, where between two hours there is room.
            foreach (var below in (double[])[1.2, 2.2, 3.2, -4, -5, 4.2, 5.4, 6.6, 8, 9.5])
            {
                var box = new Box(away.X < 0 ? 2 : width - 2 - wide, frame.WallAt(bearing).Y + below * text, wide, high);
                if (!labels.IsFree(box)) continue;
                labels.Take(box);
                for (var i = 0; i < lines.Count; i++)
                    pen.Text(away.X < 0 ? box.X : box.Right, box.Y + (0.85 + 1.15 * i) * text, lines[i], text, Role.Quiet, away.X < 0 ? Anchor.Start : Anchor.End);
                break;
            }
        }
    }

    private static void Touches(Pen pen, SectionFrame frame, View view, SectionSheet sheet, Func<double?, string?>? href)
    {
        var placed = new List<Place> { frame.At(frame.Outline.BearingCentre) };
        Touch(pen, placed[0], "middle", sheet, null, href);
        foreach (var hour in (double[])[12, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11])
        {
            // Half over the wall; further out only where a small section crowds them.
            var off = 8.0;
            while (placed.Exists(p => Apart(p, frame.OffWall(hour, off)) < Finger) && off < 80) off += 2;
            placed.Add(frame.OffWall(hour, off));
            var screen = view.Describe(hour).Replace(" on the screen", "", StringComparison.Ordinal);
            Touch(pen, placed[^1], string.Create(CultureInfo.InvariantCulture, $"{hour:0} o'clock, {screen}"), sheet, hour, href);
        }
    }

    private static void Touch(Pen pen, Place at, string name, SectionSheet sheet, double? bearing, Func<double?, string?>? href)
    {
        var said = sheet.Said.Where(s => s.Bearing is { } b ? bearing is { } h && Shop.Walls.WallState.Apart(b, h) < 0.5 : bearing is null).Select(s => s.Words).ToList();
        pen.Touchable(
            said.Count > 0 ? $"{name}: {string.Join("; ", said)}" : name,
            new Box(at.X - Finger / 2, at.Y - Finger / 2, Finger, Finger), _ => { },
            href: href?.Invoke(bearing),
            key: bearing is { } hours ? string.Create(CultureInfo.InvariantCulture, $"bearing-{hours:0.##}") : "bearing-middle",
            corner: Finger / 2);
    }

    private static double Apart(Place a, Place b) => Math.Sqrt((a.X - b.X) * (a.X - b.X) + (a.Y - b.Y) * (a.Y - b.Y));

    private static IEnumerable<string> Notes(SectionSheet sheet, bool generic)
    {
        if (generic) yield return sheet.Station.SectionProblem.Length > 0 ? sheet.Station.SectionProblem : "Usual shape, not measured yet.";
        if (sheet.Station.Section?.InAir is { Count: > 0 } inAir) yield return $"Hatched: {string.Join(", ", inAir.Select(i => i.Name))}, taken off the area.";
        if (sheet.Empty.Length > 0) yield return sheet.Empty;
    }

    private static string Name(SectionShows what) => what switch
    {
        SectionShows.Speeds => "air speeds",
        SectionShows.Balls => "balls",
        SectionShows.Flags => "flags",
        _ => "metal left",
    };

    private static string Describe(SectionSheet sheet, View view, bool generic)
    {
        var words = new List<string> { $"{StationSaid.Of(sheet.Station, sheet.Survey).In(sheet.Units)} Seen {view.Describe()}." };
        if (generic) words.Add("The outline is a usual one, not measured.");
        if (sheet.Empty.Length > 0) words.Add(sheet.Empty);
        words.AddRange(sheet.Said.Select(s => $"{(s.Bearing is { } b ? string.Create(CultureInfo.InvariantCulture, $"{Bearing.Clock(b):0.#} o'clock, {ViewWords.Metal(b)}") : "Middle")}: {s.Words}."));
        return string.Join(' ', words);
    }
}
