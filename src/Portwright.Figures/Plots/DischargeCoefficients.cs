using System.Globalization;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Reduction;
using Portwright.Shop.Units;

namespace Portwright.Figures;

/// <summary>Discharge coefficients on curtain, window and throat over lift/diameter, and where the throat takes over.</summary>
public static class DischargeCoefficients
{
    private sealed record Line(string Name, Role Role, LineType Type, double Thick, Func<WindowUse, Estimate> Of);

    private static readonly Line[] Lines =
    [
        new("on window", Role.Blue, LineType.Continuous, 2.4, w => w.OfWindow),
        new("on curtain", Role.Ink, LineType.Dashed, 1.6, w => w.OfCurtain),
        new("on throat", Role.Ink, LineType.Dotted, 1.6, w => w.OfThroat),
    ];

    /// <summary>Draws the figure.</summary>
    /// <param name="windows">Lifts rising.</param>
    /// <param name="throatTakesOver">As lift/diameter; null where it is not known.</param>
    public static Drawing Draw(IReadOnlyList<WindowUse> windows, double? throatTakesOver, FigureSize size, UnitSystem units = UnitSystem.UsCustomary)
    {
        var t = size.Text;
        var pen = new Pen();
        var left = Lettering.Width("1.0", t) + 0.7 * t;
        var right = size.Width - Lines.Max(l => Lettering.Width(l.Name, t)) - t;
        var (top, bottom) = (3.4 * t, size.Height - 3.4 * t);
        var (curved, heading) = (windows.Count > 0, "discharge coefficient over lift/diameter");
        pen.Text(left, 1.1 * t, Lettering.Fit(heading, t, size.Width - left), t, Role.Quiet);

        var furthest = Math.Max(windows.Select(w => w.Window.LiftOverDiameter).DefaultIfEmpty(0.3).Max(), throatTakesOver is { } over && over < 1 ? over : 0);
        var across = new Scale(0, furthest, left, right);
        var highest = windows.SelectMany(w => Lines.Select(l => l.Of(w).Value + l.Of(w).Expanded())).DefaultIfEmpty(1).Max();
        var step = Scale.Step(Math.Max(highest, 0.2), 6);
        var up = new Scale(0, Math.Max(highest * 1.05, step), bottom, top);
        foreach (var level in Scale.Ticks(step, up.To, step))
        {
            pen.Line(left, up.At(level), right, up.At(level), new Stroke(Role.Hairline, size.Thick(1)));
            pen.Text(left - 0.6 * t, up.At(level) + 0.35 * t, N(level, step), t, Role.Quiet, Anchor.End);
        }

        pen.Line(left, bottom, right, bottom, new Stroke(Role.Ink, size.Thick(1.2)));
        var along = Scale.Step(furthest, (int)Math.Clamp((right - left) / (4.2 * t), 1, 10));
        foreach (var tick in Scale.Ticks(along, furthest, along))
        {
            pen.Line(across.At(tick), bottom, across.At(tick), bottom + 0.5 * t, new Stroke(Role.Quiet, size.Thick(1)));
            pen.Text(across.At(tick), bottom + 1.9 * t, N(tick, along), t, Role.Quiet, Anchor.Middle);
        }

        if (!curved)
        {
            var y = top + 1.6 * t;
            foreach (var line in Lettering.Wrap("Needs valve and seat of this port, and a reading.", t, right - left - t))
            {
                pen.Text(left + 0.6 * t, y, line, t, Role.Quiet);
                y += 1.3 * t;
            }

            return pen.Done(size.Width, size.Height, "Discharge coefficients", "Nothing to show yet.");
        }

        if (throatTakesOver is { } takes && takes <= furthest) Throat(pen, size, across.At(takes), top, bottom, takes);
        foreach (var line in Lines.Reverse()) Curve(pen, size, windows, line, across, up);
        var ends = Lines.Select(l => (Line: l, Y: up.At(l.Of(windows[^1]).Value))).OrderBy(e => e.Y).ToList();
        var places = FlowLabels.Apart([.. ends.Select(e => e.Y)], 1.2 * t, top, bottom - t);
        for (var i = 0; i < ends.Count; i++)
        {
            var worked = ends[i].Line.Role == Role.Blue;
            pen.Text(right + 0.6 * t, places[i] + 0.35 * t, ends[i].Line.Name, t, ends[i].Line.Role, Anchor.Start, worked ? Weight.SemiBold : Weight.Regular);
        }

        Readouts(pen, size, windows, across, (left, top, bottom), units);
        var last = windows[^1];
        return pen.Done(size.Width, size.Height, "Discharge coefficients over lift/diameter", string.Create(CultureInfo.InvariantCulture,
            $"At the highest lift {last.OfCurtain.Value:F3} on curtain, {last.OfWindow.Value:F3} on window, {last.OfThroat.Value:F3} on throat."));
    }

    private static void Throat(Pen pen, FigureSize size, double x, double top, double bottom, double at)
    {
        var t = size.Text;
        var words = string.Create(CultureInfo.InvariantCulture, $"throat takes over at {at:F3}");
        var width = Lettering.Width(words, t);
        pen.Line(x, top - 1.2 * t, x, bottom, new Stroke(Role.Brass, size.Thick(1.5), LineType.LongDashDot));
        var after = x + 0.5 * t + width <= size.Width;
        if (after) pen.Text(x + 0.5 * t, top - 0.5 * t, words, t, Role.Brass);
        else pen.Text(Math.Max(x - 0.5 * t, width), top - 0.5 * t, words, t, Role.Brass, Anchor.End);
    }

    private static void Curve(Pen pen, FigureSize size, IReadOnlyList<WindowUse> windows, Line line, Scale across, Scale up)
    {
        var places = windows.Select(w => new Place(across.At(w.Window.LiftOverDiameter), up.At(line.Of(w).Value))).ToList();
        pen.Polyline(places, new Stroke(line.Role, size.Thick(line.Thick), line.Type));
        foreach (var (w, at) in windows.Zip(places))
        {
            var doubt = line.Of(w).Expanded();
            pen.Line(at.X, up.At(line.Of(w).Value + doubt), at.X, up.At(Math.Max(0, line.Of(w).Value - doubt)), new Stroke(line.Role, size.Thick(1.2)));
            pen.Circle(at, size.Thick(line.Role == Role.Blue ? 4.5 : 3), line.Role);
        }
    }

    private static void Readouts(Pen pen, FigureSize size, IReadOnlyList<WindowUse> windows, Scale across, (double Left, double Top, double Bottom) plot, UnitSystem units)
    {
        var t = size.Text;
        for (var i = 0; i < windows.Count; i++)
        {
            var x = across.At(windows[i].Window.LiftOverDiameter);
            var from = i == 0 ? Math.Max(plot.Left, x - 2 * t) : (x + across.At(windows[i - 1].Window.LiftOverDiameter)) / 2;
            var to = i == windows.Count - 1 ? Math.Min(size.Width, x + 2 * t) : (x + across.At(windows[i + 1].Window.LiftOverDiameter)) / 2;
            var w = windows[i];
            var words = string.Create(CultureInfo.InvariantCulture,
                $"{Print.Number(w.Lift, Dimension.Lift, units)}: window {w.OfWindow.Value:F3} ± {w.OfWindow.Expanded():F3}, curtain {w.OfCurtain.Value:F3}, throat {w.OfThroat.Value:F3}");
            pen.Touchable(words, new Box(from, plot.Top, Math.Max(1, to - from), plot.Bottom - plot.Top), _ => { }, tip =>
            {
                tip.Box(new Box(0, 0, size.Width, 1.55 * t), 0, Role.Ground);
                tip.Text(0.2 * t, 1.1 * t, Lettering.Fit(words, t, size.Width - 0.4 * t, Weight.SemiBold), t, Role.Ink, Anchor.Start, Weight.SemiBold);
            }, key: $"lift-{Print.Bare(w.Lift, Dimension.Lift, UnitSystem.Si, 3)}");
        }
    }

    private static string N(double value, double step) => value.ToString(step >= 0.1 ? "F1" : "F2", CultureInfo.InvariantCulture);
}
