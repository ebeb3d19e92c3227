using Portwright.Shop.Bench;
using Portwright.Shop.Sheets;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>The meter or the leak was another at the check after a sweep than at the check before it.</summary>
public sealed record BenchChanged() : FindingRule("bench-changed", "The bench changed between two checks")
{
    public override Sentence Evidence => $"Two checks of the bench with a sweep between them: the same plate on the same range, or the leak test, at both.";

    public override Sentence Test => $"The same plates read with one factor: how much more they read at the later check, what both share taken out, held against their repeats, and from one day to another against the drift of both days. One pair of checks in {BenchShift.ChecksToAMove:0} has a change between them, of any size (standard deviation {Quantity.Share(BenchShift.MovedBy)}); the probability is that of one beyond twice drift and repeat together, or of a leak that changed by more than {Quantity.Share(BenchMorning.LeakWorthALook)} of the smallest plate. What a calibration between the two explains is no change.";

    public override Sentence ElseExplains => $"The wrong plate at one of the checks, or a plate that did not seal; fluid off zero; a seal that warmed up.";

    public override Sentence LookFirst => $"Zero, leak and plate once more, before anything is swept again.";

    public override Sentence Cut => $"Nothing on the word of the sweeps between the two checks.";

    public override Sentence Risk => $"Sweeps of one day are taken as of one bench: a gain between two of them may be the bench's.";

    public override string Source => "How often a bench changes, and by how much: our own judgement, no source; likelihood of two normal hypotheses";

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        return port.Sheet.Changes.Select(Found);
    }

    private Finding Found(ChangeAround around)
    {
        var change = around.Change;
        var (from, to) = (change.Before.When, change.After.When);
        return new(
            this,
            FindingKind.Measurement,
            $"Between {from.Day}{from.Clock} and {to.Day}{to.Clock} {What(change)}.{Named("Before it, and standing", around.Standing)}{Named("Between, in doubt", around.InDoubt)}{Named("After it", around.After)}",
            change.Chance,
            null,
            null,
            [change.Before.Check.Id, change.After.Check.Id, .. around.InDoubt.Select(s => s.Sweep)],
            $"Plate and leak once more; where the change stays, sweep again what lies between.");
    }

    private static Sentence What(BenchChange change)
    {
        var said = new List<Sentence>();
        if (change.Plates is { } plates && change.PlatesChance >= change.LeakChance)
        {
            said.Add($"the meter changed: the same plate reads {Quantity.Difference(plates, Dimension.Fraction)} against before");
        }

        if (change.Leak is { } leak && change.LeakChance >= change.PlatesChance)
        {
            said.Add($"the leak changed by {Quantity.Difference(leak, Dimension.Fraction)} of the smallest plate");
        }

        return Sentence.Join(", and ", said);
    }

    private static Sentence Named(string what, IReadOnlyList<NamedSweep> sweeps) =>
        sweeps.Count == 0 ? Sentence.Empty : $" {what}: {Sentence.Join(", ", sweeps.Select(s => s.Name))}.";
}
