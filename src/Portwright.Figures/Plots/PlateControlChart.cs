using System.Globalization;
using Portwright.Physics.Statistics;
using Portwright.Shop.Bench;

namespace Portwright.Figures;

/// <summary>One check plate morning by morning: centre line, limits, and every signal by shape and word.</summary>
public static class PlateControlChart
{
    /// <summary>More mornings than this are not drawn apart: the latest are shown.</summary>
    private const int MostMornings = 60;

    /// <summary>Draws the chart. The scale is measured over certified effective area, less one, in percent.</summary>
    public static Drawing Draw(PlateChart chart, FigureSize size)
    {
        var t = size.Text;
        var pen = new Pen();
        var limits = chart.Chart.Limits;
        var drawn = limits.Basis != LimitsBasis.None && limits.Sigma > 0;
        var skipped = Math.Max(0, chart.Points.Count - MostMornings);
        var points = chart.Points.Skip(skipped).Select((p, i) => (p.Date, Off: Percent(p.Ratio.Value), Number: skipped + i + 1)).ToList();
        pen.Text(0.2 * t, 1.1 * t, Lettering.Fit($"plate {chart.Plate}, range {chart.Range}: percent off its certificate", t, size.Width - 0.4 * t), t, Role.Quiet);

        var levels = points.Select(p => p.Off).Append(0);
        if (drawn) levels = levels.Append(Percent(limits.UpperLimit)).Append(Percent(limits.LowerLimit));
        var (low, high) = (levels.Min(), levels.Max());
        var pad = Math.Max(0.1, (high - low) * 0.14);
        var left = Lettering.Width("+00.0", t) + 0.6 * t;
        var right = size.Width - Lettering.Width("centre line", t) - 0.9 * t;
        var (top, bottom) = (drawn ? 2.4 * t : 3.6 * t, size.Height - 2.6 * t);
        if (!drawn) pen.Text(0.2 * t, 2.5 * t, Lettering.Fit($"limits from {ChartLimits.FewestPoints} earlier mornings on", t, size.Width - 0.4 * t), t, Role.Quiet);
        var up = new Scale(low - pad, high + pad, bottom, top);
        var across = points.Count > 1 ? new Scale(0, points.Count - 1, left + t, right - t) : new Scale(-1, 1, left + t, right - t);

        var step = Scale.Step(up.To - up.From, (int)Math.Clamp((bottom - top) / (2.2 * t), 2, 6));
        foreach (var level in Scale.Ticks(up.From, up.To, step))
        {
            pen.Line(left, up.At(level), right, up.At(level), new Stroke(Role.Hairline, size.Thick(1)));
            pen.Text(left - 0.5 * t, up.At(level) + 0.35 * t, Signed(level, step < 0.1 ? 2 : 1), t, Role.Quiet, Anchor.End);
        }

        Lines(pen, size, limits, drawn, up, left, right);
        Days(pen, size, [.. points.Select((p, i) => (across.At(i), p.Date))], bottom, left, right);
        var labels = new LabelPlaces(new Box(left, 1.5 * t, right - left, bottom - 1.5 * t));
        labels.Take(pen.Marks);
        var places = points.Select((p, i) => new Place(across.At(i), up.At(p.Off))).ToList();
        labels.Avoid(places);
        if (drawn)
        {
            foreach (var limit in (ReadOnlySpan<double>)[limits.UpperLimit, limits.LowerLimit, limits.Centre])
                labels.Avoid([new(left, up.At(Percent(limit))), new(right, up.At(Percent(limit)))]);
        }

        pen.Polyline(places, new Stroke(Role.Quiet, size.Thick(1.2)));
        var signals = chart.Chart.Signals.ToDictionary(s => s.Point);
        // A run that goes on signals every morning: each rule is named once, at its latest.
        var named = chart.Chart.Signals.Where(s => s.Point > skipped).GroupBy(s => s.Rules[0]).Select(g => g.Max(s => s.Point)).ToHashSet();
        for (var i = 0; i < points.Count; i++)
        {
            var signal = signals.GetValueOrDefault(points[i].Number);
            Point(pen, size, places[i], points[i].Off, signal, i == points.Count - 1, limits, labels, named.Contains(points[i].Number), (left, top, bottom), points[i].Date);
        }

        return pen.Done(size.Width, size.Height, $"Control chart, plate {chart.Plate}, range {chart.Range}",
            $"{points.Count} mornings. The last one says {chart.Answer.ToString().ToLowerInvariant()}. {string.Join(' ', chart.Chart.Sentences)}");
    }

    /// <summary>What a rule says, in a few words.</summary>
    public static string Words(int rule) => rule switch
    {
        1 => "outside the limits",
        2 => "two of three far out",
        3 => "four of five to one side",
        4 => "eight on one side",
        _ => throw new ArgumentOutOfRangeException(nameof(rule), rule, "1 to 4."),
    };

    private static void Lines(Pen pen, FigureSize size, ChartLimits limits, bool drawn, Scale up, double left, double right)
    {
        var t = size.Text;
        var lines = new List<(double Y, string Words, Stroke Stroke, Role Role)> { (up.At(0), "certificate", new Stroke(Role.Quiet, size.Thick(1.2), LineType.Dotted), Role.Quiet) };
        if (drawn)
        {
            lines.Add((up.At(Percent(limits.Centre)), "centre line", new Stroke(Role.Ink, size.Thick(1.4), LineType.LongDashDot), Role.Ink));
            lines.Add((up.At(Percent(limits.UpperLimit)), "upper limit", new Stroke(Role.Brass, size.Thick(1.6), LineType.Dashed), Role.Brass));
            lines.Add((up.At(Percent(limits.LowerLimit)), "lower limit", new Stroke(Role.Brass, size.Thick(1.6), LineType.Dashed), Role.Brass));
        }

        lines.Sort((a, b) => a.Y.CompareTo(b.Y));
        var places = FlowLabels.Apart([.. lines.Select(l => l.Y)], 1.15 * t, up.PlaceTo, up.PlaceFrom);
        for (var i = 0; i < lines.Count; i++)
        {
            pen.Line(left, lines[i].Y, right, lines[i].Y, lines[i].Stroke);
            pen.Text(right + 0.6 * t, places[i] + 0.35 * t, lines[i].Words, t, lines[i].Role);
        }
    }

    private static void Days(Pen pen, FigureSize size, IReadOnlyList<(double X, DateOnly Date)> days, double bottom, double left, double right)
    {
        var t = size.Text;
        pen.Line(left, bottom, right, bottom, new Stroke(Role.Ink, size.Thick(1.2)));
        var end = double.NegativeInfinity;
        // The last day always has its date; the others where there is room.
        var last = days.Count > 0 ? days[^1].X - Lettering.Width(Date(days[^1].Date), t) / 2 : double.PositiveInfinity;
        for (var i = 0; i < days.Count; i++)
        {
            var (x, date) = days[i];
            pen.Line(x, bottom, x, bottom + 0.4 * t, new Stroke(Role.Quiet, size.Thick(1)));
            var half = Lettering.Width(Date(date), t) / 2;
            if (i < days.Count - 1 && (x - half < end + 0.8 * t || x + half > last - 0.8 * t)) continue;
            pen.Text(x, bottom + 1.8 * t, Date(date), t, Role.Quiet, Anchor.Middle);
            end = x + half;
        }
    }

    private static void Point(
        Pen pen, FigureSize size, Place at, double off, RuleSignal? signal, bool newest, ChartLimits limits, LabelPlaces labels, bool named,
        (double Left, double Top, double Bottom) plot, DateOnly date)
    {
        var t = size.Text;
        var words = signal is null ? "" : Words(signal.Rules[0]);
        var says = $"{date:yyyy-MM-dd}: {Signed(off, 2)} percent{(words.Length > 0 ? $", {words}" : "")}";
        Box? label = null;
        if (named && words.Length > 0) label = labels.Find(at, Lettering.Width(words, t, Weight.SemiBold), t, 0.8 * t);
        pen.Touchable(says, new Box(at.X - Math.Max(6, t * 0.7), plot.Top, Math.Max(12, t * 1.4), plot.Bottom - plot.Top), seen =>
        {
            if (signal is not null) Signal(seen, size, at, signal, off >= Percent(limits.Centre));
            else seen.Circle(at, size.Thick(newest ? 5.5 : 3.5), newest ? Role.Blue : Role.Quiet);
            if (label is { } box)
                seen.Text(box.X, box.Y + Lettering.Ascent * t, words, t, signal!.Rules.Contains(1) ? Role.Thin : Role.Brass, Anchor.Start, Weight.SemiBold);
        }, tip =>
        {
            tip.Box(new Box(0, 0, size.Width, 1.55 * t), 0, Role.Ground);
            tip.Text(0.2 * t, 1.1 * t, Lettering.Fit(says, t, size.Width - 0.4 * t, Weight.SemiBold), t, Role.Ink, Anchor.Start, Weight.SemiBold);
        }, key: $"morning-{date:yyyy-MM-dd}");
    }

    /// <summary>Beyond the limits a filled triangle that points outward, the other rules a filled square.</summary>
    private static void Signal(Pen pen, FigureSize size, Place at, RuleSignal signal, bool above)
    {
        var r = size.Thick(6.5);
        if (signal.Rules.Contains(1))
        {
            var tip = above ? -r : r;
            pen.Area([new(at.X, at.Y + tip), new(at.X - r, at.Y - tip * 0.8), new(at.X + r, at.Y - tip * 0.8)], Role.Thin);
        }
        else
        {
            pen.Box(new Box(at.X - r * 0.8, at.Y - r * 0.8, r * 1.6, r * 1.6), 0, Role.Brass);
        }
    }

    private static double Percent(double ratio) => (ratio - 1) * 100;

    private static string Date(DateOnly date) => date.ToString("MM-dd", CultureInfo.InvariantCulture);

    private static string Signed(double value, int decimals)
    {
        var number = Math.Abs(value).ToString("F" + decimals, CultureInfo.InvariantCulture);
        return number.AsSpan().IndexOfAnyInRange('1', '9') < 0 ? "0" : value < 0 ? $"−{number}" : $"+{number}";
    }
}
