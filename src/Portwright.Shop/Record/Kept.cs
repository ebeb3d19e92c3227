namespace Portwright.Shop.Record;

/// <summary>A fact as it stands now, with the subject it speaks of and the entry that states it.</summary>
/// <param name="Sequence">Place of the entry in the record: later entries have larger ones.</param>
public sealed record Kept<T>(Guid Id, T Fact, Entry Entry, int Sequence)
    where T : Fact;
