using Portwright.Shop.Heads;
using Portwright.Shop.Record;

namespace Portwright.Figures;

/// <summary>
/// How the ports of a head lie: seen from above, valve covers up, the intakes' flange towards the eye. Each port runs from its flange to its valve; its valve stands in its
/// own half of the cylinder, so that a mirror image is drawn as one. A filled corner at the flange shows the centre side.
/// </summary>
public static class HeadLayDrawing
{
    /// <summary>Draws the head, wrapped into rows where it has more cylinders than the width holds.</summary>
    /// <param name="along">From left to right.</param>
    /// <param name="width">Room, 200 or more; under 480 the letters are those of a phone.</param>
    /// <param name="href">Where touching a port leads; null: ports without words, as a pattern to choose.</param>
    /// <param name="changed">Ports that are not saved as they are drawn.</param>
    /// <exception cref="ArgumentOutOfRangeException">The width is under 200.</exception>
    public static Drawing Of(string head, HeadLay lay, IReadOnlyList<PortLie> along, double width, Func<PortLie, string>? href = null, IReadOnlySet<Guid>? changed = null)
    {
        ArgumentNullException.ThrowIfNull(lay);
        ArgumentNullException.ThrowIfNull(along);
        if (!(width >= 200)) throw new ArgumentOutOfRangeException(nameof(width), width, "200 or more.");
        var text = width < 480 ? 13 : 15.0;
        var cylinders = along.Select(l => l.Port.Cylinder).Distinct().ToList();
        var beside = lay.Exhausts == ExhaustSide.WithIntakes;
        var least = href is null ? 34 : (beside ? 11.6 : 5.8) * text;
        var fit = (int)Math.Max(1, Math.Floor((width - 4) / least));
        var rows = Math.Max(1, (cylinders.Count + fit - 1) / fit);
        var perRow = Math.Max(1, (cylinders.Count + rows - 1) / rows);
        var pitch = Math.Min(beside ? 230 : 170, (width - 4) / perRow);
        var plan = new HeadPlan(pitch, href is null ? 0 : text, beside);

        var pen = new Pen();
        var y = 1.0;
        for (var row = 0; row < rows; row++)
        {
            var here = cylinders.Skip(row * perRow).Take(perRow).ToList();
            if (href is not null && !beside) pen.Text(2, y + text, "exhausts' flange", text, Role.Quiet);
            y += href is null || beside ? 0 : 1.5 * text;
            var metal = new Box(2, y + plan.WordsAbove, pitch * here.Count, plan.Metal);
            pen.Box(metal, 5, Role.Ground, new Stroke(Role.Ink, 2));
            pen.Line(metal.X + 3, metal.Centre.Y, metal.Right - 3, metal.Centre.Y, new Stroke(Role.Quiet, 1, LineType.LongDashDot));
            for (var i = 0; i < here.Count; i++)
            {
                var middle = new Place(metal.X + pitch * (i + 0.5), metal.Centre.Y);
                pen.Circle(middle, plan.Bore, null, new Stroke(Role.Quiet, 1.2, LineType.LongDashDot));
                pen.Line(middle.X, middle.Y - plan.Bore - 4, middle.X, middle.Y + plan.Bore + 4, new Stroke(Role.Quiet, 1, LineType.LongDashDot));
                var ports = along.Where(l => l.Port.Cylinder == here[i]).ToList();
                foreach (var port in ports)
                {
                    // Two ports of one flange that say the same half stand beside each other all the same, each to be touched.
                    var taken = beside && ports.TakeWhile(p => p != port).Any(p => p.HalfSeen(lay) == port.HalfSeen(lay));
                    Port(pen, plan, lay, port, middle, metal, href, changed?.Contains(port.Id) == true, taken);
                }
            }

            y = metal.Bottom + plan.WordsBelow;
            if (href is null) continue;
            pen.Text(2, y + text, $"{(beside ? "flange of all" : "intakes' flange")}, towards you", text, Role.Quiet);
            y += 2.2 * text;
        }

        return pen.Done(pitch * perRow + 4, y + 2, $"How {head} lies", string.Join(". ", along.Select(l => l.Said)) + ".");
    }

    private static void Port(Pen pen, HeadPlan plan, HeadLay lay, PortLie port, Place middle, Box metal, Func<PortLie, string>? href, bool changed, bool taken)
    {
        var half = port.HalfSeen(lay);
        var stands = taken ? -half : half;
        var up = port.Port.Kind == PortKind.Exhaust && !plan.Beside;
        var role = changed ? Role.Blue : Role.Ink;
        var own = new Pen();
        plan.Draw(own, port.Port, stands, half, up, middle, metal, role);
        if (href is null)
        {
            pen.Put(own.Marks);
            return;
        }

        var at = new Place(plan.MouthOf(middle, stands), up ? metal.Y : metal.Bottom);
        var centre = plan.Beside ? at.X : middle.X;
        var text = plan.Text;
        List<string> words = [$"{(port.Port.Kind == PortKind.Intake ? "in" : "ex")} {port.Port.Cylinder}", .. Lines(port)];
        var first = up ? at.Y - (words.Count - 0.35) * 1.2 * text + 0.4 * text : at.Y + 1.3 * text;
        for (var i = 0; i < words.Count; i++)
            own.Text(centre, first + 1.2 * text * i, words[i], text, i == 0 ? role : changed ? Role.Blue : Role.Quiet, Anchor.Middle, i == 0 || changed ? Weight.SemiBold : Weight.Regular);
        var room = plan.Beside ? plan.Pitch / 2 - 2 : plan.Pitch - 4;
        var hit = up
            ? new Box(centre - room / 2, at.Y - plan.WordsAbove, room, plan.WordsAbove + plan.Metal / 2 - 2)
            : new Box(centre - room / 2, plan.Beside ? metal.Y + 2 : middle.Y + 2, room, at.Y + plan.WordsBelow - (plan.Beside ? metal.Y + 2 : middle.Y + 2));
        pen.Put(new Touchable(
            $"{string.Join(" ", words)}: {port.Said}. Touch: the other way round",
            own.Marks, hit, [], href(port), $"lie-{(port.Port.Kind == PortKind.Intake ? "i" : "e")}{port.Port.Cylinder}"));
    }

    /// <summary>Two short lines under a port.</summary>
    private static IEnumerable<string> Lines(PortLie port)
    {
        if (port.Words == port.Side) return ["centre side", port.Port.Mirrored ? "left" : "right"];
        var first = $"{(port.Port.Kind == PortKind.Intake ? "in" : "ex")} {port.First.Cylinder}";
        return port.Port.Mirrored == port.First.Mirrored ? [$"as {first}"] : ["mirror image", $"of {first}"];
    }
}
