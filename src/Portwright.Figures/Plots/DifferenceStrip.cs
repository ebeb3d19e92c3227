using Portwright.Physics.Uncertainty;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Figures;

/// <summary>The strip <i>this cut less the last</i>: grey is what the bench cannot tell apart, the shapes are the verdicts.</summary>
internal static class DifferenceStrip
{
    public static void Draw(Pen pen, FlowFrame frame, FlowPlot plot, UnitSystem units)
    {
        var t = frame.Size.Text;
        var unit = Print.UnitName(Dimension.VolumeFlow, units);
        var room = frame.Size.Width - frame.Left;
        var heading = $"{plot.Name} less {plot.Last!.Name}, {unit}; grey: the noise of this bench";
        if (Lettering.Width(heading, t) > room) heading = $"{plot.Name} less {plot.Last.Name}, {unit}; grey: noise";
        pen.Text(frame.Left, frame.StripHeading, Lettering.Fit(heading, t, room), t, Role.Quiet);

        var less = plot.Less.IsDefault ? [] : plot.Less;
        var flow = Unit.Default(Dimension.VolumeFlow, units);
        var most = less.Select(d => Math.Max(Math.Abs(d.Difference.Of.Value), Finite(d.SimultaneousHalfWidth))).DefaultIfEmpty(0).Max();
        var span = most > 0 ? flow.FromSi(most) * 1.15 : 1;
        var step = Scale.Step(span, 1) is var whole && whole > span ? Scale.Step(span, 2) : whole;
        var scale = new Scale(-flow.ToSi(Math.Max(span, step)), flow.ToSi(Math.Max(span, step)), frame.StripBottom, frame.StripTop);
        Band(pen, frame, less, scale);
        pen.Line(frame.Left, scale.At(0), frame.Right, scale.At(0), new Stroke(Role.Quiet, frame.Size.Thick(1.2)));
        pen.Text(frame.Left - 0.6 * t, scale.At(0) + 0.35 * t, "0", t, Role.Quiet, Anchor.End);
        if (most > 0)
        {
            var words = Print.Bare(flow.ToSi(step), Dimension.VolumeFlow, units, step < 1 ? 1 : 0);
            var up = scale.At(flow.ToSi(step));
            if (scale.At(0) - up > 1.1 * t && Lettering.Width($"+{words}", t) <= frame.Left - 0.6 * t)
            {
                pen.Text(frame.Left - 0.6 * t, up + 0.35 * t, $"+{words}", t, Role.Quiet, Anchor.End);
                pen.Text(frame.Left - 0.6 * t, scale.At(flow.ToSi(-step)) + 0.35 * t, $"−{words}", t, Role.Quiet, Anchor.End);
                foreach (var y in (ReadOnlySpan<double>)[up, scale.At(flow.ToSi(-step))])
                    pen.Line(frame.Left, y, frame.Right, y, new Stroke(Role.Hairline, frame.Size.Thick(1)));
            }
        }

        foreach (var d in less)
            VerdictMark.Draw(pen, new(frame.Lift.At(d.Lift), scale.At(d.Difference.Of.Value)), frame.Size.Thick(6), VerdictWords.ShapeOf(d.Difference), frame.Size.Thick(1.8));
        Words(pen, frame, less);
    }

    private static double Finite(double halfWidth) => double.IsFinite(halfWidth) ? halfWidth : 0;

    private static void Band(Pen pen, FlowFrame frame, IReadOnlyList<LiftDifference> less, Scale scale)
    {
        var known = less.Where(d => double.IsFinite(d.SimultaneousHalfWidth)).ToList();
        if (known.Count == 0) return;
        // A single lift still shows its noise: as a short piece of band.
        var half = known.Count == 1 ? frame.Size.Text : 0;
        var upper = known.Select(d => new Place(frame.Lift.At(d.Lift), scale.At(d.SimultaneousHalfWidth))).ToList();
        var lower = known.Select(d => new Place(frame.Lift.At(d.Lift), scale.At(-d.SimultaneousHalfWidth))).Reverse().ToList();
        if (half > 0)
        {
            upper = [upper[0] with { X = upper[0].X - half }, upper[0] with { X = upper[0].X + half }];
            lower = [lower[0] with { X = lower[0].X + half }, lower[0] with { X = lower[0].X - half }];
        }

        pen.Area(upper.Concat(lower), Role.Noise);
    }

    /// <summary>The shapes that stand in the strip, each with its words.</summary>
    private static void Words(Pen pen, FlowFrame frame, IReadOnlyList<LiftDifference> less)
    {
        var t = frame.Size.Text;
        var y = frame.StripBottom + 1.4 * t;
        if (less.Count == 0)
        {
            pen.Text(frame.Left, y, Lettering.Fit("Compared from the first lift both cuts were read at.", t, frame.Size.Width - frame.Left), t, Role.Quiet);
            return;
        }

        var kinds = less.Select(d => (Shape: VerdictWords.ShapeOf(d.Difference), Words: VerdictWords.Of(d.Difference))).Distinct().OrderBy(k => k.Shape).ToList();
        double Width(double size) => kinds.Sum(k => 1.3 * size + Lettering.Width(k.Words, size) + 1.2 * size) - 1.2 * size;
        // All four at once are wider than a phone: the row then starts at the figure's own edge.
        var x = frame.Left + Width(t) <= frame.Size.Width ? frame.Left : Math.Max(0.5 * t, frame.Size.Width - Width(t));
        var small = x + Width(t) <= frame.Size.Width ? t : t * Math.Max(0.88, (frame.Size.Width - x) / Width(t));
        foreach (var (shape, words) in kinds)
        {
            if (x + 1.3 * small + Lettering.Width(words, small) > frame.Size.Width) break;
            VerdictMark.Draw(pen, new(x + 0.4 * small, y - 0.33 * small), frame.Size.Thick(5), shape, frame.Size.Thick(1.6));
            pen.Text(x + 1.3 * small, y, words, small, Role.Quiet);
            x += 1.3 * small + Lettering.Width(words, small) + 1.2 * small;
        }
    }
}
