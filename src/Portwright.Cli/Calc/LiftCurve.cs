using Portwright.Cli.Terminal;
using Portwright.Physics.Curves;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Units;

namespace Portwright.Cli.Calc;

/// <summary><c>calc curve</c>: between the tested lifts, never past them unless asked and marked.</summary>
internal static class LiftCurve
{
    private const string Source = "monotone cubic (Fritsch and Carlson 1980)";

    public static void Work(
        ListWork work, UnitSystem system, Dimension dimension, IReadOnlyList<string> points, IReadOnlyList<string> at, string? from, string? to, bool beyond)
    {
        var tested = points.Select(p => Point(p, dimension, system)).OrderBy(p => p.Lift).ToList();
        foreach (var (_, text, lift) in tested.Select(t => (t.Result, t.Text, t.Lift)))
            work.Given.Add(($"lift {Print.Number(lift, Dimension.Lift, system)}", text));
        if (tested.Count < 2) throw new Refusal("A curve needs at least two lifts, as .100:62.1 .200:121.4");
        var curve = new CurveOfEstimates([.. tested.Select(t => t.Lift)], [.. tested.Select(t => t.Result.ToEstimate())]);
        foreach (var text in at)
        {
            var lift = Lift(text, "--at", system);
            if (!curve.Covers(lift) && !beyond)
                throw new Refusal($"Lift {text} was not tested: the points go from {Shown(curve.From, system)} to {Shown(curve.To, system)}. Add a point, or say --beyond to have it marked as extrapolated.");
            var value = curve.At(lift, Extrapolation.Marked);
            work.Plus("at_" + text.TrimStart('.').Replace('.', '_'), $"at lift {Shown(lift, system)}{(value.IsExtrapolated ? ", extrapolated" : "")}", value.Estimate, dimension, Source);
            if (value.IsExtrapolated) work.Working.Remark($"Lift {Shown(lift, system)} lies outside the tested range: the figure goes on along the last slope and may be wrong.");
        }
        var (a, b) = (from is null ? curve.From : Lift(from, "--from", system), to is null ? curve.To : Lift(to, "--to", system));
        if (!curve.Covers(a) || !curve.Covers(b))
            throw new Refusal($"A mean is taken over tested lifts only: {Shown(curve.From, system)} to {Shown(curve.To, system)}.");
        work.Plus("mean", $"mean, lift {Shown(a, system)} to {Shown(b, system)}", curve.MeanOver(a, b), dimension, "area under the curve over its width; " + Source);
    }

    private static (double Lift, InputEstimate Result, string Text) Point(string typed, Dimension dimension, UnitSystem system)
    {
        var colon = typed.IndexOf(':', StringComparison.Ordinal);
        if (colon < 0) throw new Refusal($"\"{typed}\" is not a point. Type lift and flow with a colon between, as .300:174.2");
        var lift = Lift(typed[..colon], "lift", system);
        return (lift, NumberList.Result(typed[(colon + 1)..].Trim(), $"flow at {typed[..colon]}", dimension, system), typed[(colon + 1)..].Trim());
    }

    private static double Lift(string text, string field, UnitSystem system) =>
        TypedNumber.TryParse(text, Dimension.Lift, system, field, out var typed, out var problem) ? typed.Si(Dimension.Lift) : throw new Refusal(problem);

    private static string Shown(double lift, UnitSystem system) => Print.Number(lift, Dimension.Lift, system);
}
