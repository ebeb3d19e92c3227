using Portwright.Physics.Uncertainty;
using Portwright.Shop.Judgement;
using Portwright.Shop.Record;

namespace Portwright.Shop.Bench;

/// <summary>What two checks of a bench, one after the other, say of what happened between them.</summary>
/// <param name="Plates">How much more the same plates read at the later one, as a share; null where no plate was read at both.</param>
/// <param name="Leak">How much more leaks, as a share of the smallest plate; null where the leak test lacks.</param>
/// <param name="PlatesChance">Probability that the meter changed by more than what matters.</param>
/// <param name="LeakChance">The same of the leak.</param>
public sealed record BenchChange(Morning Before, Morning After, Estimate? Plates, Estimate? Leak, double PlatesChance, double LeakChance)
{
    /// <summary>Probability that one of the two changed: at most one did.</summary>
    public double Chance => Math.Min(Court.Surest, PlatesChance + LeakChance);

    /// <summary>
    /// What happened between the one check and the next. The same plates are read with one factor, so that only the bench can have changed. Where
    /// a range was calibrated between the two, a change that either factor explains is none: what was read before the calibration and after it has
    /// its own.
    /// </summary>
    /// <param name="checks">All checks of the bench in the order made.</param>
    /// <param name="earlier">Which of them is the one before.</param>
    internal static BenchChange Between(IReadOnlyList<(Kept<MorningCheck> Check, BenchMoment When)> checks, int earlier, Kept<BenchCard> bench, Ledger ledger)
    {
        bool IsCalibratedAfter(int check) => bench.Fact.Ranges
            .SelectMany(r => Calibrated.Of(ledger, bench, r.Name))
            .Any(c => checks[check].When.IsBefore(c.When) && c.When.IsBefore(checks[check + 1].When));

        var factors = checks[earlier].When;
        var (first, last) = (earlier, earlier + 1);
        while (first > 0 && earlier - first < BenchHistory.Reach && !IsCalibratedAfter(first - 1))
        {
            first--;
        }

        while (last + 1 < checks.Count && last - earlier <= BenchHistory.Reach && !IsCalibratedAfter(last))
        {
            last++;
        }

        var change = Of([.. Enumerable.Range(first, last - first + 1).Select(c => Morning.Measure(checks[c].Check, bench, ledger, factors))], earlier - first, bench);
        if (!IsCalibratedAfter(earlier))
        {
            return change;
        }

        var own = Of([Morning.Measure(checks[earlier].Check, bench, ledger), Morning.Measure(checks[earlier + 1].Check, bench, ledger)], 0, bench);
        return own.Chance < change.Chance ? own : change;
    }

    private static BenchChange Of(IReadOnlyList<Morning> checks, int earlier, Kept<BenchCard> bench)
    {
        var (before, after) = (checks[earlier], checks[earlier + 1]);
        var (first, last) = BenchHistory.Around(checks, earlier, earlier + 1, bench);
        var run = BenchHistory.AmongThemselves([.. checks.Skip(first).Take(last - first + 1)], bench);
        var (meter, leak) = run.ChangesAmong(bench.Fact)[earlier + 1 - first];
        return new(before, after, PlatesMore(before, after, bench), LeakMore(before, after, bench.Fact), meter, leak);
    }

    private static Estimate? PlatesMore(Morning before, Morning after, Kept<BenchCard> bench)
    {
        string[] days = [Sources.Day(bench.Id, before.When.Day), Sources.Day(bench.Id, after.When.Day)];
        Estimate[] more =
        [
            .. from a in after.Totals
               join b in before.Totals on (a.Plate.ToUpperInvariant(), a.Range.ToUpperInvariant()) equals (b.Plate.ToUpperInvariant(), b.Range.ToUpperInvariant())
               let ratio = Estimate.Ratio(a.Ratio, b.Ratio)
               select new Estimate(ratio.Value - 1, [.. ratio.Contributions.Where(c => !days.Contains(c.Source))]),
        ];
        return more.Length == 0 ? null : BenchShift.Weighted(more);
    }

    private static Estimate? LeakMore(Morning before, Morning after, BenchCard card) =>
        before.LeakArea is { } was && after.LeakArea is { } now && card.Plates.Count > 0 ? (1 / card.Plates.Min(p => p.EffectiveArea)) * (now - was) : null;
}
