using Portwright.Shop.Units;

namespace Portwright.Figures;

/// <summary>What one percent more of something is worth: a bar up where torque is gained, a hollow one down where it is lost.</summary>
/// <param name="At">Where it stands along the foot, in the figure's unit.</param>
/// <param name="Torque">Mean torque over the range for one percent, N m.</param>
/// <param name="Words">What the bar is about, for those who touch it: <c>lift .400</c>.</param>
public readonly record struct WorthBar(double At, double Torque, string Words);

/// <summary>The strip of bars under a curve.</summary>
internal static class WorthBars
{
    /// <summary>The most any bar of these is worth, N m either way: two figures that share it can be compared by eye.</summary>
    public static double Most(IEnumerable<WorthBar> bars) => bars.Select(b => Math.Abs(b.Torque)).DefaultIfEmpty(0).Max();

    public static void Draw(Pen pen, FigureSize size, UnitSystem units, Scale along, double top, double bottom, IReadOnlyList<WorthBar> bars, double most, string name)
    {
        var t = size.Text;
        if (!(most > 0)) most = 1;
        // Room for the numbers past the longest bars.
        var scale = new Scale(-most, most, bottom - 1.3 * t, top + 1.3 * t);
        pen.Text(along.PlaceFrom, top - 0.7 * t, Lettering.Fit(name, t, size.Width - along.PlaceFrom), t, Role.Quiet);
        var zero = scale.At(0);
        var least = bars.Zip(bars.Skip(1), (a, b) => Math.Abs(along.At(b.At) - along.At(a.At))).DefaultIfEmpty(4 * t).Min();
        var half = Math.Clamp(0.3 * least, 2.5, 0.9 * t);
        var decimals = Print.DecimalsOfDoubt(Unit.Default(Dimension.Torque, units).FromSi(most));
        var taken = new List<Box>();
        foreach (var bar in bars.OrderByDescending(b => Math.Abs(b.Torque)))
        {
            var (x, y) = (along.At(bar.At), scale.At(bar.Torque));
            var box = new Box(x - half, Math.Min(y, zero), 2 * half, Math.Max(1.5, Math.Abs(y - zero)));
            var (gain, number) = (bar.Torque >= 0, Signed(bar.Torque, units, Math.Max(0, decimals)));
            var wide = Lettering.Width(number, t);
            var middle = Math.Clamp(x, wide / 2 + 1, size.Width - wide / 2 - 1);
            var room = new Box(middle - wide / 2, gain ? box.Y - 1.2 * t : box.Bottom + 0.1 * t, wide, 1.1 * t);
            var written = !taken.Exists(b => b.Overlaps(room.Grown(1)));
            if (written) taken.Add(room);
            pen.Touchable(
                $"{bar.Words}: {Signed(bar.Torque, units, Math.Max(0, decimals))} {Print.UnitName(Dimension.Torque, units)} for one percent more",
                new Box(x - Math.Max(half, least / 2), top, 2 * Math.Max(half, least / 2), bottom - top),
                seen =>
                {
                    seen.Box(box, 0, gain ? Role.Blue : Role.Ground, new Stroke(gain ? Role.Blue : Role.Brass, size.Thick(1.6)));
                    if (!gain && box.Height > 6) seen.Segments(Slanted(box, 0.45 * t), new Stroke(Role.Brass, size.Thick(1)));
                    if (written) seen.Text(middle, room.Y + 0.9 * t, number, t, Role.Ink, Anchor.Middle);
                });
        }

        pen.Line(along.PlaceFrom, zero, along.PlaceTo, zero, new Stroke(Role.Ink, size.Thick(1.2)));
        pen.Text(along.PlaceFrom - 0.5 * t, zero - 0.6 * t, "gain", t, Role.Quiet, Anchor.End);
        pen.Text(along.PlaceFrom - 0.5 * t, zero + 1.2 * t, "harm", t, Role.Quiet, Anchor.End);
    }

    internal static string Signed(double torque, UnitSystem units, int decimals)
    {
        var words = Print.Bare(torque, Dimension.Torque, units, decimals);
        // What rounds to nothing has no sign.
        return words.AsSpan().IndexOfAnyInRange('1', '9') < 0 ? "0" : words.StartsWith('-') ? $"−{words[1..]}" : $"+{words}";
    }

    private static IEnumerable<(Place, Place)> Slanted(Box box, double spacing)
    {
        for (var s = spacing; s < box.Width + box.Height; s += spacing)
        {
            var (from, to) = (Math.Max(0, s - box.Height), Math.Min(s, box.Width));
            yield return (new(box.X + from, box.Y + s - from), new(box.X + to, box.Y + s - to));
        }
    }
}
