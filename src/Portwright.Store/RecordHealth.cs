namespace Portwright.Store;

/// <summary>What a thorough look through a record has found.</summary>
/// <param name="Entries">Entries there are.</param>
/// <param name="Attachments">Pictures there are.</param>
/// <param name="Faults">What is wrong with the file as a whole: SQLite's own complaints, missing tables or guards, gaps in the numbering.</param>
/// <param name="Unreadable">Entries that are damaged or not understood.</param>
/// <param name="DamagedAttachments">Names of pictures whose bytes are no longer what was saved.</param>
/// <param name="MissingAttachments">Names of pictures an entry speaks of that are not there.</param>
public sealed record RecordHealth(
    long Entries,
    long Attachments,
    IReadOnlyList<string> Faults,
    IReadOnlyList<UnreadableEntry> Unreadable,
    IReadOnlyList<string> DamagedAttachments,
    IReadOnlyList<string> MissingAttachments)
{
    /// <summary>Everything saved is there as it was saved.</summary>
    public bool IsSound => Faults.Count == 0 && Unreadable.Count == 0 && DamagedAttachments.Count == 0 && MissingAttachments.Count == 0;

    /// <summary>The findings as sentences; one that says all is well where there is nothing to find.</summary>
    public IReadOnlyList<string> Words => IsSound
        ? [FormattableString.Invariant($"The record is sound: {Entries} entries and {Attachments} pictures, each as it was saved.")]
        :
        [
            .. Faults,
            .. Unreadable.Select(u => u.Words),
            .. DamagedAttachments.Select(a => $"The picture {a} is no longer what was saved. Restore it from a backup, or attach it again."),
            .. MissingAttachments.Select(a => $"The picture {a} is spoken of in the record and is not there. Attach it again."),
        ];
}
