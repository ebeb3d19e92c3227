using Portwright.Physics.Uncertainty;
using Portwright.Shop.Runs;
using Portwright.Shop.Units;

namespace Portwright.Figures;

/// <summary>Torque over engine speed and power under it, the bench's doubt as a band, the best of each named. Speeds that were run are dots; between them the line is straight.</summary>
public static class TorqueAndPower
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
        var each = (bottom - top - 2.6 * t) / 2;
        var torque = One(pen, room, units, along, top, top + each, speeds, s => s.Torque, Dimension.Torque, "torque");
        var power = One(pen, room, units, along, bottom - each, bottom, speeds, s => s.Power, Dimension.Power, "power");
        PlotPanel.Foot(pen, room, along, bottom, Dimension.RotationalSpeed, units, "engine speed, rpm");
        return pen.Done(room.Width, room.Height, "Torque and power over engine speed", $"Calculated, not a dynamometer. Best torque {torque}; best power {power}.");
    }

    private static string One(Pen pen, FigureSize size, UnitSystem units, Scale along, double top, double bottom, IReadOnlyList<EngineSpeed> speeds, Func<EngineSpeed, Estimate> of, Dimension dimension, string name)
    {
        var t = size.Text;
        var values = speeds.Select(of).ToList();
        var (low, high) = (values.Min(v => v.Value - v.Expanded()), values.Max(v => v.Value + v.Expanded()));
        var air = Math.Max(0.12 * (high - low), 0.01 * high);
        var panel = new PlotPanel(size, units, dimension, along, top, bottom, Math.Max(0, low - air), high + 2 * air);
        panel.Draw(pen, $"{name}, {Print.UnitName(dimension, units)}; grey: the bench's doubt");
        var line = speeds.Select((s, i) => panel.At(s.RotationalSpeed, values[i].Value)).ToList();
        var upper = speeds.Select((s, i) => panel.At(s.RotationalSpeed, values[i].Value + values[i].Expanded()));
        var lower = speeds.Select((s, i) => panel.At(s.RotationalSpeed, values[i].Value - values[i].Expanded()));
        pen.Area(upper.Concat(lower.Reverse()), Role.Noise, new Stroke(Role.Quiet, size.Thick(0.6)));
        pen.Polyline(line, new Stroke(Role.Blue, size.Thick(2.4)));
        foreach (var p in line) pen.Circle(p, size.Thick(3), Role.Blue);
        var best = speeds[values.FindIndex(v => v == values.MaxBy(e => e.Value))];
        var at = panel.At(best.RotationalSpeed, of(best).Value);
        pen.Circle(at, size.Thick(7), null, new Stroke(Role.Ink, size.Thick(1.6)));
        var words = $"{Print.WithDoubt(of(best).Value, of(best).Expanded(), dimension, units)} at {Print.Number(best.RotationalSpeed, Dimension.RotationalSpeed, units)}";
        var labels = new LabelPlaces(new Box(panel.Left, top, size.Width - panel.Left - 2, bottom - top));
        labels.Take(pen.Marks);
        labels.Avoid(line);
        var fitted = Lettering.Fit(words, t, size.Width - panel.Left - 4, Weight.SemiBold);
        if (labels.Find(at, Lettering.Width(fitted, t, Weight.SemiBold), 1.2 * t, size.Thick(10)) is { } box)
            pen.Text(box.X, box.Y + 0.95 * t, fitted, t, Role.Ink, Anchor.Start, Weight.SemiBold);
        return words;
    }
}
