using Portwright.Engine.Runs;
using Portwright.Shop.Runs;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Figures;

/// <summary>How full the cylinders get over engine speed, and under it what spoils it: burnt gas that stays, gas pushed back into the intake.</summary>
public static class FillingOverSpeed
{
    /// <param name="speeds">Two or more, rising.</param>
    public static Drawing Of(IReadOnlyList<EngineSpeed> speeds, UnitSystem units, FigureSize? size = null)
    {
        ArgumentNullException.ThrowIfNull(speeds);
        var room = size ?? FigureSize.Wide;
        var t = room.Text;
        var pen = new Pen();
        var along = new Scale(speeds[0].RotationalSpeed, speeds[^1].RotationalSpeed, 3.4 * t, room.Width - 1.6 * t);
        var (top, bottom) = (1.9 * t, room.Height - 3.6 * t);
        var upper = 0.58 * (bottom - top - 2.6 * t);
        List<double> filling = [.. speeds.Select(s => s.Point.VolumetricEfficiency)];
        var air = Math.Max(0.15 * (filling.Max() - filling.Min()), 0.01);
        var panel = new PlotPanel(room, units, Dimension.Fraction, along, top, top + upper, filling.Min() - air, filling.Max() + 1.5 * air);
        panel.Draw(pen, $"{Term.VolumetricEfficiency.In(units)}, %");
        if (panel.Value.From < 1 && panel.Value.To > 1) pen.Line(panel.Left, panel.Value.At(1), panel.Right, panel.Value.At(1), new Stroke(Role.Quiet, room.Thick(1.2), LineType.Dashed));
        var line = Line(pen, room, panel, speeds, p => p.VolumetricEfficiency, new Stroke(Role.Blue, room.Thick(2.4)), Role.Blue);
        var best = speeds.MaxBy(s => s.Point.VolumetricEfficiency)!;
        var words = $"{Print.Number(best.Point.VolumetricEfficiency, Dimension.Fraction, units)} at {Print.Number(best.RotationalSpeed, Dimension.RotationalSpeed, units)}";
        Name(pen, room, panel, [line], panel.At(best.RotationalSpeed, best.Point.VolumetricEfficiency), words, Role.Ink);

        var most = Math.Max(0.01, speeds.Max(s => Math.Max(s.Point.Residual, s.Point.Reversion)));
        var under = new PlotPanel(room, units, Dimension.Fraction, along, top + upper + 2.6 * t, bottom, 0, 1.25 * most);
        under.Draw(pen, "what spoils it, %");
        var residual = Line(pen, room, under, speeds, p => p.Residual, new Stroke(Role.Quiet, room.Thick(1.8)), Role.Quiet);
        var reversion = Line(pen, room, under, speeds, p => p.Reversion, new Stroke(Role.Quiet, room.Thick(1.8), LineType.Dashed), null);
        var back = speeds.MaxBy(s => s.Point.Reversion)!;
        var stays = speeds.MaxBy(s => s.Point.Residual)!;
        var labels = Name(pen, room, under, [residual, reversion], under.At(back.RotationalSpeed, back.Point.Reversion), "pushed back", Role.Quiet);
        Name(pen, room, under, [residual, reversion], under.At(stays.RotationalSpeed, stays.Point.Residual), "burnt gas left", Role.Quiet, labels);
        PlotPanel.Foot(pen, room, along, bottom, Dimension.RotationalSpeed, units, "engine speed, rpm");
        return pen.Done(
            room.Width, room.Height, $"{Term.VolumetricEfficiency.Capital(units)} over engine speed",
            $"Calculated. Best {words}; at most {Print.Number(most, Dimension.Fraction, units)} burnt gas left or gas pushed back.");
    }

    private static List<Place> Line(Pen pen, FigureSize size, PlotPanel panel, IReadOnlyList<EngineSpeed> speeds, Func<OperatingPoint, double> of, Stroke stroke, Role? dots)
    {
        var line = speeds.Select(s => panel.At(s.RotationalSpeed, of(s.Point))).ToList();
        pen.Polyline(line, stroke);
        foreach (var p in line) pen.Circle(p, size.Thick(2.6), dots ?? Role.Ground, new Stroke(stroke.Role, size.Thick(1)));
        return line;
    }

    private static LabelPlaces Name(Pen pen, FigureSize size, PlotPanel panel, IReadOnlyList<List<Place>> lines, Place at, string words, Role role, LabelPlaces? labels = null)
    {
        var t = size.Text;
        if (labels is null)
        {
            labels = new LabelPlaces(new Box(panel.Left, panel.Top, size.Width - panel.Left - 2, panel.Bottom - panel.Top));
            labels.Take(pen.Marks);
            foreach (var line in lines) labels.Avoid(line);
        }

        if (labels.Find(at, Lettering.Width(words, t, Weight.SemiBold), 1.2 * t, size.Thick(8)) is { } box)
            pen.Text(box.X, box.Y + 0.95 * t, words, t, role, Anchor.Start, Weight.SemiBold);
        return labels;
    }
}
