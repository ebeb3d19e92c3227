using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;
using Portwright.Shop.Sheets;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Figures;

/// <summary>
/// A head with its ports as shapes to touch: thick outline, thin hatch for metal, intakes taller than exhausts, the flow at the cam's lift
/// in each, its state beneath. The port on the bench stands in a blue frame.
/// </summary>
public static class HeadDrawing
{
    private const double Wall = 13, Gap = 12;

    /// <summary>Draws the head as wide as the room; ports that do not fit beside each other go to a further row.</summary>
    /// <param name="href">Where touching a port leads.</param>
    /// <param name="width">Room, 200 or more.</param>
    /// <param name="current">A port to frame; null frames those with an open sweep.</param>
    public static Drawing Draw(HeadOnBoard head, Func<PortOnBoard, string> href, double width, Guid? current = null, UnitSystem units = UnitSystem.UsCustomary)
    {
        if (!(width >= 200)) throw new ArgumentOutOfRangeException(nameof(width), width, "200 or more.");
        var narrow = width < 560;
        var text = narrow ? 13 : 15.0;
        var gap = narrow ? 7 : Gap;
        var wall = narrow ? 8 : Wall;
        var least = narrow ? 72 : 96.0;
        var fit = (int)Math.Max(1, Math.Floor((width - 2 - 2 * wall + gap) / (least + gap)));
        var count = Math.Max(1, head.Ports.Count);
        var rows = (count + fit - 1) / fit;
        // Rows of one length, and an intake stays beside its exhaust.
        var perRow = (count + rows - 1) / rows;
        if (rows > 1 && perRow % 2 == 1 && perRow + 1 <= fit) perRow++;
        rows = (count + perRow - 1) / perRow;
        var cell = Math.Min(140, (width - 2 - 2 * wall + gap) / perRow - gap);
        var shape = Math.Min(narrow ? 76 : 92, cell * 1.05);
        var cellHeight = 1.9 * text + shape + 3.6 * text;
        var outlineWidth = 2 * wall + perRow * (cell + gap) - gap;
        var height = 2 * wall + rows * (cellHeight + gap) - gap + 2;

        var pen = new Pen();
        var outline = new Box(1, 1, outlineWidth, height - 2);
        pen.Box(outline, 7, Role.Ground);
        pen.Hatch(outline.Grown(-3), 9, new Stroke(Role.Hairline, 1));
        pen.Box(outline, 7, null, new Stroke(Role.Ink, 2));
        if (head.Ports.Count == 0)
        {
            var box = outline.Grown(-wall);
            pen.Box(box, 4, Role.Panel);
            pen.Area(PortShape.Outline(new Box(box.Centre.X - shape * 0.38, box.Y + text, shape * 0.76, shape)), Role.Panel, new Stroke(Role.Hairline, 2, LineType.Dashed));
            var y = box.Y + shape + 2.4 * text;
            foreach (var line in Lettering.Wrap("No port yet. Add the first.", text, box.Width - 8).Take(2))
            {
                pen.Text(box.Centre.X, y, line, text, Role.Quiet, Anchor.Middle);
                y += 1.25 * text;
            }
        }

        for (var i = 0; i < head.Ports.Count; i++)
        {
            var box = new Box(1 + wall + i % perRow * (cell + gap), 1 + wall + i / perRow * (cellHeight + gap), cell, cellHeight);
            var port = head.Ports[i];
            var framed = current is { } id ? port.Port.Id == id : port.OpenSweep is not null;
            var cellPen = new Pen();
            Cell(cellPen, port, box, shape, text, framed, units);
            pen.Put(new Touchable(Name(cellPen.Marks, Say(port, head.Head.Fact, units)), cellPen.Marks, box, [], href(port), $"port-{port.Port.Id:N}"));
        }

        var done = head.Ports.Count(p => p.Flow is not null);
        return pen.Done(outlineWidth + 2, height, head.Head.Fact.Name, $"{head.Ports.Count} ports, {done} with a flow.");
    }

    private static void Cell(Pen pen, PortOnBoard port, Box box, double shape, double text, bool framed, UnitSystem units)
    {
        var intake = port.Port.Fact.Kind == PortKind.Intake;
        pen.Box(box, 4, Role.Panel, framed ? new Stroke(Role.Blue, 3) : null);
        var size = intake ? (W: shape * 0.76, H: shape) : (W: shape * 0.72, H: shape * 0.68);
        var middle = box.Y + 1.9 * text + shape / 2;
        var outline = new Box(box.Centre.X - size.W / 2, middle - size.H / 2, size.W, size.H);
        pen.Text(box.Centre.X, outline.Y - 0.65 * text, $"{(intake ? "in" : "ex")} {port.Port.Fact.Cylinder}", text, Role.Quiet, Anchor.Middle);
        pen.Area(PortShape.Outline(outline), port.Flow is null ? Role.Panel : Role.Wash, new Stroke(Role.Ink, 2.2));
        var number = port.Flow is { } flow ? Print.Bare(flow.Value, Dimension.VolumeFlow, units, 0) : Print.Nothing;
        var large = Math.Min(text * 1.55, text * 1.55 * (size.W * 0.84) / Math.Max(1, Lettering.Width(number, text * 1.55, Weight.SemiBold)));
        pen.Text(box.Centre.X, middle + 0.34 * large, number, large, Role.Ink, Anchor.Middle, Weight.SemiBold);

        var room = box.Width - 6;
        var y = outline.Bottom + 1.35 * text;
        pen.Text(box.Centre.X, y, Lettering.Fit(port.State, text, room), text, framed ? Role.Blue : Role.Quiet, Anchor.Middle, framed ? Weight.SemiBold : Weight.Regular);
        if (port.AgainstLast is { } against) Against(pen, against.Curves.WholeCurve, box, y + 1.35 * text, text, units);
    }

    /// <summary>The shape of the verdict, the difference, and its words where they fit.</summary>
    private static void Against(Pen pen, Difference difference, Box box, double y, double text, UnitSystem units)
    {
        var number = FlowReadout.Difference(difference, units);
        var full = difference.Verdict switch
        {
            Verdict.Real => $"{number}, real",
            Verdict.InsideTheNoise => $"{number}, noise",
            _ => $"{number}, unsure",
        };
        var words = Lettering.Width(full, text) + 1.2 * text <= box.Width - 4 ? full : number;
        var left = box.Centre.X - (1.2 * text + Lettering.Width(words, text)) / 2;
        VerdictMark.Draw(pen, new(left + 0.4 * text, y - 0.33 * text), 0.36 * text, VerdictWords.ShapeOf(difference), 1.5);
        pen.Text(left + 1.2 * text, y, words, text, Role.Ink);
    }

    /// <summary>
    /// The accessible name: first the letters as they stand in the drawing, so that a port is found by speaking what is seen (WCAG 2.2,
    /// success criterion 2.5.3, label in name), then all of it as one sentence.
    /// </summary>
    private static string Name(IEnumerable<Mark> marks, string sentence) =>
        $"{string.Join(", ", marks.OfType<Text>().Select(t => t.Words).Where(w => w != Print.Nothing))}: {sentence}";

    /// <summary>All of it as one sentence.</summary>
    private static string Say(PortOnBoard port, Head head, UnitSystem units)
    {
        var words = $"{port.Port.Fact.Name}, {head.Name}: ";
        words += port is { Flow: { } flow, Lift: { } lift }
            ? $"{Print.WithDoubt(flow.Value, flow.Expanded(), Dimension.VolumeFlow, units)} at {Print.Number(lift, Dimension.Lift, units)}, {port.State}"
            : port.State;
        if (port.LiftsLeft > 0) words += port.LiftsLeft == 1 ? ", one lift left" : $", {port.LiftsLeft} lifts left";
        if (port.AgainstLast is { } against)
        {
            var d = against.Curves.WholeCurve;
            words += $", {FlowReadout.Difference(d, units)} over the whole curve against cut {against.Last.Cut.Fact.Number}, {VerdictWords.Of(d)}";
        }

        return words;
    }
}
