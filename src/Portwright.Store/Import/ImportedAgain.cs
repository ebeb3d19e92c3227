using Portwright.Shop.Record;
using Portwright.Store.Export;

namespace Portwright.Store.Import;

/// <summary>Importing what the record has and hides brings it back: a further entry shows it, with the file as the reason.</summary>
public static class ImportedAgain
{
    /// <summary>The entry that shows a hidden subject again; null where it is not hidden, or not in the record.</summary>
    public static Entry? Show(Ledger record, Guid subject, DateTimeOffset at, string hand, string file)
    {
        ArgumentNullException.ThrowIfNull(record);
        return record.IsHidden(subject) && record.Find<Fact>(subject) is { } hidden ? Amend.Show(hidden, at, hand, $"imported again from {file}") : null;
    }

    /// <summary>The entries that show again what a job document shows and the record hides. What the document itself hides stays hidden.</summary>
    /// <param name="record">The record before the document is saved to it.</param>
    public static IReadOnlyList<Entry> Shown(JobDocument document, Ledger record, DateTimeOffset at, string hand, string file)
    {
        ArgumentNullException.ThrowIfNull(document);
        var then = Ledger.Of(document.Entries);
        return [.. document.Entries.Select(e => e.Subject).Distinct().Where(s => !then.IsHidden(s)).Select(s => Show(record, s, at, hand, file)).OfType<Entry>()];
    }
}
