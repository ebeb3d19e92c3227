using Portwright.Shop.Record;

namespace Portwright.Shop.Bench;

/// <summary>A calibration with its place in time.</summary>
internal sealed record Calibrated(Kept<Calibration> Calibration, BenchMoment When)
{
    /// <summary>Those of a range in the order made; where it has none, those of the ranges read on the same instrument.</summary>
    public static IReadOnlyList<Calibrated> Of(Ledger ledger, Kept<BenchCard> bench, string range) =>
        Where(ledger, bench.Id, c => c.Equals(range, StringComparison.OrdinalIgnoreCase)) is { Count: > 0 } own
            ? own
            : Where(ledger, bench.Id, c => bench.Fact.SpeaksFor(c, range));

    private static IReadOnlyList<Calibrated> Where(Ledger ledger, Guid bench, Func<string, bool> range) =>
    [
        .. ledger.All<Calibration>()
            .Where(c => c.Fact.Bench == bench && range(c.Fact.Range))
            .Select(c => new Calibrated(c, BenchMoment.Of(ledger, c)))
            .OrderBy(c => c.When.Day).ThenBy(c => c.When.Sequence),
    ];
}
