using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Words;

namespace Portwright.Shop.Sheets;

/// <summary>A change of the bench between two checks, and the sweeps of the job around it.</summary>
/// <param name="Standing">Read on the earlier check's day before it: they stand.</param>
/// <param name="InDoubt">Read between the two, or on a day of theirs and nobody knows when: each may be of before or of after.</param>
/// <param name="After">Read on the later check's day after it.</param>
public sealed record ChangeAround(
    BenchChange Change, IReadOnlyList<NamedSweep> Standing, IReadOnlyList<NamedSweep> InDoubt, IReadOnlyList<NamedSweep> After)
{
    /// <summary>Under this a change is not worth gathering the sweeps for: a finding needs far more.</summary>
    private const double WorthGathering = 0.5;

    /// <summary>Changes between two checks that sweeps of a sheet lie between.</summary>
    internal static IReadOnlyList<ChangeAround> Of(Ledger ledger, IReadOnlyList<ReducedSweep> sweeps)
    {
        var found = new List<ChangeAround>();
        foreach (var bench in sweeps.Select(s => s.Bench).DistinctBy(b => b.Id))
        {
            var checks = BenchMorning.Checks(ledger, bench.Id);
            for (var i = 0; i + 1 < checks.Count; i++)
            {
                if (!sweeps.Any(s => s.Bench.Id == bench.Id && IsBetween(s.When, checks[i].When, checks[i + 1].When)))
                {
                    continue;
                }

                var change = BenchChange.Between(checks, i, bench, ledger);
                if (change.Chance >= WorthGathering)
                {
                    found.Add(Around(ledger, bench.Id, change));
                }
            }
        }

        return found;
    }

    /// <summary>Not known to be before the one, nor after the other.</summary>
    private static bool IsBetween(BenchMoment read, BenchMoment earlier, BenchMoment later) =>
        !read.IsBefore(earlier) && !later.IsBefore(read) && read.Day >= earlier.Day && read.Day <= later.Day;

    private static ChangeAround Around(Ledger ledger, Guid bench, BenchChange change)
    {
        var (earlier, later) = (change.Before.When, change.After.When);
        NamedSweep[] all =
        [
            .. ledger.All<Sweep>().Where(s => s.Fact.Bench == bench)
                .Select(s => NamedSweep.Of(ledger, s)).OfType<NamedSweep>()
                .OrderBy(s => s.When.Day).ThenBy(s => s.When.Sequence),
        ];
        return new(
            change,
            [.. all.Where(s => s.When.Day == earlier.Day && s.When.IsBefore(earlier))],
            [.. all.Where(s => IsBetween(s.When, earlier, later))],
            [.. all.Where(s => s.When.Day == later.Day && later.IsBefore(s.When))]);
    }
}

/// <summary>A sweep as it is told apart on the sheet of another.</summary>
public sealed record NamedSweep(Guid Sweep, BenchMoment When, Sentence Name)
{
    /// <summary>Null where nothing was read yet.</summary>
    internal static NamedSweep? Of(Ledger ledger, Kept<Sweep> sweep)
    {
        var readings = ledger.ReadingsOf(sweep.Id);
        if (readings.Count == 0 || ledger.Find<Cut>(sweep.Fact.Cut) is not { } cut || ledger.Find<Port>(cut.Fact.Port) is not { } port)
        {
            return null;
        }

        var when = SweepReduction.WhenOf(ledger, sweep, readings);
        var head = ledger.Find<Head>(port.Fact.Head)?.Fact.Name is { Length: > 0 } name ? $"{name} " : "";
        return new(sweep.Id, when, $"{head}{port.Fact.Name} cut {cut.Fact.Number} ({when.Day}{when.Clock})");
    }
}
