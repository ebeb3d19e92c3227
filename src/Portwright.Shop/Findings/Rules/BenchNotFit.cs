using Portwright.Physics.Uncertainty;
using Portwright.Shop.Bench;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>The check plates of the day say that the bench is off by more than it matters.</summary>
public sealed record BenchNotFit() : FindingRule("bench-not-fit", "The bench is not fit today")
{
    public override Sentence Evidence => $"A sweep, and a check plate read on its range on its day. Where nobody checked, or a plate or the leak test is missing, nothing is found: what to do then stands among the remarks.";

    public override Sentence Test => $"What flowed through the plates of the check, leak and all, against the calibration of their ranges (or the certificates, where there was none), together with the checks around it, as far as none tells of another change. A sound bench drifts by its card, on the day of the calibration as on any other, and that is no finding; one check in {BenchShift.ChecksToAMove:0} finds one that moved, by anything (standard deviation {Quantity.Share(BenchShift.MovedBy)}), or that leaks otherwise, as likely. The probability is that of a bench that moved by more than twice what two sound readings differ by, which every result carries in its doubt anyway. A leak that is steady costs its doubt and is no finding.";

    public override Sentence ElseExplains => $"The wrong plate, or the right one on the wrong range; a plug left out; fluid off zero.";

    public override Sentence LookFirst => $"Zero, leak and plate again, five minutes, before the next sweep.";

    public override Sentence Cut => $"Nothing on the word of this day's readings.";

    public override Sentence Risk => $"A gain or a loss that is the bench's is taken for the port's.";

    public override string Source => "How often a bench moves, and by how much: our own judgement, no source; likelihood of two normal hypotheses";

    public override double Minutes => BenchMinutes.OneCheck;

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        // Sweeps of one check share its readings: the worst of them is told, and all it speaks of are named.
        if (port.Sheet.Benches.Where(b => b.Off is not null).MaxBy(b => b.Off!.Chance) is not { Off: { } off } worst)
        {
            yield break;
        }

        var sweeps = port.Sheet.Benches.Where(b => b.Check?.Check.Id == worst.Check!.Check.Id).Select(b => b.Sweep.Sweep.Id);
        yield return new Finding(
            this,
            FindingKind.Measurement,
            $"With the factor these readings were taken with, {Sentence.Join(" and ", worst.Plates.Select(Said))}. The bench is off by {Quantity.Difference(off.More, Dimension.Fraction)}; beyond {Quantity.Share(off.Matters).About(2)} it matters.",
            off.Chance,
            null,
            null,
            [worst.Check!.Check.Id, .. sweeps],
            $"The same plate again, taken off and put on anew.");
    }

    private static Sentence Said((string Plate, string Range, Estimate Ratio) plate) =>
        $"plate {plate.Plate} on range {plate.Range} reads {Quantity.Share(Math.Abs(plate.Ratio.Value - 1))} {(plate.Ratio.Value > 1 ? "over" : "under")} its certificate";
}
