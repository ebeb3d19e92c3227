using System.Collections.Immutable;
using System.Globalization;

namespace Portwright.Physics.Statistics;

/// <summary>What the newest point of a control chart says about going to work.</summary>
public enum ChartAnswer
{
    Go,
    Look,
    Stop,
}

/// <summary>
/// The control chart of a daily check, read for its newest point: stop beyond 3 sigma (rule 1); look where the point
/// completes rule 2, 3 or 4, or where the limits cannot be set yet; go otherwise.
/// </summary>
/// <param name="Rules">Rules the newest point completes.</param>
/// <param name="Sentences">Why, for the page and the report.</param>
/// <param name="Z">All points in standard deviations from the centre line, no unit.</param>
/// <param name="Signals">Every point that signals.</param>
public sealed record ControlChart(
    ChartAnswer Answer,
    ImmutableArray<int> Rules,
    ImmutableArray<string> Sentences,
    ChartLimits Limits,
    ImmutableArray<double> Z,
    ImmutableArray<RuleSignal> Signals)
{
    /// <summary>Judges the newest point against limits from all points before it.</summary>
    /// <param name="points">In order of time, the newest last; at least 1, in the unit of the readings.</param>
    /// <param name="resolution">See <see cref="ChartLimits.From"/>, in the unit of the readings.</param>
    /// <exception cref="ArgumentException">There is no point.</exception>
    public static ControlChart Judge(ReadOnlySpan<double> points, double resolution = 0)
    {
        if (points.IsEmpty) throw new ArgumentException("A chart needs at least 1 point.", nameof(points));
        return Judge(ChartLimits.From(points[..^1], resolution), points);
    }

    /// <summary>Judges the newest point against limits given.</summary>
    /// <param name="points">In order of time, the newest last; in the unit of the limits.</param>
    /// <exception cref="ArgumentException">There is no point.</exception>
    public static ControlChart Judge(ChartLimits limits, ReadOnlySpan<double> points)
    {
        if (points.IsEmpty) throw new ArgumentException("A chart needs at least 1 point.", nameof(points));
        var z = ImmutableArray.CreateBuilder<double>(points.Length);
        foreach (var point in points) z.Add(limits.Z(point));
        var all = z.MoveToImmutable();
        if (limits.Basis == LimitsBasis.None || limits.Sigma == 0)
            return new(ChartAnswer.Look, [], [NoLimits(limits)], limits, all, []);

        var rules = WesternElectricRules.RulesAt(all.AsSpan());
        var answer = rules.Contains(1) ? ChartAnswer.Stop : rules.IsEmpty ? ChartAnswer.Go : ChartAnswer.Look;
        return new(answer, rules, Explain(limits, all[^1], rules), limits, all, WesternElectricRules.Signals(all.AsSpan()));
    }

    private static string NoLimits(ChartLimits limits) => limits.Basis == LimitsBasis.None
        ? string.Create(CultureInfo.InvariantCulture, $"{limits.Points} earlier checks are on record; limits can be set from {ChartLimits.FewestPoints}. Compare this check with the certificate by eye.")
        : "All earlier checks show the same figure and the step of the scale is not known, so no limits can be set.";

    private static ImmutableArray<string> Explain(ChartLimits limits, double z, ImmutableArray<int> rules)
    {
        var side = z < 0 ? "below" : "above";
        var sentences = ImmutableArray.CreateBuilder<string>();
        sentences.Add(rules.Contains(1)
            ? string.Create(CultureInfo.InvariantCulture, $"The check lies {Math.Abs(z):0.0} standard deviations {side} the centre line, beyond the limit of 3. Something has changed: find it before testing.")
            : string.Create(CultureInfo.InvariantCulture, $"The check lies {Math.Abs(z):0.0} standard deviations {side} the centre line, inside the limit of 3."));
        if (rules.Contains(2)) sentences.Add($"Two of the last three checks lie more than 2 standard deviations {side} the centre line.");
        if (rules.Contains(3)) sentences.Add($"Four of the last five checks lie more than 1 standard deviation {side} the centre line.");
        if (rules.Contains(4)) sentences.Add($"The last eight checks all lie {side} the centre line: the bench seems to have drifted.");
        if (limits.Basis == LimitsBasis.Provisional)
        {
            sentences.Add(string.Create(CultureInfo.InvariantCulture,
                $"The limits rest on {limits.Points} checks and are kept wide until there are {ChartLimits.SettledPoints}."));
        }
        return sentences.DrainToImmutable();
    }
}
