using Portwright.Physics.Uncertainty;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Shop.Sheets;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>The check plates of the day say that the bench is off by more than it matters.</summary>
public sealed record BenchNotFit() : FindingRule("bench-not-fit", "The bench is not fit today")
{
    public override Sentence Evidence => $"A sweep, and a check plate read on its range on its day. Where nobody checked, or a plate or the leak test is missing, nothing is found: what to do then stands among the remarks.";

    public override Sentence Test => $"All plates of the check, with the factors the sweep was reduced with, give one shift of the bench. A sound bench shifts by its card's drift; one that moved, by anything (standard deviation {Quantity.Share(BenchShift.MovedBy)}), and one check in {BenchShift.ChecksToAMove:0} finds one that moved. The probability is that of a shift beyond twice the card's drift and repeat scatter together, which every result carries in its doubt anyway. A leak that is steady, measured and taken off costs its doubt and is no finding.";

    public override Sentence ElseExplains => $"The wrong plate, or the right one on the wrong range; a plug left out; fluid off zero.";

    public override Sentence LookFirst => $"Zero, leak and plate again, five minutes, before the next sweep.";

    public override Sentence Cut => $"Nothing on the word of this day's readings.";

    public override Sentence Risk => $"A gain or a loss that is the bench's is taken for the port's.";

    public override string Source => "How often a bench moves, and by how much: our own judgement, no source; likelihood of two normal hypotheses";

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        // Sweeps of one check share its readings: the worst of them is told, and all it speaks of are named.
        if (port.Sheet.Benches.Where(b => b.Plates.Count > 0).Select(b => (Bench: b, Off: Off.Of(b))).OrderByDescending(b => b.Off.Chance).FirstOrDefault() is not { Bench: { } worst } found)
        {
            yield break;
        }

        var sweeps = port.Sheet.Benches.Where(b => b.Check?.Check.Id == worst.Check!.Check.Id).Select(b => b.Sweep.Sweep.Id);
        yield return new Finding(
            this,
            FindingKind.Measurement,
            $"With the factor these readings were taken with, {Sentence.Join(" and ", worst.Plates.Select(Said))}. The bench is off by {Quantity.Difference(found.Off.Shift, Dimension.Fraction)}; beyond {Quantity.Share(found.Off.Matters).About(2)} it matters.",
            found.Off.Chance,
            null,
            null,
            [worst.Check!.Check.Id, .. sweeps],
            $"The same plate again, taken off and put on anew.");
    }

    private static Sentence Said((string Plate, string Range, Estimate Ratio) plate) =>
        $"plate {plate.Plate} on range {plate.Range} reads {Quantity.Share(Math.Abs(plate.Ratio.Value - 1))} {(plate.Ratio.Value > 1 ? "over" : "under")} its certificate";

    /// <summary>The shift that the check of a sweep shows.</summary>
    private readonly record struct Off(Estimate Shift, double Matters, double Chance)
    {
        public static Off Of(SweepBench sweep)
        {
            var (card, date) = (sweep.Sweep.Bench, sweep.Check!.Check.Fact.Date);
            var shift = BenchShift.Of([.. sweep.Plates.Select(p => p.Ratio)], Sources.Day(card.Id, date));
            var matters = BenchShift.Matters(card.Fact.Doubt);
            return new(shift, matters, BenchShift.Chance(shift, card.Fact.Doubt.Drift, matters));
        }
    }
}
