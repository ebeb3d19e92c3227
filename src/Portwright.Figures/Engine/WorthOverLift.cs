using Portwright.Shop.Record;
using Portwright.Shop.Runs;
using Portwright.Shop.Units;

namespace Portwright.Figures;

/// <summary>Flow over lift as measured, and on the same lifts what one percent more area there is worth to this engine.</summary>
public static class WorthOverLift
{
    /// <summary>The bars of one side.</summary>
    public static IReadOnlyList<WorthBar> Bars(EngineAnswer answer, PortKind kind, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(answer);
        return [.. (kind == PortKind.Intake ? answer.Worth.Intake : answer.Worth.Exhaust).Select(w => new WorthBar(w.Lift, w.Torque / 100, $"lift {Print.Number(w.Lift, Dimension.Lift, units)}"))];
    }

    public static Drawing Of(EngineAnswer answer, PortKind kind, UnitSystem units, FigureSize? size = null)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var room = size ?? FigureSize.Wide;
        var t = room.Text;
        var pen = new Pen();
        var side = kind == PortKind.Intake ? "intake" : "exhaust";
        var bars = Bars(answer, kind, units);
        var most = WorthBars.Most(Bars(answer, PortKind.Intake, units).Concat(Bars(answer, PortKind.Exhaust, units)));
        var cam = answer.Question.Plan.CamOf(kind).Lift.Highest;
        var along = new Scale(0, Math.Max(bars[^1].At, cam) * 1.04, 3.6 * t, room.Width - 1.8 * t);
        var (top, bottom) = (1.9 * t, room.Height - 3.6 * t);
        var split = top + 0.5 * (bottom - top);
        Measured(pen, room, units, answer, kind, along, top, split, cam);
        WorthBars.Draw(pen, room, units, along, split + 2.7 * t, bottom, bars, most, $"one percent more area there, {Print.UnitName(Dimension.Torque, units)} on average");
        PlotPanel.Foot(pen, room, along, bottom, Dimension.Lift, units, $"{side} lift, {(units == UnitSystem.UsCustomary ? "in" : "mm")}");
        var best = bars.MaxBy(b => b.Torque);
        return pen.Done(
            room.Width, room.Height, $"What {side} area is worth, lift by lift",
            $"Calculated. Worth most at {best.Words}: {WorthBars.Signed(best.Torque, units, 2)} {Print.UnitName(Dimension.Torque, units)} on average over the range for one percent more area there.");
    }

    private static void Measured(Pen pen, FigureSize size, UnitSystem units, EngineAnswer answer, PortKind kind, Scale along, double top, double bottom, double cam)
    {
        var t = size.Text;
        if (answer.Question.Pair.Of(kind)?.Sheet.Flow is { } flow)
        {
            var line = FlowLine.Of(flow);
            var panel = new PlotPanel(size, units, Dimension.VolumeFlow, along, top, bottom, 0, 1.12 * line.Dots.Max(d => d.Flow + d.Doubt));
            panel.Draw(pen, $"flow as measured, {line.Name}, {Print.UnitName(Dimension.VolumeFlow, units)}");
            pen.Polyline(line.Line.Select(p => panel.At(p.Lift, p.Flow)), new Stroke(Role.Blue, size.Thick(2.4)));
            foreach (var dot in line.Dots)
            {
                pen.Line(along.At(dot.Lift), panel.Value.At(dot.Flow + dot.Doubt), along.At(dot.Lift), panel.Value.At(dot.Flow - dot.Doubt), new Stroke(Role.Blue, size.Thick(1.2)));
                pen.Circle(panel.At(dot.Lift, dot.Flow), size.Thick(4), Role.Blue);
            }
        }
        else
        {
            pen.Text(along.PlaceFrom, (top + bottom) / 2, Lettering.Fit("Not swept: taken from the other side.", t, size.Width - along.PlaceFrom), t, Role.Quiet);
        }

        var x = along.At(cam);
        var words = $"cam {Print.Number(cam, Dimension.Lift, units)}";
        pen.Line(x, top, x, bottom, new Stroke(Role.Brass, size.Thick(1.6), LineType.LongDashDot));
        pen.Text(x - 0.5 * t, bottom - 0.6 * t, words, t, Role.Brass, Anchor.End);
    }
}
