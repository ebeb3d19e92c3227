using Portwright.Geometry.LongView;
using Portwright.Geometry.Views;
using Portwright.Shop.Diagnosis;
using Portwright.Shop.Findings;
using Portwright.Shop.Ports;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;

namespace Portwright.Figures;

/// <summary>
/// The port cut along its centreline: hatched metal, floor and roof from flange to seat, lettered stations to touch, and what was recorded
/// at the metal it belongs to. Where nothing is measured the usual shape stands in, dashed and marked so.
/// </summary>
public static class LongViewDrawing
{
    /// <summary>Draws the long view as wide as the room.</summary>
    /// <param name="chosenStation">Its line and letter stand out in blue.</param>
    /// <param name="view">From the flange it lies left, from the chamber right; with the head inverted the floor is up.</param>
    /// <param name="width">Room, 280 or more; under 560 the letters are those of a phone.</param>
    /// <param name="href">Where touching a station leads; null: the stations are named places without a link (<c>data-key</c> is <c>station-</c> and the station's id).</param>
    /// <param name="findings">What to point at; null: all that the catalogue finds.</param>
    /// <exception cref="ArgumentOutOfRangeException">The width is under 280.</exception>
    public static Drawing Of(
        PortSurvey survey,
        Guid? chosenStation,
        View view,
        UnitSystem units,
        double width = 760,
        Func<SurveyedStation, string?>? href = null,
        IReadOnlyList<Finding>? findings = null)
    {
        ArgumentNullException.ThrowIfNull(survey);
        ArgumentNullException.ThrowIfNull(view);
        if (!(width >= 280)) throw new ArgumentOutOfRangeException(nameof(width), width, "280 or more.");
        var narrow = width < 560;
        var size = new FigureSize(width, narrow ? 1.15 * width : 0.8 * width, narrow ? 12.5 : 15);
        var frame = new LongFrame(survey, view, size);
        findings ??= PortFindings.Of(survey);

        var pen = new Pen();
        LongViewMetal.Draw(pen, frame);
        var labels = new LongViewLabels(frame.Room, size.Text);
        Keep(labels, frame);
        var record = new LongViewRecord(frame, labels, units);
        record.Findings(findings, narrow ? 3 : 6);
        record.Walls();
        record.Smallest();
        record.Balls(words: !narrow);
        record.Place();
        Unmeasured(labels, frame);
        if (survey.Stations.Count == 0) labels.Put(frame.At(frame.Length * 0.3, 0), "No station yet. Name the places where you want to measure.", Role.Quiet, leader: false);
        Lines(pen, frame, chosenStation);
        labels.Draw(pen);
        record.Draw(pen);
        Letters(pen, frame, chosenStation, units, href);
        var y = Length(pen, frame, units);
        BallMark.Row(pen, 2, width - 2, y + 1.9 * size.Text, size.Text, record.Answers);
        var height = y + (record.Answers.Count > 0 ? 2.4 : 0.5) * size.Text;
        return pen.Done(width, height, $"Long view of {survey.Sheet.Port.Fact.Name}", Describe(survey, frame, view, findings, record, units));
    }

    private static void Keep(LongViewLabels labels, LongFrame frame)
    {
        foreach (var letter in frame.Letters) labels.Take(new Box(letter.X, letter.Y, 0, 0).Grown(frame.LetterRadius + 2));
        foreach (var surface in (Surface[])[Surface.Roof, Surface.Floor]) labels.Avoid([.. frame.Survey.Profile.LineOf(surface).Select(p => frame.At(p.Point))]);
        foreach (var station in frame.Stations) labels.Avoid([Roof(frame, station.Distance), Floor(frame, station.Distance)]);
        labels.Avoid([frame.AtValve(-frame.SeatRadius, 0), frame.AtValve(frame.SeatDepth, 0)]);
        labels.Avoid([.. LongViewMetal.Head(frame)]);
        var seat = frame.SeatDepth + frame.Lift;
        foreach (var off in (double[])[-0.75, -0.4, 0.4, 0.75]) labels.Avoid([frame.AtValve(seat - 0.1 * frame.ValveRadius, off * frame.ValveRadius), frame.AtValve(seat + 0.09 * frame.ValveRadius, off * frame.ValveRadius)]);
        foreach (var sign in (double[])[-1, 1])
            labels.Avoid([frame.AtValve(frame.SeatDepth, sign * frame.SeatRadius), frame.AtValve(frame.SeatDepth, sign * (frame.SeatRadius + frame.Length))]);
    }

    private static Place Roof(LongFrame frame, double distance) => frame.At(distance, frame.Survey.Profile.RoofAt(distance));

    private static Place Floor(LongFrame frame, double distance) => frame.At(distance, -frame.Survey.Profile.FloorAt(distance));

    private static void Unmeasured(LongViewLabels labels, LongFrame frame)
    {
        var pieces = ((Surface[])[Surface.Roof, Surface.Floor]).Select(f => frame.Survey.Profile.LineOf(f).Where(p => p.IsGeneric).Select(p => frame.At(p.Point)).ToList());
        // Where the longer dashed line is: the roof of a bend, mostly.
        var generic = pieces.MaxBy(LengthOf)!;
        if (generic.Count > 0) labels.Put(generic[generic.Count / 2], "usual shape, not measured", Role.Quiet, wide: 8 * frame.Size.Text);
    }

    private static double LengthOf(List<Place> line) => line.Zip(line.Skip(1), (a, b) => Math.Abs(b.X - a.X) + Math.Abs(b.Y - a.Y)).Sum();

    private static void Lines(Pen pen, LongFrame frame, Guid? chosen)
    {
        for (var i = 0; i < frame.Stations.Count; i++)
        {
            var station = frame.Stations[i];
            var (roof, floor, letter) = (Roof(frame, station.Distance), Floor(frame, station.Distance), frame.Letters[i]);
            var here = station.Station.Id == chosen;
            // A station whose section is not measured has a broken line of its own.
            var stroke = here ? new Stroke(Role.Blue, frame.Size.Thick(3))
                : new Stroke(Role.Ink, frame.Size.Thick(1.2), station.Section is null ? LineType.Dotted : LineType.LongDashDot);
            pen.Line(floor.X, floor.Y, roof.X, roof.Y, stroke);
            pen.Line(roof.X, roof.Y, letter.X, letter.Y, new Stroke(here ? Role.Blue : Role.Ink, frame.Size.Thick(1)));
        }
    }

    private static void Letters(Pen pen, LongFrame frame, Guid? chosen, UnitSystem units, Func<SurveyedStation, string?>? href)
    {
        for (var i = 0; i < frame.Stations.Count; i++)
        {
            var (station, at) = (frame.Stations[i], frame.Letters[i]);
            var here = station.Station.Id == chosen;
            var text = frame.Size.Text * 1.05;
            var letter = Lettering.Fit(station.Letter, text, 2 * frame.LetterRadius - 2, Weight.SemiBold);
            pen.Touchable(
                $"{letter}: {StationSaid.Of(station, frame.Survey).In(units).TrimEnd('.')}{(here ? ", chosen" : "")}",
                new Box(at.X - 22, at.Y - 22, 44, 44),
                seen =>
                {
                    seen.Circle(at, frame.LetterRadius, here ? Role.Blue : Role.Ground, new Stroke(here ? Role.Blue : Role.Ink, frame.Size.Thick(1.3)));
                    seen.Text(at.X, at.Y + 0.36 * text, letter, text, here ? Role.Ground : Role.Ink, Anchor.Middle, Weight.SemiBold);
                },
                href: href?.Invoke(station),
                key: $"station-{station.Station.Id:N}");
        }
    }

    /// <summary>The dimension from flange to seat (ISO 129-1:2018), and the baseline under which there is room again.</summary>
    private static double Length(Pen pen, LongFrame frame, UnitSystem units)
    {
        var t = frame.Size.Text;
        var thin = new Stroke(Role.Quiet, frame.Size.Thick(1));
        var flange = frame.At(0, -frame.Survey.Profile.FloorAt(0));
        var seat = frame.AtValve(frame.SeatDepth, 0);
        var y = frame.Room.Bottom + 2.1 * t;
        var (left, right) = flange.X < seat.X ? (flange.X, seat.X) : (seat.X, flange.X);
        pen.Segments([(new(flange.X, frame.Room.Bottom + 2), new(flange.X, y + 0.4 * t)), (new(seat.X, frame.Room.Bottom + 2), new(seat.X, y + 0.4 * t)), (new(left, y), new(right, y))], thin);
        foreach (var (x, sign) in ((double, double)[])[(left, 1), (right, -1)])
            pen.Area([new(x, y), new(x + sign * 0.8 * t, y - 0.24 * t), new(x + sign * 0.8 * t, y + 0.24 * t)], Role.Quiet);
        var (first, last) = flange.X < seat.X ? ("flange", "seat") : ("seat", "flange");
        pen.Text(left + 0.4 * t, y - 0.5 * t, first, t, Role.Quiet);
        pen.Text(right - 0.4 * t, y - 0.5 * t, last, t, Role.Quiet, Anchor.End);
        var length = $"{Print.Number(frame.Length, Dimension.Length, units, units == UnitSystem.UsCustomary ? 2 : 1)} along the centreline{(frame.Survey.CentrelineIsOwn ? "" : ", usual, not measured")}";
        var half = Lettering.Width(length, t) / 2;
        pen.Text(Math.Clamp((left + right) / 2, half + 2, frame.Size.Width - half - 2), y + 1.3 * t, length, t, Role.Quiet, Anchor.Middle);
        return y + 1.3 * t;
    }

    private static string Describe(PortSurvey survey, LongFrame frame, View view, IReadOnlyList<Finding> findings, LongViewRecord record, UnitSystem units)
    {
        var measured = frame.Stations.Count(s => s.Section is not null);
        var words = new List<string>
        {
            $"Seen {view.Describe()}.",
            $"{Print.Number(frame.Length, Dimension.Length, units)} from flange to seat along the centreline{(survey.CentrelineIsOwn ? "" : ", a usual one: not measured")}.",
            frame.Stations.Count == 0 ? "No station yet." : $"{frame.Stations.Count} stations, {measured} of them measured.",
        };
        if (survey.Profile.LineOf(Surface.Roof).Any(p => p.IsGeneric)) words.Add("Dashed where the usual shape stands in, not measured.");
        if (survey.Schedule?.Smallest is { Name.Length: > 0 } least) words.Add($"Smallest section at {least.Name}.");
        words.AddRange(findings.Select(f => f.Title + "."));
        words.AddRange(record.Unsaid.Except(findings.Select(f => f.Title + ".")));
        if (survey.Stations.Count > frame.Stations.Count) words.Add($"{survey.Stations.Count - frame.Stations.Count} stations lie past the end of the centreline and are not drawn: correct their distance or the centreline's length.");
        return string.Join(' ', words);
    }
}
