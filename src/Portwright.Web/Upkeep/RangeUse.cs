using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Web.Pages;

namespace Portwright.Web.Upkeep;

/// <summary>
/// What was measured with a range of the bench. Results are always worked out anew from the card, and find their meter by its name: a
/// range that is in use keeps its name and its kind, or old results would break or say something else.
/// </summary>
/// <param name="Sweeps">Sweeps, readings or leak tests of sweeps that name it; hidden ones too, for they can be shown again.</param>
public sealed record RangeUse(string Range, int Sweeps, int Calibrations, int MorningChecks)
{
    public bool IsUsed => Sweeps + Calibrations + MorningChecks > 0;

    /// <param name="record">The whole record: all jobs and the shop.</param>
    public static RangeUse Of(Ledger record, Guid bench, string range)
    {
        var facts = record.Entries.Select(e => e.Subject).Distinct().Select(record.Find<Fact>).OfType<Kept<Fact>>().ToList();
        var sweeps = facts.Where(f => f.Fact is Sweep s && s.Bench == bench).ToDictionary(f => f.Id, f => (Sweep)f.Fact);
        var users = sweeps.Where(s => Same(s.Value.Range)).Select(s => s.Key).ToHashSet();
        foreach (var fact in facts)
        {
            switch (fact.Fact)
            {
                case FlowReading r when Same(r.Range) && sweeps.ContainsKey(r.Sweep): users.Add(r.Sweep); break;
                case LeakReading l when Same(l.Range) && sweeps.ContainsKey(l.Of): users.Add(l.Of); break;
            }
        }

        return new RangeUse(
            range,
            users.Count,
            facts.Count(f => f.Fact is Calibration c && c.Bench == bench && (Same(c.Range) || c.Readings.Any(r => Same(r.Range)))),
            facts.Count(f => f.Fact is MorningCheck m && m.Bench == bench && (m.Plates.Any(p => Same(p.Range)) || m.Leaks.Any(l => Same(l.Range)))));

        bool Same(string name) => name.Equals(range, StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>Why the range may not become what is asked; null where it may. Better numbers of the same meter are always taken.</summary>
    /// <param name="now">The range as asked; null to take it off the card.</param>
    public string? Against(RangeCard old, RangeCard? now)
    {
        if (!IsUsed)
        {
            return null;
        }

        const string cure = "Leave it as it is, and add a new range with a new name.";
        if (now is null)
        {
            return $"Range {Range} is used by {Words}: without it they would have no meter. {cure}";
        }

        if (!now.Name.Equals(old.Name, StringComparison.Ordinal))
        {
            return $"Range {Range} is used by {Words}: called {now.Name}, they would not find their meter. {cure}";
        }

        return RangeForm.KindOf(old.Meter) != RangeForm.KindOf(now.Meter) || MeterOf.ReadingDimension(old) != MeterOf.ReadingDimension(now)
            ? $"Range {Range} is used by {Words}: read as another kind of meter, their results would break. {cure}"
            : null;
    }

    private string Words
    {
        get
        {
            string[] said = [.. new[] { Counted(Sweeps, "sweep"), Counted(Calibrations, "calibration"), Counted(MorningChecks, "morning check") }.OfType<string>()];
            return said.Length == 1 ? said[0] : $"{string.Join(", ", said[..^1])} and {said[^1]}";
        }
    }

    private static string? Counted(int count, string what) => count switch
    {
        0 => null,
        1 => $"1 {what}",
        _ => FormattableString.Invariant($"{count} {what}s"),
    };
}
