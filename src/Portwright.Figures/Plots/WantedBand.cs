namespace Portwright.Figures;

/// <summary>What the engine asks for, as a quiet band behind the measured curves, named at its end.</summary>
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
        var (least, most) = (Edge(frame, wanted.Line.Select(p => (p.Lift, p.Least))), Edge(frame, wanted.Line.Select(p => (p.Lift, p.Most))));
        pen.Area(most.Concat(least.Reverse()), Role.Noise);
        pen.Polyline(least, new Stroke(Role.Quiet, frame.Size.Thick(0.8)));
    }

    public static void Name(Pen pen, FlowFrame frame, FlowPlot plot, LabelPlaces labels)
    {
        if (plot.Wanted is not { } wanted) return;
        var t = frame.Size.Text;
        var words = Lettering.Fit(wanted.Words, t, frame.Size.Width * 0.5);
        // Under the band's end, clear of the readings' doubts, never beside the axis where the cuts are named.
        foreach (var dot in plot.Drawn().SelectMany(l => l.Dots)) labels.Avoid([frame.At(dot.Lift, dot.Flow - dot.Doubt), frame.At(dot.Lift, dot.Flow + dot.Doubt)]);
        var least = Edge(frame, wanted.Line.Select(p => (p.Lift, p.Least)));
        labels.Avoid(least);
        labels.Avoid(Edge(frame, wanted.Line.Select(p => (p.Lift, p.Most))));
        var (end, width) = (least[^1], Lettering.Width(words, t));
        // As far down as the curve is where the words begin.
        var left = end.X - width - 1.2 * t;
        var under = least.Where(p => p.X >= left).Max(p => p.Y) + t;
        if (labels.Find(new(left - 0.4 * t, Math.Min(under, frame.Bottom - 2 * t)), width, t, 0.4 * t) is { } box)
            pen.Text(box.X, box.Y + Lettering.Ascent * t, words, t, Role.Quiet);
    }

    private static Place[] Edge(FlowFrame frame, IEnumerable<(double Lift, double Flow)> line) =>
        [.. line.Where(p => p.Lift <= frame.HighestLift + 1e-9).Select(p => frame.At(p.Lift, Math.Min(p.Flow, frame.HighestFlow)))];
}
