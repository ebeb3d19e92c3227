using Portwright.Physics.Uncertainty;
using Portwright.Shop.Bench;
using Portwright.Shop.Sheets;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>The meter or the leak was another at the check after a sweep than at the check before it.</summary>
public sealed record BenchChanged() : FindingRule("bench-changed", "The bench changed between two checks")
{
    /// <summary>Nine times as likely as the other cause, and it alone is named. Our own choice.</summary>
    private const double Telling = 0.9;

    public override Sentence Evidence => $"Two checks of the bench with a sweep between them: the same plate on the same range, or the leak test, at both; and the checks before and after, as far as none tells of another change.";

    public override Sentence Test => $"What flowed through the same plates, leak and all, with one factor: a change lies in every check after it and in none before, a day's drift in the checks of that day. One pair of checks in {BenchShift.ChecksToAMove:0} has a change between them, of any size (standard deviation {Quantity.Share(BenchShift.MovedBy)}); the meter's and the leak's are as likely, and what each leak test shows, with its scale's step, tells them apart. The probability is that of a meter that moved by more than twice what two sound readings differ by, or of a leak that changed by more than {Quantity.Share(BenchMorning.LeakWorthALook)} of the smallest plate. What a calibration between the two explains is no change.";

    public override Sentence ElseExplains => $"The wrong plate at one of the checks, or a plate that did not seal; fluid off zero; a seal that warmed up.";

    public override Sentence LookFirst => $"Zero, leak and plate once more, before anything is swept again.";

    public override Sentence Cut => $"Nothing on the word of the sweeps between the two checks.";

    public override Sentence Risk => $"Sweeps of one day are taken as of one bench: a gain between two of them may be the bench's.";

    public override string Source => "How often a bench changes, and by how much: our own judgement, no source; likelihood of two normal hypotheses";

    public override double Minutes => BenchMinutes.OneCheck;

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
        var ofLeak = change.LeakChance / (change.PlatesChance + change.LeakChance);
        if (change.Plates is not { } plates)
        {
            return $"the leak changed{By(change.Leak)}";
        }

        Sentence reads = $"the same plate reads {Quantity.Difference(plates, Dimension.Fraction)} against before";
        return ofLeak switch
        {
            > Telling => $"the leak changed{By(change.Leak)}: with it {reads}",
            < 1 - Telling => $"the meter changed: {reads}",
            _ => $"the meter or the leak changed, which of the two the leak tests do not tell: {reads}",
        };
    }

    private static Sentence By(Estimate? leak) => leak is null ? Sentence.Empty : (Sentence)$" by {Quantity.Difference(leak, Dimension.Fraction)} of the smallest plate";

    private static Sentence Named(string what, IReadOnlyList<NamedSweep> sweeps) =>
        sweeps.Count == 0 ? Sentence.Empty : $" {what}: {Sentence.Join(", ", sweeps.Select(s => s.Name))}.";
}
