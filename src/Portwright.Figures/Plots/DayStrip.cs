namespace Portwright.Figures;

/// <summary>One reading of the day.</summary>
/// <param name="Title">What it says when touched: <c>.300: 195.0 ± 2.0 cfm, 10:42</c>.</param>
public sealed record DayDot(string Title, string? Href = null, string? Key = null);

/// <summary>Readings taken one after another on one port: <c>intake 1, cut 2</c>.</summary>
/// <param name="Now">True for the sweep on the bench.</param>
public sealed record DayGroup(string Words, IReadOnlyList<DayDot> Dots, bool Now = false);

/// <summary>The day as a strip: each reading a dot where it was taken in the day's order, the sweep on the bench filled.</summary>
public static class DayStrip
{
    private const double Text = 13, Step = 24, GroupGap = 30;

    /// <summary>Draws the strip as wide as the room. Where the day is longer than the room, its latest part is shown.</summary>
    public static Drawing Draw(IReadOnlyList<DayGroup> day, double width, string heading = "today")
    {
        var pen = new Pen();
        var left = Lettering.Width(heading, Text + 2) + 16;
        pen.Text(2, 22, heading, Text + 2, Role.Quiet);
        pen.Line(left, 17, width - 4, 17, new Stroke(Role.Hairline, 1.4));
        var dots = day.Sum(g => g.Dots.Count);
        if (dots == 0)
        {
            pen.Text(left, 38, Lettering.Fit("Nothing read yet.", Text, width - left), Text, Role.Quiet);
            return pen.Done(width, 44, heading, "No reading yet.");
        }

        var shown = Latest(day, width - left - 20);
        var x = left + 12;
        for (var i = 0; i < shown.Count; i++)
        {
            var group = shown[i];
            var start = x;
            foreach (var dot in group.Dots)
            {
                var at = new Place(x, 17);
                pen.Touchable(dot.Title, new Box(x - Step / 2, 3, Step, 28), seen =>
                    seen.Circle(at, 5.2, group.Now ? Role.Blue : Role.Ground, new Stroke(group.Now ? Role.Blue : Role.Quiet, 1.5)), href: dot.Href, key: dot.Key);
                x += Step;
            }

            // The words may run on under the next gap, never under the next group's words.
            var room = (i == shown.Count - 1 ? width : x - Step + GroupGap) - start - 2;
            pen.Text(start - 5, 42, Lettering.Fit(group.Words, Text, room), Text, group.Now ? Role.Blue : Role.Quiet, Anchor.Start, group.Now ? Weight.SemiBold : Weight.Regular);
            x += GroupGap - Step;
            x = Math.Max(x, start + MinimumWidth(group));
        }

        return pen.Done(width, 48, heading, $"{dots} readings. {string.Join("; ", day.Select(g => $"{g.Words}: {g.Dots.Count}"))}.");
    }

    private static double MinimumWidth(DayGroup group) => Math.Min(90, Lettering.Width(group.Words, Text) + 12);

    private static double WidthOf(DayGroup group) => Math.Max((group.Dots.Count - 1) * Step + GroupGap, MinimumWidth(group));

    private static List<DayGroup> Latest(IReadOnlyList<DayGroup> day, double room)
    {
        var shown = new List<DayGroup>();
        foreach (var group in day.Where(g => g.Dots.Count > 0).Reverse())
        {
            var width = WidthOf(group);
            if (width <= room)
            {
                shown.Insert(0, group);
                room -= width;
                continue;
            }

            var fits = (int)Math.Floor((room - GroupGap) / Step) + 1;
            if (fits >= 1 && (fits >= 3 || shown.Count == 0)) shown.Insert(0, group with { Dots = [.. group.Dots.Skip(group.Dots.Count - Math.Min(fits, group.Dots.Count))] });
            break;
        }

        return shown;
    }
}
