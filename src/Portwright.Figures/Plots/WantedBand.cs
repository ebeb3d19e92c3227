using Portwright.Shop.Targets;

namespace Portwright.Figures;

/// <summary>What the engine asks for, as a quiet band behind the measured curves, named at its end; a bar where it speaks of one lift alone.</summary>
internal static class WantedBand
{
    /// <summary>A plan that asks for more than this many times the highest measured flow is cut off rather than squash the measured curves.</summary>
    private const double MostOverMeasured = 3;

    /// <summary>Flow the axis must reach for the band, m3/s.</summary>
    public static double Top(FlowPlot plot, double measured) => plot.Wanted is { } wanted
        ? Math.Min(wanted.Line.Max(p => p.Most), MostOverMeasured * measured)
        : 0;

    public static void Draw(Pen pen, FlowFrame frame, FlowPlot plot)
    {
        if (plot.Wanted is not { } wanted) return;
        if (BarOf(frame, wanted) is { } bar)
        {
            pen.Box(bar, 0, Role.Noise);
            foreach (var y in (double[])[bar.Y, bar.Bottom]) pen.Line(bar.X, y, bar.Right, y, new Stroke(Role.Quiet, frame.Size.Thick(0.8)));
            return;
        }

        var (least, most) = (Edge(frame, wanted.Line.Select(p => (p.Lift, p.Least))), Edge(frame, wanted.Line.Select(p => (p.Lift, p.Most))));
        pen.Area(most.Concat(least.Reverse()), Role.Noise);
        pen.Polyline(least, new Stroke(Role.Quiet, frame.Size.Thick(0.8)));
    }

    /// <summary>A bar is small: no text on it.</summary>
    public static void KeepFree(FlowFrame frame, FlowPlot plot, LabelPlaces labels)
    {
        if (plot.Wanted is not { } wanted || BarOf(frame, wanted) is not { } bar) return;
        labels.Avoid([new(bar.X, bar.Y), new(bar.X, bar.Bottom)]);
        labels.Avoid([new(bar.Right, bar.Y), new(bar.Right, bar.Bottom)]);
    }

    public static void Name(Pen pen, FlowFrame frame, FlowPlot plot, LabelPlaces labels)
    {
        if (plot.Wanted is not { } wanted) return;
        var t = frame.Size.Text;
        var words = Lettering.Fit(wanted.Words, t, frame.Size.Width * 0.5);
        if (BarOf(frame, wanted) is { } bar)
        {
            // Above its bar, where no curve is; the label's own place finder goes on from there.
            if (labels.Find(new(bar.Centre.X, bar.Y), Lettering.Width(words, t), t, 0.5 * t) is { } above) pen.Text(above.X, above.Y + Lettering.Ascent * t, words, t, Role.Quiet);
            return;
        }

        // Under the band's end, clear of the readings' doubts, never beside the axis where the cuts are named.
        foreach (var dot in plot.Drawn().SelectMany(l => l.Dots)) labels.Avoid([frame.At(dot.Lift, dot.Flow - dot.Doubt), frame.At(dot.Lift, dot.Flow + dot.Doubt)]);
        var least = Edge(frame, wanted.Line.Select(p => (p.Lift, p.Least)));
        if (least.Length == 0) return;
        labels.Avoid(least);
        labels.Avoid(Edge(frame, wanted.Line.Select(p => (p.Lift, p.Most))));
        var (end, width) = (least[^1], Lettering.Width(words, t));
        // As far down as the curve is where the words begin.
        var left = end.X - width - 1.2 * t;
        var under = least.Where(p => p.X >= left).Max(p => p.Y) + t;
        if (labels.Find(new(left - 0.4 * t, Math.Min(under, frame.Bottom - 2 * t)), width, t, 0.4 * t) is { } box)
            pen.Text(box.X, box.Y + Lettering.Ascent * t, words, t, Role.Quiet);
    }

    /// <summary>Where one lift alone is spoken of; null for a band, and past the frame.</summary>
    private static Box? BarOf(FlowFrame frame, WantedFlow wanted)
    {
        if (wanted.Line is not [var only] || only.Lift > frame.HighestLift + 1e-9) return null;
        var (low, high) = (frame.At(only.Lift, Math.Min(only.Least, frame.HighestFlow)), frame.At(only.Lift, Math.Min(only.Most, frame.HighestFlow)));
        var half = 0.5 * frame.Size.Text;
        return new Box(high.X - half, high.Y, 2 * half, low.Y - high.Y);
    }

    private static Place[] Edge(FlowFrame frame, IEnumerable<(double Lift, double Flow)> line) =>
        [.. line.Where(p => p.Lift <= frame.HighestLift + 1e-9).Select(p => frame.At(p.Lift, Math.Min(p.Flow, frame.HighestFlow)))];
}
