using Portwright.Physics.Uncertainty;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Words;

namespace Portwright.Shop.Sheets;

/// <summary>What the check of the day says of one sweep: each plate measured with the factors the sweep was reduced with.</summary>
/// <param name="Check">The check of the sweep's day that speaks for it; null where none was made that day.</param>
/// <param name="Plates">Its plates on ranges the sweep was read on.</param>
/// <param name="Off">How far the bench is off, by those plates and by the checks around this one; null where none speaks.</param>
/// <param name="Remarks">What is not known, and what to do about it.</param>
public sealed record SweepBench(
    ReducedSweep Sweep, Morning? Check, IReadOnlyList<(string Plate, string Range, Estimate Ratio)> Plates, BenchSinceCalibration? Off, IReadOnlyList<Sentence> Remarks)
{
    public static SweepBench Of(Ledger ledger, ReducedSweep sweep)
    {
        ArgumentNullException.ThrowIfNull(ledger);
        ArgumentNullException.ThrowIfNull(sweep);
        var speaking = BenchMorning.SpeakingOn(ledger, sweep.Bench.Id, sweep.When);
        var check = speaking is null ? null : Morning.Measure(speaking, sweep.Bench, ledger, sweep.When);
        var plates = check?.PlateRatio.Where(p => sweep.Factors.Any(f => sweep.Bench.Fact.SpeaksFor(p.Range, f.Range))).ToList() ?? [];
        var remarks = new List<Sentence>();
        if (check is { PlateRatio.Count: > 0 } && plates.Count == 0)
        {
            remarks.Add($"No check plate was read that day on range {string.Join(" nor ", sweep.Factors.Select(f => f.Range))}: what the plate says of range {check.PlateRatio[0].Range} says nothing of another meter. Read one plate on the range that is swept.");
        }

        if (sweep.LeakArea is { } leak && !sweep.Curve.IsEmpty && sweep.Curve.Points[^1] is { EffectiveArea.Value: > 0 and var area } top
            && leak.StandardUncertainty > BenchMorning.LeakWorthALook * area)
        {
            remarks.Add($"The leak is {Quantity.Share(leak.Value / area)} of the flow at {Quantity.Lift(top.Lift)}, known to {Quantity.Share(leak.StandardUncertainty / area)} of it: that doubt is in every flow. Make the leak smaller, or read it on a finer range.");
        }

        var off = check is null ? null : BenchSinceCalibration.Of(check, [.. plates.Select(p => (p.Plate, p.Range))], sweep.Bench, ledger, sweep.When);
        return new SweepBench(sweep, check, plates, off, remarks);
    }
}
