using System.Collections.Immutable;

namespace Portwright.Physics.Statistics;

/// <summary>A point of a control chart and the rules it completes.</summary>
/// <param name="Point">Counted from 1.</param>
/// <param name="Rules">Rule numbers 1 to 4, ascending.</param>
public sealed record RuleSignal(int Point, ImmutableArray<int> Rules);

/// <summary>
/// The four rules of the Western Electric Statistical Quality Control Handbook (1956), as in the NIST/SEMATECH
/// e-Handbook, 6.3.2: 1, one point beyond 3 sigma; 2, two of three in a row beyond 2 sigma on one side; 3, four of five
/// in a row beyond 1 sigma on one side; 4, eight in a row on one side.
/// </summary>
/// <remarks>A rule is charged to the point that completes it, and that point must itself lie beyond the line of the rule.</remarks>
public static class WesternElectricRules
{
    /// <summary>The points that signal.</summary>
    /// <param name="z">Points in order of time, in standard deviations from the centre line, no unit.</param>
    public static ImmutableArray<RuleSignal> Signals(ReadOnlySpan<double> z)
    {
        var signals = ImmutableArray.CreateBuilder<RuleSignal>();
        for (var last = 0; last < z.Length; last++)
        {
            var rules = RulesAt(z[..(last + 1)]);
            if (!rules.IsEmpty) signals.Add(new(last + 1, rules));
        }
        return signals.DrainToImmutable();
    }

    /// <summary>The rules the last point completes.</summary>
    /// <param name="z">Points in order of time, in standard deviations from the centre line, no unit.</param>
    public static ImmutableArray<int> RulesAt(ReadOnlySpan<double> z)
    {
        if (z.IsEmpty) return [];
        var rules = ImmutableArray.CreateBuilder<int>(4);
        if (Math.Abs(z[^1]) > 3) rules.Add(1);
        if (Completes(z, 2, 3, 2)) rules.Add(2);
        if (Completes(z, 4, 5, 1)) rules.Add(3);
        if (Completes(z, 8, 8, 0)) rules.Add(4);
        return rules.DrainToImmutable();
    }

    private static bool Completes(ReadOnlySpan<double> z, int needed, int window, double line)
    {
        double side = Math.Sign(z[^1]);
        if (z[^1] * side <= line) return false;
        var beyond = 0;
        foreach (var point in z[Math.Max(0, z.Length - window)..])
        {
            if (point * side > line) beyond++;
        }
        return beyond >= needed;
    }
}
