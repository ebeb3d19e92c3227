using Portwright.Physics.Uncertainty;
using Portwright.Shop.Findings;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Runs;
using Portwright.Shop.Survey;
using Portwright.Shop.Words;

namespace Portwright.Shop.Cutting;

/// <summary>One thing to cut next, and what was decided on it.</summary>
/// <param name="Worth">Expected gain times confidence, m3/s: what the list is ordered by where no engine was run.</param>
/// <param name="Decided">The porter's latest word on it at this cut; null where none.</param>
/// <param name="Torque">Gain of mean torque over the plan's range the engine run expects of it, N m, all cylinders cut alike; null where it was not run with this port, or not at its lifts.</param>
public sealed record NextCut(Finding Finding, CutSuggestion Suggestion, double Worth, Kept<Advice>? Decided, Estimate? Torque = null);

/// <summary>A past suggestion that was taken, and what the next cut's tests showed.</summary>
/// <param name="Expected">Gain of mean flow with its doubt, m3/s.</param>
/// <param name="Got">The same as measured; null where the next cut was not swept alike over that range.</param>
/// <param name="Met">
/// True where measured and expected agree within their doubt and the cut surely brought more than half of what was expected: a vague promise
/// agrees with nothing gained as well. Null where the sweeps cannot tell half of it from nothing.
/// </param>
public sealed record AdviceScore(Kept<Advice> Advice, int Cut, Estimate Expected, Estimate? Got, bool? Met);

/// <summary>What to cut next, ranked, and how good past advice was.</summary>
public static class NextCuts
{
    /// <param name="engine">The engine run with this port at this cut: the list is then ordered by torque times confidence. Null, or one run with other ports: by flow.</param>
    public static IReadOnlyList<NextCut> Of(PortSurvey port, IReadOnlyList<Finding> findings, Ledger ledger, EngineAnswer? engine = null)
    {
        ArgumentNullException.ThrowIfNull(port);
        ArgumentNullException.ThrowIfNull(findings);
        ArgumentNullException.ThrowIfNull(ledger);
        var decided = ledger.All<Advice>().Where(a => a.Fact.Cut == port.Sheet.Cut.Id).ToList();
        return [.. findings
            .Where(f => f.Suggestion is { Gain.Value: > 0, Pays: true })
            .Select(f => new NextCut(f, f.Suggestion!, f.Suggestion!.Gain.Value * f.Confidence, decided.LastOrDefault(a => Same(a.Fact, f)), TorqueOf(engine, port, f.Suggestion!)))
            .OrderBy(c => c.Decided?.Fact.Decision switch { null or Decision.Accepted => 0, Decision.Postponed => 1, _ => 2 })
            .ThenByDescending(c => (c.Torque?.Value ?? 0) * c.Finding.Confidence)
            .ThenByDescending(c => c.Worth)];
    }

    /// <summary>Torque a suggestion should bring, N m; null where the engine was not run with this port at this cut.</summary>
    public static Estimate? TorqueOf(EngineAnswer? engine, PortSurvey port, CutSuggestion suggestion)
    {
        ArgumentNullException.ThrowIfNull(port);
        var kind = port.Sheet.Port.Fact.Kind;
        return engine?.Question.Pair.Of(kind)?.Sheet.Cut.Id == port.Sheet.Cut.Id ? engine!.TorqueOf(suggestion, kind) : null;
    }

    /// <summary>Findings with those that suggest a cut put among themselves into the list's order; all others stay where they are.</summary>
    public static IReadOnlyList<Finding> Ranked(IReadOnlyList<Finding> findings, IReadOnlyList<NextCut> cuts)
    {
        ArgumentNullException.ThrowIfNull(findings);
        ArgumentNullException.ThrowIfNull(cuts);
        var next = new Queue<Finding>(cuts.Select(c => c.Finding));
        var suggest = next.ToHashSet();
        return [.. findings.Select(f => suggest.Contains(f) ? next.Dequeue() : f)];
    }

    /// <summary>The entry's fact for a decision on a suggestion.</summary>
    public static Advice Decide(PortSurvey port, NextCut cut, Decision decision, string reason)
    {
        ArgumentNullException.ThrowIfNull(port);
        ArgumentNullException.ThrowIfNull(cut);
        var (finding, suggestion) = (cut.Finding, cut.Suggestion);
        return new Advice(
            port.Sheet.Cut.Id, finding.Rule.Key, finding.Station?.Id, finding.Bearing, suggestion.What, decision, reason,
            suggestion.Gain.Value, suggestion.Gain.StandardUncertainty, suggestion.FromLift, suggestion.ToLift);
    }

    /// <summary>Every accepted suggestion of a port whose next cut exists, oldest first. Where several were taken into one cut, they share its gain: each is held against all they promised together.</summary>
    public static IReadOnlyList<AdviceScore> Score(Reductions reductions, Guid port)
    {
        ArgumentNullException.ThrowIfNull(reductions);
        var ledger = reductions.Ledger;
        var cuts = ledger.CutsOf(port);
        var scores = new List<AdviceScore>();
        foreach (var (cut, next) in cuts.Zip(cuts.Skip(1)))
        {
            var taken = Accepted(ledger, cut.Id).ToList();
            if (taken.Count == 0)
            {
                continue;
            }

            var before = reductions.Of(cut);
            var after = before is null ? null : reductions.Of(next, before.Fitting);
            foreach (var advice in taken)
            {
                var together = taken.Select(a => Promised(a)).ToArray();
                var expected = Estimate.Combine([.. together.Select(e => (1.0, e))]);
                var got = before is null || after is null ? null : Gained(before.Curve, after.Curve.RestatedLike(before.Curve), advice.Fact.FromLift, advice.Fact.ToLift);
                scores.Add(new AdviceScore(advice, next.Fact.Number, expected, got, got is null ? null : Met(expected, got)));
            }
        }

        return scores;
    }

    /// <summary>What was accepted at a cut, a line each, in the porter's units: the note the next cut begins with; empty where nothing was.</summary>
    /// <param name="findings">What the port says now: what was taken and is no longer suggested, for metal found thin since, is not handed on.</param>
    public static (string Note, IReadOnlyList<string> LeftOut) NoteForNext(Ledger ledger, Guid cut, IReadOnlyList<Finding> findings, Units.UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(ledger);
        ArgumentNullException.ThrowIfNull(findings);
        var taken = Accepted(ledger, cut).ToLookup(a => findings.Any(f => Same(a.Fact, f) && f.Suggestion is null), a => a.Fact.What.In(units));
        return (string.Join('\n', taken[false]), [.. taken[true]]);
    }

    /// <summary>The latest word on each place is the one that counts.</summary>
    private static IEnumerable<Kept<Advice>> Accepted(Ledger ledger, Guid cut) => ledger.All<Advice>()
        .Where(a => a.Fact.Cut == cut)
        .GroupBy(a => (a.Fact.Finding, a.Fact.Station, a.Fact.Bearing))
        .Select(g => g.Last())
        .Where(a => a.Fact.Decision == Decision.Accepted);

    private static bool? Met(Estimate expected, Estimate got)
    {
        var half = Confidence.Above(got, expected.Value / 2);
        return half >= Confidence.Stated ? Comparison.Compare(expected, got).Verdict != Verdict.Real
            : half <= 1 - Confidence.Stated ? false
            : null;
    }

    private static bool Same(Advice advice, Finding finding) =>
        advice.Finding == finding.Rule.Key && advice.Station == finding.Station?.Id && advice.Bearing == finding.Bearing;

    private static Estimate Promised(Kept<Advice> advice) => Estimate.Exact(advice.Fact.ExpectedGain).With(new Contribution(
        Sources.Advice(advice.Id), advice.Fact.GainDoubt, double.PositiveInfinity, ContributionKind.Other));

    /// <summary>Mean difference over the lifts both were tested at within the range: as the expectation was made.</summary>
    private static Estimate? Gained(FlowCurve before, FlowCurve after, double from, double to)
    {
        var pairs = after.Points
            .Where(p => p.Lift > 0 && p.Lift >= from - LiftGroups.SameLift && p.Lift <= to + LiftGroups.SameLift)
            .Select(p => (After: p.Flow, Before: before.At(p.Lift)))
            .Where(p => p.Before is not null)
            .Select(p => p.After - p.Before!)
            .ToArray();
        return pairs.Length == 0 ? null : Estimate.Mean(pairs);
    }
}
