using Portwright.Shop.Cutting;
using Portwright.Shop.Findings;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Ports;

/// <summary>What the numbers say about the metal: what to leave alone first, then what to cut.</summary>
public static class FindingsSaid
{
    public static Part? Of(PortAtCut port)
    {
        ArgumentNullException.ThrowIfNull(port);
        List<Block> blocks = [.. InOrder(port).Select(f => f.Said)];
        if (blocks.Count == 0)
        {
            if (port.Sheet.Flow is null) return null;
            blocks.Add(new Paragraph("nothing-found", $"Nothing found in what was measured so far. Balls in the bend, a ring at the short side and sections say most."));
        }

        if (port.Scores.Count > 0) blocks.Add(new Values("past-advice", [.. port.Scores.Select((s, i) => Scored(s, i))]));
        return new Part("findings", $"What it says", blocks);
    }

    /// <summary>What each finding rests on, what else it could be, what to look at first and what a cut there risks.</summary>
    public static Part? Why(PortAtCut port)
    {
        ArgumentNullException.ThrowIfNull(port);
        return port.Findings.Count == 0 ? null
            : new Part("findings-rest-on", $"What the findings rest on",
                [.. port.Findings.Select(f => f.Rule).DistinctBy(r => r.Key).SelectMany(r => new Block[] { RestsOn(r), Before(r) })], Reader.Engineer);
    }

    /// <summary>The few readings that change most of the next decision for their time, the quickest first.</summary>
    public static Part? ReadNext(PortAtCut port)
    {
        ArgumentNullException.ThrowIfNull(port);
        return port.Readings.Count == 0 ? null : new Part("read-next", $"Read next", [new Values("readings", [.. port.Readings.Select((r, i) => new NamedValue(
            FormattableString.Invariant($"reading-{i + 1}"),
            BenchMinutes.Words(r.Minutes),
            $"{r.What} {r.Changes}"))])]);
    }

    /// <summary>Every rule that spoke with its chance, also below what is stated, and what each rests on before any reading.</summary>
    public static Part? Weighed(PortAtCut port)
    {
        ArgumentNullException.ThrowIfNull(port);
        return port.Spoken.Count == 0 ? null : new Part("weighed", $"All that was weighed",
        [
            .. SetSaid.Of([port])?.Blocks ?? [],
            new Paragraph("stated", $"Everything that was looked for, the likeliest first, with its chance after the readings and before any. What stands is stated from {Quantity.Ratio(Confidence.Stated)} on; what lies far under it is not so. How chances are worked out and how often they are wrong: docs/theory/judgement.md."),
            new Values("chances", [.. port.Spoken.OrderByDescending(f => f.Confidence).Select((f, i) => new NamedValue(
                FormattableString.Invariant($"{i + 1}-{f.Rule.Key}"),
                f.Bearing is { } hours ? (Sentence)$"{f.Title}, {Bearings.Words(hours)}" : $"{f.Title}",
                $"{Chance(f.Confidence)}{(f.Rule.Prior is { } prior ? (Sentence)$", before {Quantity.Ratio(prior)}" : Sentence.Empty)}. {f.Sentence}"))]),
        ], Reader.Engineer);
    }

    /// <summary>No chance is nothing or all.</summary>
    private static Sentence Chance(double chance) => chance switch
    {
        < 0.001 => $"Under {Quantity.Ratio(0.001)}",
        > 0.999 => $"Over {Quantity.Ratio(0.999)}",
        _ => $"{Quantity.Ratio(chance)}",
    };

    /// <summary>The findings as they are said: what to leave alone, faults of the measurement, what to cut.</summary>
    public static IReadOnlyList<(Finding Finding, FindingSaid Said)> InOrder(PortAtCut port)
    {
        ArgumentNullException.ThrowIfNull(port);
        return [.. port.Findings.OrderBy(f => f.Kind switch { FindingKind.Stop => 0, FindingKind.Measurement => 1, _ => 2 }).Select((f, i) => (f, Say(port, f, i)))];
    }

    /// <summary>What a porter weighs before cutting on a finding's word.</summary>
    public static Values Before(FindingRule rule)
    {
        ArgumentNullException.ThrowIfNull(rule);
        return new($"before-{rule.Key}", [new("could-also-be", $"could also be", rule.ElseExplains), new("look-first", $"look first", rule.LookFirst), new("cut", $"cut", rule.Cut), new("risk", $"risk", rule.Risk)]);
    }

    /// <summary>What makes a finding stand, and where that comes from.</summary>
    public static Values RestsOn(FindingRule rule)
    {
        ArgumentNullException.ThrowIfNull(rule);
        return new($"rule-{rule.Key}", [new("test", $"{rule.Name}: the test", rule.Test), new("source", $"source", Sentence.Plain(rule.Source))]);
    }

    /// <summary>How many there are, and how many of them say to leave metal alone or to measure again: <c>3 findings: 1 to leave metal alone, 1 to measure again</c>.</summary>
    public static Sentence Count(PortAtCut port)
    {
        ArgumentNullException.ThrowIfNull(port);
        var kinds = new[] { (FindingKind.Stop, "to leave metal alone"), (FindingKind.Measurement, "to measure again"), (FindingKind.Port, "of the port itself") }
            .Select(k => (Number: port.Findings.Count(f => f.Kind == k.Item1), Words: k.Item2))
            .Where(k => k.Number > 0)
            .Select(k => (Sentence)$"{k.Number} {k.Words}");
        return port.Findings.Count == 0 ? (Sentence)$"No finding yet." : $"{FlowSaid.Count(port.Findings.Count, "finding")}: {Sentence.Join(", ", kinds)}.";
    }

    private static FindingSaid Say(PortAtCut port, Finding finding, int place)
    {
        List<Sentence> then = [];
        if (finding.Suggestion is { } cut)
        {
            var torque = NextCuts.TorqueOf(port.Engine.Answer, port.Survey, cut);
            Sentence worth = torque is null ? Sentence.Empty : $", {Quantity.Difference(torque, Dimension.Torque)} over the range";
            Sentence expected = $"Expected {Quantity.Difference(cut.Gain, Dimension.VolumeFlow)}{worth}, lift {Quantity.Lift(cut.FromLift)} to {Quantity.Lift(cut.ToLift)}.";
            then.Add(cut.Pays ? (Sentence)$"Next cut: {cut.What} {expected}" : $"Could be cut: {cut.What} {expected} It may well bring nothing: no next cut.");
            if (!cut.SoundFirst.IsEmpty) then.Add(cut.SoundFirst);
            if (port.Cuts.FirstOrDefault(c => c.Finding == finding)?.Decided is { Fact: var decided })
                then.Add(decided.Reason.Length > 0 ? (Sentence)$"{decided.Decision.ToString()}: {decided.Reason}" : $"{decided.Decision.ToString()}.");
        }
        else if (!finding.Instead.IsEmpty)
        {
            then.Add($"What to do: {finding.Instead}");
        }
        else if (!finding.NextObservation.IsEmpty)
        {
            then.Add($"To be surer: {finding.NextObservation}");
        }

        return new FindingSaid(
            FormattableString.Invariant($"{place + 1}-{finding.Rule.Key}"), finding.Kind, Sentence.Plain(finding.Title), finding.Confidence, finding.Sentence, then);
    }

    private static NamedValue Scored(AdviceScore score, int place)
    {
        Sentence got = score.Got is { } measured
            ? (Sentence)$"got {Quantity.Difference(measured, Dimension.VolumeFlow)}: {score.Met switch { true => "as expected", false => "not as expected", null => "the sweeps cannot tell" }}"
            : $"not swept alike yet";
        return new(FormattableString.Invariant($"advice-{place + 1}"), $"advice taken into cut {score.Cut}: {score.Advice.Fact.What}", $"expected {Quantity.Difference(score.Expected, Dimension.VolumeFlow)}, {got}");
    }
}
