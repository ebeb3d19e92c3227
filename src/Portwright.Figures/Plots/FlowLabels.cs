using Portwright.Shop.Units;

namespace Portwright.Figures;

/// <summary>Names the curves at their ends, and gives the last reading of this cut its number.</summary>
internal static class FlowLabels
{
    public static void Draw(Pen pen, FlowFrame frame, FlowPlot plot, LabelPlaces labels, UnitSystem units)
    {
        // Curves that end at the right edge are named in one column beside it, in the order they end.
        var edge = frame.Right - 1.5 * frame.Size.Text;
        Column(pen, frame, [.. plot.Drawn().Where(l => End(frame, l).X > edge)], plot, labels);
        if (plot.Now is { } now) NowLabel(pen, frame, now, End(frame, now).X > edge, labels, units);
        foreach (var ghost in plot.Ghosts().Where(g => End(frame, g).X <= edge)) GhostLabel(pen, frame, ghost, labels);
    }

    private static Place End(FlowFrame frame, FlowLine line) => frame.At(line.Dots[^1].Lift, line.Dots[^1].Flow);

    private static void Column(Pen pen, FlowFrame frame, IReadOnlyList<FlowLine> lines, FlowPlot plot, LabelPlaces labels)
    {
        var t = frame.Size.Text;
        var sorted = lines.Select(l => (Line: l, End(frame, l).Y)).OrderBy(l => l.Y).ToList();
        var places = Apart([.. sorted.Select(l => l.Y)], 1.15 * t, frame.Top - t, frame.Bottom - 0.5 * t);
        for (var i = 0; i < sorted.Count; i++)
        {
            var now = ReferenceEquals(sorted[i].Line, plot.Now);
            var weight = now ? Weight.SemiBold : Weight.Regular;
            var name = Lettering.Fit(sorted[i].Line.Name, t, frame.Size.Width - frame.Right - 0.7 * t, weight);
            pen.Text(frame.Right + 0.7 * t, places[i] + 0.35 * t, name, t, now ? Role.Blue : Role.Quiet, Anchor.Start, weight);
            labels.Take(pen.Marks.TakeLast(1));
        }
    }

    /// <summary>Moves heights apart to at least a distance, each as little as can be: neighbours that touch move together.</summary>
    internal static double[] Apart(double[] wanted, double distance, double top, double bottom)
    {
        var groups = new List<(double Sum, int Count)>();
        for (var i = 0; i < wanted.Length; i++)
        {
            // Taking i distances off turns "apart" into "not falling"; a falling pair is pooled at its mean.
            groups.Add((wanted[i] - i * distance, 1));
            while (groups.Count > 1 && groups[^2].Sum / groups[^2].Count >= groups[^1].Sum / groups[^1].Count)
            {
                var last = groups[^1];
                groups.RemoveAt(groups.Count - 1);
                groups[^1] = (groups[^1].Sum + last.Sum, groups[^1].Count + last.Count);
            }
        }

        var places = groups.SelectMany(g => Enumerable.Repeat(g.Sum / g.Count, g.Count)).Select((y, i) => y + i * distance).ToArray();
        if (places.Length == 0) return places;
        var shift = Math.Min(0, bottom - places[^1]);
        if (places[0] + shift < top) shift = top - places[0];
        return [.. places.Select(y => y + shift)];
    }

    private static void NowLabel(Pen pen, FlowFrame frame, FlowLine now, bool named, LabelPlaces labels, UnitSystem units)
    {
        var t = frame.Size.Text;
        var last = now.Dots[^1];
        var at = End(frame, now);
        var words = Print.WithDoubt(last.Flow, last.Doubt, Dimension.VolumeFlow, units);
        var name = named ? "" : Lettering.Fit(now.Name, t * 1.07, frame.Size.Width * 0.4, Weight.SemiBold);
        var width = Math.Max(Lettering.Width(words, t), Lettering.Width(name, t * 1.07, Weight.SemiBold));
        if (labels.Find(at, width, named ? t : 2.35 * t, 0.7 * t) is not { } box) return;
        // The block hugs the point: its letters start where the point is on the left, end where it is on the right.
        var anchor = box.X >= at.X ? Anchor.Start : box.Right <= at.X + 1 ? Anchor.End : Anchor.Middle;
        var x = anchor switch { Anchor.Start => box.X, Anchor.End => box.Right, _ => box.Centre.X };
        if (!named) pen.Text(x, box.Y + 0.9 * t, name, t * 1.07, Role.Blue, anchor, Weight.SemiBold);
        pen.Text(x, box.Bottom - 0.23 * t, words, t, Role.Ink, anchor);
        Leader(pen, frame, at, box);
    }

    private static void GhostLabel(Pen pen, FlowFrame frame, FlowLine line, LabelPlaces labels)
    {
        var t = frame.Size.Text;
        var name = Lettering.Fit(line.Name, t, frame.Size.Width * 0.3);
        if (labels.Find(End(frame, line), Lettering.Width(name, t), t, 0.5 * t) is not { } box) return;
        pen.Text(box.X, box.Y + Lettering.Ascent * t, name, t, Role.Quiet);
        Leader(pen, frame, End(frame, line), box);
    }

    /// <summary>A thin line from a label that had to stand off to what it names.</summary>
    private static void Leader(Pen pen, FlowFrame frame, Place point, Box label)
    {
        var x = Math.Clamp(point.X, label.X, label.Right);
        var y = Math.Clamp(point.Y, label.Y, label.Bottom);
        if (Math.Abs(x - point.X) + Math.Abs(y - point.Y) <= 1.6 * frame.Size.Text) return;
        pen.Line(point.X, point.Y, x, y, new Stroke(Role.Quiet, frame.Size.Thick(0.8)));
    }
}
