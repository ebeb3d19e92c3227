using Portwright.Shop.Units;

namespace Portwright.Figures;

/// <summary>
/// Flow over valve lift: this cut solid with its doubt, earlier cuts as ghosts by line type, the cam's lift marked, and under it the
/// strip <i>this cut less the last</i> over the noise of the bench; what the engine asks for stands as a band behind. No measured line goes past a reading.
/// </summary>
public static class FlowOverLift
{
    private static readonly LineType[] GhostTypes = [LineType.Dashed, LineType.LongDashDot, LineType.Dotted];

    /// <summary>Draws the figure.</summary>
    public static Drawing Draw(FlowPlot plot, FigureSize size, UnitSystem units = UnitSystem.UsCustomary)
    {
        var frame = new FlowFrame(plot, size, units);
        var pen = new Pen();
        var empty = plot.Now is null && plot.Earlier.Count == 0;
        if (!empty) WantedBand.Draw(pen, frame, plot);
        frame.Draw(pen);
        frame.NameCam(pen);
        var labels = new LabelPlaces(new Box(frame.Left, 1.7 * size.Text, size.Width - frame.Left, frame.Bottom - 2 * size.Text));
        labels.Take(pen.Marks);
        if (!empty) WantedBand.KeepFree(frame, plot, labels);
        if (plot.CamLift is { } cam) labels.Avoid([new(frame.Lift.At(cam), frame.Top), new(frame.Lift.At(cam), frame.Bottom)]);
        if (empty)
        {
            Nothing(pen, frame, plot);
            frame.DrawCam(pen, labels);
            return pen.Done(size.Width, size.Height, $"Flow over lift, {plot.Name}", "No reading yet.");
        }

        var ghosts = plot.Ghosts();
        foreach (var line in plot.Drawn()) labels.Avoid([.. line.Line.Select(p => frame.At(p.Lift, p.Flow))]);
        for (var i = ghosts.Count - 1; i >= 0; i--) Ghost(pen, frame, ghosts[i], i);
        if (plot.Now is { } now) NowLine(pen, frame, now);
        if (plot.Closing is { Count: > 1 } closing) pen.Polyline(closing.Select(p => frame.At(p.Lift, p.Flow)), new Stroke(Role.Ink, size.Thick(1.4), LineType.Dashed));
        FlowLabels.Draw(pen, frame, plot, labels, units);
        WantedBand.Name(pen, frame, plot, labels);
        frame.DrawCam(pen, labels);
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

    /// <summary>The empty figure: the shape of what goes there, and one sentence.</summary>
    private static void Nothing(Pen pen, FlowFrame frame, FlowPlot plot)
    {
        var size = frame.Size;
        var t = size.Text;
        // Only the way such a curve goes, without a number: a rise that flattens.
        var curve = Enumerable.Range(0, 41).Select(i => i / 40.0)
            .Select(x => new Place(frame.Left + (0.08 + 0.9 * x) * (frame.Right - frame.Left), frame.Bottom - (0.12 + 0.76 * Math.Sin(x * Math.PI / 2.1)) * (frame.Bottom - frame.Top)));
        pen.Polyline(curve, new Stroke(Role.Hairline, size.Thick(2.2), LineType.Dashed));
        var y = frame.Top + 1.9 * t;
        foreach (var line in Lettering.Wrap($"No reading of {plot.Name} yet. The first lift puts the first point here.", t, (frame.Right - frame.Left) * 0.55))
        {
            pen.Text(frame.Left + 0.6 * t, y, line, t, Role.Quiet);
            y += 1.3 * t;
        }
    }
}
