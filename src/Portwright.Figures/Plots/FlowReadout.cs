using Portwright.Physics.Uncertainty;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Figures;

/// <summary>What the figure says when a lift is pointed at, touched or reached by keyboard: always in the same row, over the curve.</summary>
internal static class FlowReadout
{
    public static void Draw(Pen pen, FlowFrame frame, FlowPlot plot, UnitSystem units)
    {
        var t = frame.Size.Text;
        var lifts = plot.Drawn().SelectMany(l => l.Dots.Select(d => d.Lift)).Order().Aggregate(
            new List<double>(), (all, lift) => { if (all.Count == 0 || lift - all[^1] > 1e-6) all.Add(lift); return all; });
        for (var i = 0; i < lifts.Count; i++)
        {
            var lift = lifts[i];
            var x = frame.Lift.At(lift);
            // The whole column from half way to the neighbours answers: a finger needs no aim.
            var from = i == 0 ? Math.Max(frame.Left, x - 2 * t) : (x + frame.Lift.At(lifts[i - 1])) / 2;
            var to = i == lifts.Count - 1 ? Math.Min(frame.Size.Width, x + 2 * t) : (x + frame.Lift.At(lifts[i + 1])) / 2;
            var bottom = plot.Last is null ? frame.Bottom + t : frame.StripBottom;
            var words = Say(plot, lift, units);
            pen.Touchable(
                words,
                new Box(from, frame.Top - 1.4 * t, to - from, bottom - frame.Top + 1.4 * t),
                _ => { },
                tip =>
                {
                    tip.Box(new Box(0, 0, frame.Size.Width, 1.55 * t), 0, Role.Ground);
                    tip.Text(0.2 * t, 1.1 * t, Lettering.Fit(words, t, frame.Size.Width - 0.4 * t, Weight.SemiBold), t, Role.Ink, Anchor.Start, Weight.SemiBold);
                    tip.Line(x, frame.Top, x, frame.Bottom, new Stroke(Role.Quiet, frame.Size.Thick(1), LineType.Dotted));
                },
                key: $"lift-{Print.Bare(lift, Dimension.Lift, UnitSystem.Si, 3)}");
        }
    }

    /// <summary>The whole figure in two sentences.</summary>
    public static string Describe(FlowPlot plot, UnitSystem units)
    {
        if (plot.Now is not { } now) return $"No reading of {plot.Name} yet; {plot.Last!.Name} is shown.";
        var last = now.Dots[^1];
        var words = $"{now.Dots.Count} {(now.Dots.Count == 1 ? "lift" : "lifts")} read; at {Print.Number(last.Lift, Dimension.Lift, units)} {Print.WithDoubt(last.Flow, last.Doubt, Dimension.VolumeFlow, units)}.";
        if (plot.Wanted is { } wanted && wanted.At(last.Lift) is { } range)
            words += $" {char.ToUpperInvariant(wanted.Words[0])}{wanted.Words[1..]}: {Print.Bare(range.Low, Dimension.VolumeFlow, units, 0)} to {Print.Number(range.High, Dimension.VolumeFlow, units, 0)} there.";
        if (plot.Last is null || plot.Less.IsDefaultOrEmpty) return words;
        var counts = plot.Less.GroupBy(d => VerdictWords.Of(d.Difference)).Select(g => $"{g.Key} at {g.Count()}");
        return $"{words} Against {plot.Last.Name}, by lifts: {string.Join(", ", counts)}.";
    }

    private static string Say(FlowPlot plot, double lift, UnitSystem units)
    {
        var at = Print.Number(lift, Dimension.Lift, units);
        if (Dot(plot.Now, lift) is not { } dot)
        {
            var before = plot.Ghosts().First(g => Dot(g, lift) is not null);
            var old = Dot(before, lift)!.Value;
            return $"{at}: {before.Name} {Print.WithDoubt(old.Flow, old.Doubt, Dimension.VolumeFlow, units)}";
        }

        var words = $"{at}: {Print.WithDoubt(dot.Flow, dot.Doubt, Dimension.VolumeFlow, units)}";
        if (plot.Wanted?.At(lift) is { } range) words += $", wanted {Print.Bare(range.Low, Dimension.VolumeFlow, units, 0)} to {Print.Bare(range.High, Dimension.VolumeFlow, units, 0)}";
        var less = plot.Less.IsDefault ? null : plot.Less.FirstOrDefault(d => Math.Abs(d.Lift - lift) < 1e-6);
        return less is null || plot.Last is null ? words : $"{words}; {Difference(less.Difference, units)}, {VerdictWords.Of(less.Difference)}";
    }

    /// <summary>A difference with its sign, figures chosen by its doubt: <c>+2.4</c>.</summary>
    internal static string Difference(Difference difference, UnitSystem units)
    {
        var doubt = difference.Of.Expanded() / Unit.Default(Dimension.VolumeFlow, units).Factor;
        var decimals = doubt > 0 && double.IsFinite(doubt) ? Math.Clamp(Print.DecimalsOfDoubt(doubt), 0, 2) : 1;
        var number = Print.Bare(Math.Abs(difference.Of.Value), Dimension.VolumeFlow, units, decimals);
        return difference.Of.Value < 0 ? $"−{number}" : $"+{number}";
    }

    private static FlowDot? Dot(FlowLine? line, double lift)
    {
        foreach (var dot in line?.Dots ?? [])
        {
            if (Math.Abs(dot.Lift - lift) < 1e-6) return dot;
        }

        return null;
    }
}
