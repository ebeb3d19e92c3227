using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;

namespace Portwright.Shop.Bench;

/// <summary>What two checks of a bench, one after the other, say of what happened between them.</summary>
/// <param name="Plates">How much more the same plates read at the later one, as a share; null where no plate was read at both.</param>
/// <param name="Leak">How much more leaks, as a share of the smallest plate; null where the leak test lacks.</param>
/// <param name="PlatesChance">Probability that the meter changed by more than what matters.</param>
/// <param name="LeakChance">The same of the leak.</param>
public sealed record BenchChange(Morning Before, Morning After, Estimate? Plates, Estimate? Leak, double PlatesChance, double LeakChance)
{
    /// <summary>Probability that one of the two changed: the surer one, for a leak shows in the plate too.</summary>
    public double Chance => Math.Max(PlatesChance, LeakChance);

    /// <summary>
    /// The same plates read with one factor, so that only the meter can have moved. Where a range was calibrated between the two checks, a
    /// change that either factor explains is none: what was read before the calibration and after it has its own.
    /// </summary>
    internal static BenchChange Between(Kept<MorningCheck> earlier, Kept<MorningCheck> later, Kept<BenchCard> bench, Ledger ledger)
    {
        var before = Morning.Measure(earlier, bench, ledger);
        var after = Morning.Measure(later, bench, ledger, before.When);
        var (plates, chance) = Plate(before, after, bench);
        if (before.PlateRatio.Any(p => Calibrated.Of(ledger, bench, p.Range).Any(c => before.When.IsBefore(c.When) && c.When.IsBefore(after.When))))
        {
            var own = Plate(before, Morning.Measure(later, bench, ledger), bench);
            (plates, chance) = own.Chance < chance ? own : (plates, chance);
        }

        var (leak, leakChance) = Leaks(before, after, bench);
        return new(before, after, plates, leak, chance, leakChance);
    }

    private static (Estimate? More, double Chance) Plate(Morning before, Morning after, Kept<BenchCard> bench)
    {
        string[] days = [Sources.Day(bench.Id, before.When.Day), Sources.Day(bench.Id, after.When.Day)];
        Estimate[] more =
        [
            .. from a in after.PlateRatio
               join b in before.PlateRatio on (a.Plate.ToUpperInvariant(), a.Range.ToUpperInvariant()) equals (b.Plate.ToUpperInvariant(), b.Range.ToUpperInvariant())
               let ratio = Estimate.Ratio(a.Ratio, b.Ratio)
               select new Estimate(ratio.Value - 1, [.. ratio.Contributions.Where(c => !days.Contains(c.Source))]),
        ];
        if (more.Length == 0)
        {
            return (null, 0);
        }

        var doubt = bench.Fact.Doubt;
        var all = BenchShift.Weighted(more);
        // Within one day a bench does not drift by its card; from one day to another it does, each day by itself.
        var drift = before.When.Day == after.When.Day ? 0 : doubt.Drift * Math.Sqrt(2);
        return (all, BenchShift.Chance(all, drift, BenchShift.Matters(doubt)));
    }

    private static (Estimate? More, double Chance) Leaks(Morning before, Morning after, Kept<BenchCard> bench)
    {
        if (before.LeakArea is not { } was || after.LeakArea is not { } now || bench.Fact.Plates.Count == 0)
        {
            return (null, 0);
        }

        var more = (1 / bench.Fact.Plates.Min(p => p.EffectiveArea)) * (now - was);
        return (more, BenchShift.Chance(more, 0, BenchMorning.LeakWorthALook));
    }
}
