using Portwright.Shop.Units;

namespace Portwright.Figures;

/// <summary>
/// Flow over valve lift: this cut solid with its doubt, earlier cuts as ghosts by line type, the cam's lift marked, and under it the
/// strip <i>this cut less the last</i> over the noise of the bench. Nothing is drawn past a reading.
/// </summary>
public static class FlowOverLift
{
    private static readonly LineType[] GhostTypes = [LineType.Dashed, LineType.LongDashDot, LineType.Dotted];

    /// <summary>Draws the figure.</summary>
    public static Drawing Draw(FlowPlot plot, FigureSize size, UnitSystem units = UnitSystem.UsCustomary)
    {
        var frame = new FlowFrame(plot, size, units);
        var pen = new Pen();
        frame.Draw(pen);
        var labels = new LabelPlaces(new Box(frame.Left, 1.7 * size.Text, size.Width - frame.Left, frame.Bottom - 2 * size.Text));
        labels.Take(pen.Marks);
        if (plot.CamLift is { } cam) labels.Avoid([new(frame.Lift.At(cam), frame.Top), new(frame.Lift.At(cam), frame.Bottom)]);
        if (plot.Now is null && plot.Earlier.Count == 0)
        {
            Nothing(pen, frame, plot);
            return pen.Done(size.Width, size.Height, $"Flow over lift, {plot.Name}", "No reading yet.");
        }

        var ghosts = plot.Ghosts();
        foreach (var line in plot.Drawn()) labels.Avoid([.. line.Line.Select(p => frame.At(p.Lift, p.Flow))]);
        for (var i = ghosts.Count - 1; i >= 0; i--) Ghost(pen, frame, ghosts[i], i);
        if (plot.Now is { } now)
        {
            NowLine(pen, frame, now);
            NowLabel(pen, frame, now, labels, units);
        }

        for (var i = 0; i < ghosts.Count; i++) GhostLabel(pen, frame, ghosts[i], labels);
        if (plot.Last is not null) DifferenceStrip.Draw(pen, frame, plot, units);
        FlowReadout.Draw(pen, frame, plot, units);
        return pen.Done(size.Width, size.Height, $"Flow over lift, {plot.Name}", FlowReadout.Describe(plot, units));
    }

    private static void Ghost(Pen pen, FlowFrame frame, FlowLine line, int age)
    {
        var stroke = new Stroke(Role.Quiet, frame.Size.Thick(age == 0 ? 1.8 : 1.4), GhostTypes[age]);
        if (line.Line.Count > 1) pen.Polyline(line.Line.Select(p => frame.At(p.Lift, p.Flow)), stroke);
        else foreach (var dot in line.Dots) pen.Circle(frame.At(dot.Lift, dot.Flow), frame.Size.Thick(4), null, stroke with { Type = LineType.Continuous });
    }

    private static void NowLine(Pen pen, FlowFrame frame, FlowLine now)
    {
        var size = frame.Size;
        if (now.Line.Count > 1) pen.Polyline(now.Line.Select(p => frame.At(p.Lift, p.Flow)), new Stroke(Role.Blue, size.Thick(2.6)));
        var radius = size.Thick(5);
        foreach (var dot in now.Dots)
        {
            var (high, low) = (frame.At(dot.Lift, dot.Flow + dot.Doubt), frame.At(dot.Lift, Math.Max(0, dot.Flow - dot.Doubt)));
            var cap = size.Thick(4);
            pen.Segments(
                [(high, low), (new(high.X - cap, high.Y), new(high.X + cap, high.Y)), (new(low.X - cap, low.Y), new(low.X + cap, low.Y))],
                new Stroke(Role.Blue, size.Thick(1.4)));
            pen.Circle(frame.At(dot.Lift, dot.Flow), radius, Role.Blue);
        }
    }

    private static void NowLabel(Pen pen, FlowFrame frame, FlowLine now, LabelPlaces labels, UnitSystem units)
    {
        var t = frame.Size.Text;
        var last = now.Dots[^1];
        var at = frame.At(last.Lift, last.Flow);
        var words = Print.WithDoubt(last.Flow, last.Doubt, Dimension.VolumeFlow, units);
        var name = Lettering.Fit(now.Name, t * 1.07, frame.Size.Width * 0.4, Weight.SemiBold);
        var width = Math.Max(Lettering.Width(words, t, Weight.SemiBold), Lettering.Width(name, t * 1.07, Weight.SemiBold));
        if (labels.Find(at, width, 2.35 * t, 0.7 * t) is not { } box) return;
        // The block hugs the point: its letters start where the point is on the left, end where it is on the right.
        var anchor = box.X >= at.X ? Anchor.Start : box.Right <= at.X + 1 ? Anchor.End : Anchor.Middle;
        var x = anchor switch { Anchor.Start => box.X, Anchor.End => box.Right, _ => box.Centre.X };
        pen.Text(x, box.Y + 0.9 * t, name, t * 1.07, Role.Blue, anchor, Weight.SemiBold);
        pen.Text(x, box.Bottom - 0.25 * t, words, t, Role.Ink, anchor);
        Leader(pen, frame, at, box);
    }

    private static void GhostLabel(Pen pen, FlowFrame frame, FlowLine line, LabelPlaces labels)
    {
        var t = frame.Size.Text;
        var end = line.Line.Count > 0 ? frame.At(line.Line[^1].Lift, line.Line[^1].Flow) : frame.At(line.Dots[^1].Lift, line.Dots[^1].Flow);
        var name = Lettering.Fit(line.Name, t, frame.Size.Width * 0.3);
        if (labels.Find(end, Lettering.Width(name, t), t, 0.5 * t) is not { } box) return;
        pen.Text(box.X, box.Y + Lettering.Ascent * t, name, t, Role.Quiet);
        Leader(pen, frame, end, box);
    }

    /// <summary>A thin line from a label that had to stand off to what it names.</summary>
    private static void Leader(Pen pen, FlowFrame frame, Place point, Box label)
    {
        var x = Math.Clamp(point.X, label.X, label.Right);
        var y = Math.Clamp(point.Y, label.Y, label.Bottom);
        if (Math.Abs(x - point.X) + Math.Abs(y - point.Y) <= 1.6 * frame.Size.Text) return;
        pen.Line(point.X, point.Y, x, y, new Stroke(Role.Quiet, frame.Size.Thick(0.8)));
    }

    /// <summary>The empty figure: the shape of what goes there, and one sentence.</summary>
    private static void Nothing(Pen pen, FlowFrame frame, FlowPlot plot)
    {
        var size = frame.Size;
        var t = size.Text;
        // Only the way such a curve goes, without a number: a rise that flattens.
        var curve = Enumerable.Range(0, 41).Select(i => i / 40.0)
            .Select(x => new Place(frame.Left + (0.08 + 0.9 * x) * (frame.Right - frame.Left), frame.Bottom - (0.12 + 0.76 * Math.Sin(x * Math.PI / 2.1)) * (frame.Bottom - frame.Top)));
        pen.Polyline(curve, new Stroke(Role.Hairline, size.Thick(2.2), LineType.Dashed));
        var y = frame.Bottom - 2.6 * t;
        foreach (var line in Lettering.Wrap($"No reading of {plot.Name} yet. The first lift puts the first point here.", t, (frame.Right - frame.Left) * 0.62).Reverse())
        {
            pen.Text(frame.Right, y, line, t, Role.Quiet, Anchor.End);
            y -= 1.3 * t;
        }
    }
}
