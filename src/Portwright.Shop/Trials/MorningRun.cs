using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Shop.Trials;

/// <summary>One reading of a check: the opening closed off, or a plate on it.</summary>
/// <param name="Plate">Null where the opening is closed off.</param>
public sealed record CheckStep(string? Plate, string Range, Typed TestPressure);

/// <summary>The run of a morning check: leaks first, then plates.</summary>
/// <param name="Steps">In the order they are read.</param>
/// <param name="Besides">What the bench card would allow too.</param>
public sealed record MorningRun(IReadOnlyList<CheckStep> Steps, IReadOnlyList<CheckStep> Besides)
{
    /// <summary>As the last check was made; where there was none, or pressures are named, everything the card lists: each range closed off, then each plate on each range, at each pressure.</summary>
    /// <param name="pressures">Named by hand; null: those of the last check, or the one the card restates at.</param>
    public static MorningRun Of(BenchCard card, MorningCheck? last, IReadOnlyList<Typed>? pressures = null)
    {
        ArgumentNullException.ThrowIfNull(card);
        List<CheckStep> before = last is null ? [] :
        [
            .. last.Leaks.Select(l => new CheckStep(null, l.Range, l.TestPressure)),
            .. last.Plates.Select(p => new CheckStep(p.Plate, p.Range, p.TestPressure)),
        ];
        before = [.. before.Where(s => card.RangeNamed(s.Range) is not null && (s.Plate is null || card.Plates.Any(p => p.Name.Equals(s.Plate, StringComparison.OrdinalIgnoreCase))))];
        IReadOnlyList<Typed> at = pressures is { Count: > 0 } ? pressures
            : before.Count > 0 ? [.. before.Select(s => s.TestPressure).DistinctBy(p => p.Si(Dimension.Pressure))]
            : [Typed.Of(card.RestatedAt, "Pa")];
        IReadOnlyList<CheckStep> all =
        [
            .. card.Ranges.SelectMany(r => at.Select(p => new CheckStep(null, r.Name, p))),
            .. card.Plates.SelectMany(plate => card.Ranges.SelectMany(r => at.Select(p => new CheckStep(plate.Name, r.Name, p)))),
        ];
        return before.Count == 0 || pressures is { Count: > 0 } ? new(all, []) : new(before, [.. all.Where(s => !before.Any(b => Alike(b, s)))]);
    }

    private static bool Alike(CheckStep one, CheckStep other) =>
        string.Equals(one.Plate, other.Plate, StringComparison.OrdinalIgnoreCase)
        && one.Range.Equals(other.Range, StringComparison.OrdinalIgnoreCase)
        && one.TestPressure.Si(Dimension.Pressure) == other.TestPressure.Si(Dimension.Pressure);
}
