using Portwright.Engine.Runs;
using Portwright.Shop.Record;
using Portwright.Shop.Runs;
using Portwright.Shop.Units;

namespace Portwright.Figures;

/// <summary>The section along the port from flange to seat, and what one percent more section is worth at each place; the pipe's far end stands apart at the left.</summary>
public static class WorthAlongPort
{
    public static Drawing Of(EngineAnswer answer, PortKind kind, UnitSystem units, FigureSize? size = null)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var room = size ?? FigureSize.Wide;
        var t = room.Text;
        var pen = new Pen();
        var side = kind == PortKind.Intake ? "intake" : "exhaust";
        var worth = kind == PortKind.Intake ? answer.Worth.IntakeSections : answer.Worth.ExhaustSections;
        // The tract ends with the flange and the far end of the pipe bolted to it.
        var flange = worth[^2].Distance;
        var inPort = worth.SkipLast(1).Reverse().ToList();
        var apart = 5.2 * t;
        var along = new Scale(0, flange, 3.6 * t + apart, room.Width - 1.8 * t);
        var far = -apart * 0.62 / (along.PlaceTo - along.PlaceFrom) * flange;
        var (top, bottom) = (1.9 * t, room.Height - 3.6 * t);
        var split = top + 0.45 * (bottom - top);

        var whole = along with { From = along.From - flange * apart / (along.PlaceTo - along.PlaceFrom), PlaceFrom = 3.6 * t };
        var low = inPort.Min(s => s.Area);
        var panel = new PlotPanel(room, units, Dimension.Area, whole, top, split, 0.9 * low, 1.05 * worth.Max(s => s.Area));
        panel.Draw(pen, $"section, {Print.UnitName(Dimension.Area, units)}");
        pen.Polyline(inPort.Select(s => panel.At(flange - s.Distance, s.Area)), new Stroke(Role.Blue, room.Thick(2.2)));
        foreach (var s in inPort) pen.Circle(panel.At(flange - s.Distance, s.Area), room.Thick(3.6), Role.Blue);
        pen.Circle(panel.At(far, worth[^1].Area), room.Thick(3.6), Role.Ground, new Stroke(Role.Blue, room.Thick(1.6)));
        Letters(pen, room, answer, kind, along, flange, top);

        List<WorthBar> bars = [Bar(worth[^1], far, "far end of the pipe"), .. inPort.Select(s => Bar(s, flange - s.Distance, Words(s, flange, units)))];
        WorthBars.Draw(pen, room, units, whole, split + 2.7 * t, bottom, Together(bars, whole, 1.2 * t), WorthBars.Most(bars), $"one percent more section there, {Print.UnitName(Dimension.Torque, units)} on average");
        PlotPanel.Foot(pen, room, along, bottom, Dimension.Length, units, $"{Print.UnitName(Dimension.Length, units)} from the flange to the {side} seat");
        pen.Text(whole.At(far), bottom + 1.6 * t, "far end", t, Role.Quiet, Anchor.Middle);
        pen.Line(along.PlaceFrom - 0.2 * apart, top, along.PlaceFrom - 0.2 * apart, bottom, new Stroke(Role.Hairline, room.Thick(1), LineType.Dashed));
        var best = bars.MaxBy(b => Math.Abs(b.Torque));
        return pen.Done(
            room.Width, room.Height, $"What {side} section is worth, along the port",
            $"Calculated. Counts most: {best.Words}, {WorthBars.Signed(best.Torque, units, 2)} {Print.UnitName(Dimension.Torque, units)} on average over the range for one percent more.");
    }

    private static WorthBar Bar(SectionWorth worth, double at, string words) => new(at, worth.Torque / 100, words);

    private static string Words(SectionWorth section, double flange, UnitSystem units) => section.Distance == 0 ? "throat"
        : section.Distance == flange ? "flange" : $"{Print.Number(flange - section.Distance, Dimension.Length, units)} from the flange";

    /// <summary>Bars nearer together than a width are one: sections that change together add up.</summary>
    private static List<WorthBar> Together(IReadOnlyList<WorthBar> bars, Scale along, double width)
    {
        List<WorthBar> kept = [];
        foreach (var bar in bars)
        {
            if (kept.Count > 0 && along.At(bar.At) - along.At(kept[^1].At) < width)
                kept[^1] = new((kept[^1].At + bar.At) / 2, kept[^1].Torque + bar.Torque, $"{kept[^1].Words} and {bar.Words}");
            else kept.Add(bar);
        }

        return kept;
    }

    private static void Letters(Pen pen, FigureSize size, EngineAnswer answer, PortKind kind, Scale along, double flange, double top)
    {
        var t = size.Text;
        var last = double.NegativeInfinity;
        foreach (var s in answer.Question.Pair.Of(kind)?.Stations.Where(s => s.Section is not null && s.Distance >= 0 && s.Distance <= flange) ?? [])
        {
            var x = along.At(s.Distance);
            if (x < last + t) continue;
            pen.Text(x, top + 0.9 * t, s.Letter, t, Role.Quiet, Anchor.Middle, Weight.SemiBold);
            last = x;
        }
    }
}
