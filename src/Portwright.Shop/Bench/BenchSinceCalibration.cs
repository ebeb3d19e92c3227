using Portwright.Physics.Uncertainty;
using Portwright.Shop.Judgement;
using Portwright.Shop.Record;

namespace Portwright.Shop.Bench;

/// <summary>How far the bench of a check is off what it was when its ranges were calibrated, or off the certificate where they never were.</summary>
/// <param name="More">How much more the plates read, leaks left in, as a share, without the day's drift.</param>
/// <param name="Matters">As a share: less every result carries in its doubt already.</param>
/// <param name="Chance">Probability that the meter moved, or a leak came that is not taken off, by more than that, at this check or before it.</param>
public sealed record BenchSinceCalibration(Estimate More, double Matters, double Chance)
{
    /// <summary>Null where none of the plates speaks.</summary>
    /// <param name="check">Measured with the factors that held when the sweep was read.</param>
    /// <param name="of">Plates of the check that speak, with their ranges.</param>
    /// <param name="factors">When the sweep was read.</param>
    internal static BenchSinceCalibration? Of(Morning check, IReadOnlyList<(string Plate, string Range)> of, Kept<BenchCard> bench, Ledger ledger, BenchMoment factors)
    {
        PlateTotal[] totals = [.. check.Totals.Where(t => of.Contains((t.Plate, t.Range)))];
        if (totals.Length == 0)
        {
            return null;
        }

        var day = Sources.Day(bench.Id, check.When.Day);
        var more = BenchShift.Weighted([.. totals.Select(t => new Estimate(t.Ratio.Value - 1, [.. t.Ratio.Contributions.Where(c => c.Source != day)]))]);
        var calibrations = bench.Fact.Ranges.SelectMany(r => Calibrated.Of(ledger, bench, r.Name)).Select(c => c.When).ToList();
        bool IsAlike(BenchMoment other) => !calibrations.Any(c => (c.IsBefore(check.When) && !c.IsBefore(other)) || (c.IsBefore(other) && !c.IsBefore(check.When)));
        var all = BenchMorning.Checks(ledger, bench.Id).ToList();
        var at = all.FindIndex(c => c.Check.Id == check.Check.Id);
        var alike = Enumerable.Range(0, all.Count).Where(i => Math.Abs(i - at) <= BenchHistory.Reach && IsAlike(all[i].When)).ToList();
        Morning[] checks = [.. alike.Select(i => i == at ? check : Morning.Measure(all[i].Check, bench, ledger, factors))];
        var here = alike.IndexOf(at);
        var (first, last) = BenchHistory.Around(checks, here, here, bench);
        var history = BenchHistory.SinceCalibration([.. checks.Skip(first).Take(last - first + 1)], of, bench);
        // The calibration's own day drifted too.
        var matters = BenchShift.Matters(bench.Fact.Doubt, totals.Any(t => t.Factor.When is { } when && when.Day != check.When.Day) ? 2 : 1);
        var before = totals.Select(t => t.Factor.From).OfType<Kept<Calibration>>().DistinctBy(c => c.Id).Where(c => c.Fact.Leak is not null)
            .Select(c => PlateArea.Leak(c.Fact.Leak!, c.Fact.Air, bench, Estimate.Exact(1)).Area).DefaultIfEmpty(0).Average();
        var changes = history.Changes(fromFirst: true, _ => matters, (check.Leak?.Area ?? 0) - before, matters * history.Hole);
        return new(more, matters, Math.Min(Court.Surest, changes.Take(here - first + 1).Sum(c => c.Meter + c.Leak)));
    }
}
