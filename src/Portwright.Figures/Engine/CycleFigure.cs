using Portwright.Engine.Runs;
using Portwright.Shop.Units;

namespace Portwright.Figures;

/// <summary>One cycle at one speed: pressures over the outside air's, Mach number behind the valves, lifts; a cursor that a page may move.</summary>
public static class CycleFigure
{
    /// <summary>The cursor's name in the drawing; a page moves it along.</summary>
    public const string Cursor = "cursor";

    /// <summary>Places of the scale's ends, for the cursor.</summary>
    public static (double From, double To) Along(FigureSize size)
    {
        ArgumentNullException.ThrowIfNull(size);
        return (3.6 * size.Text, size.Width - 2.4 * size.Text);
    }

    /// <param name="outside">Pressure of the air the engine stands in, Pa.</param>
    /// <param name="shown">Degrees after the firing top at which the cursor stands.</param>
    public static Drawing Of(CycleTrace trace, double outside, UnitSystem units, FigureSize? size = null, int shown = 360)
    {
        ArgumentNullException.ThrowIfNull(trace);
        var room = size ?? FigureSize.Wide;
        var t = room.Text;
        var pen = new Pen();
        var (left, right) = Along(room);
        var along = new Scale(0, CycleTrace.Rows, left, right);
        var (top, bottom) = (1.9 * t, room.Height - 2.4 * t);
        var gap = 2.3 * t;
        var unit = bottom - top - 2 * gap;

        // The burning gas is dozens of times higher: the plot shows the gas exchange, the cylinder's line leaves it there.
        var ports = trace.Intake.ValvePressure.Concat(trace.Exhaust.ValvePressure).Select(p => p - outside).ToList();
        var (low, high) = (Math.Min(ports.Min(), Enumerable.Range(360, 360).Min(i => trace.CylinderPressure[CycleAngle.Row(i)] - outside)), ports.Max());
        var pressure = new PlotPanel(room, units, Dimension.Pressure, along, top, top + 0.46 * unit, low * 1.15, high * 1.25);
        pressure.Draw(pen, $"pressure over the outside air, {Print.UnitName(Dimension.Pressure, units)}");
        pen.Line(left, pressure.Value.At(0), right, pressure.Value.At(0), new Stroke(Role.Quiet, room.Thick(1)));
        var mach = new PlotPanel(room, units, Dimension.Ratio, along, pressure.Bottom + gap, pressure.Bottom + gap + 0.3 * unit, Math.Min(-0.05, Math.Min(trace.Intake.ValveMach.Min(), trace.Exhaust.ValveMach.Min())), 1.2 * Math.Max(trace.Intake.ValveMach.Max(), trace.Exhaust.ValveMach.Max()));
        mach.Draw(pen, "Mach number behind the valves; below 0 it flows back");
        var lift = new PlotPanel(room, units, Dimension.Lift, along, mach.Bottom + gap, bottom, 0, 1.15 * Math.Max(trace.IntakeLift.Max(), trace.ExhaustLift.Max()));
        lift.Draw(pen, $"lift, {(units == UnitSystem.UsCustomary ? "in" : "mm")}");

        Stroke intake = new(Role.Blue, room.Thick(2.2)), exhaust = new(Role.Brass, room.Thick(2.2), LineType.Dashed), cylinder = new(Role.Ink, room.Thick(1.4));
        Line(pen, room, pressure, [("cylinder", i => trace.CylinderPressure[i] - outside, cylinder), ("intake port", i => trace.Intake.ValvePressure[i] - outside, intake), ("exhaust port", i => trace.Exhaust.ValvePressure[i] - outside, exhaust)]);
        Line(pen, room, mach, [("intake", i => trace.Intake.ValveMach[i], intake), ("exhaust", i => trace.Exhaust.ValveMach[i], exhaust)]);
        Line(pen, room, lift, [("intake", i => trace.IntakeLift[i], intake), ("exhaust", i => trace.ExhaustLift[i], exhaust)]);

        pen.Line(left, bottom, right, bottom, new Stroke(Role.Ink, room.Thick(1.2)));
        foreach (var (at, words) in CycleAngle.Ticks)
        {
            pen.Line(along.At(at), top, along.At(at), bottom + 0.4 * t, new Stroke(Role.Hairline, room.Thick(1), LineType.LongDashDot));
            pen.Text(along.At(at), bottom + 1.7 * t, words, t, Role.Quiet, Anchor.Middle);
        }

        pen.Named(Cursor, c => c.Line(along.At(shown), top - 0.4 * t, along.At(shown), bottom, new Stroke(Role.Ink, room.Thick(2))));
        var rpm = Print.Number(2 * Math.PI * trace.Point.TurnsASecond, Dimension.RotationalSpeed, units);
        return pen.Done(
            room.Width, room.Height, $"One cycle at {rpm}",
            $"Calculated. Highest Mach number behind the intake valve {Print.Bare(trace.Intake.ValveMach.Max(), Dimension.Ratio, units, 2)}, behind the exhaust valve {Print.Bare(trace.Exhaust.ValveMach.Max(), Dimension.Ratio, units, 2)}.");
    }

    private static void Line(Pen pen, FigureSize size, PlotPanel panel, IReadOnlyList<(string Name, Func<int, double> Of, Stroke Stroke)> lines)
    {
        var t = size.Text;
        var labels = new LabelPlaces(new Box(panel.Left, panel.Top, size.Width - panel.Left - 2, panel.Bottom - panel.Top));
        labels.Take(pen.Marks);
        var peaks = new List<(string Name, Place At, Role Role)>();
        foreach (var (name, of, stroke) in lines)
        {
            var piece = new List<Place>();
            var all = new List<Place>();
            var best = (Value: double.NegativeInfinity, At: default(Place));
            for (var shown = 0; shown <= CycleTrace.Rows; shown += 2)
            {
                var value = of(CycleAngle.Row(shown));
                if (value <= panel.Value.To && value >= panel.Value.From)
                {
                    var at = panel.At(shown, value);
                    piece.Add(at);
                    all.Add(at);
                    if (value > best.Value) best = (value, at);
                    continue;
                }

                if (piece.Count > 1) pen.Polyline(piece, stroke);
                piece = [];
            }

            if (piece.Count > 1) pen.Polyline(piece, stroke);
            labels.Avoid(all);
            if (all.Count > 0) peaks.Add((name, best.At, stroke.Role));
        }

        foreach (var (name, at, role) in peaks)
        {
            if (labels.Find(at, Lettering.Width(name, t, Weight.SemiBold), 1.1 * t, 0.4 * t) is { } box)
                pen.Text(box.X, box.Y + 0.9 * t, name, t, role, Anchor.Start, Weight.SemiBold);
        }
    }
}
