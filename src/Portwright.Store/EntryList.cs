using System.Collections;
using Portwright.Shop.Record;

namespace Portwright.Store;

/// <summary>Why an entry is there and yet cannot be used.</summary>
public enum UnreadableCause
{
    /// <summary>Its hash does not match: something has changed it since it was saved.</summary>
    Damaged,

    /// <summary>It is whole, but of a kind or form this program does not know.</summary>
    NotUnderstood,
}

/// <summary>An entry that is left out of what is read.</summary>
/// <param name="Sequence">Its place in the record, from 1.</param>
/// <param name="Number">Its number as stored; may itself be what is damaged.</param>
public sealed record UnreadableEntry(long Sequence, string Number, string Kind, UnreadableCause Cause)
{
    /// <summary>The same as a sentence with its cure.</summary>
    public string Words => Cause == UnreadableCause.Damaged
        ? $"Entry {Sequence} ({Kind}, number {Number}) was changed by something other than Portwright since it was saved and is left out. Restore the latest backup that has it whole: portwright restore FILE."
        : $"Entry {Sequence} ({Kind}, number {Number}) is of a kind this Portwright does not know and is left out. Update Portwright.";
}

/// <summary>
/// Entries in the order they were saved, and beside them those that could not be used. Whoever shows or exports these must say so when
/// <see cref="Unreadable"/> is not empty: a missing correction would otherwise let the corrected figure stand.
/// </summary>
public sealed class EntryList : IReadOnlyList<Entry>
{
    private readonly List<Entry> _entries;

    internal EntryList(List<Entry> entries, List<UnreadableEntry> unreadable)
    {
        _entries = entries;
        Unreadable = unreadable;
    }

    public IReadOnlyList<UnreadableEntry> Unreadable { get; }

    public int Count => _entries.Count;

    public Entry this[int index] => _entries[index];

    public IEnumerator<Entry> GetEnumerator() => _entries.GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
