namespace Portwright.Shop.Record;

/// <summary>The ways a saved fact may change, each as a further entry.</summary>
public static class Amend
{
    /// <summary>States a fact anew. A measured fact wants a reason.</summary>
    /// <exception cref="ArgumentException">A measured fact without a reason.</exception>
    public static Entry Correct<T>(Kept<T> standing, T now, DateTimeOffset at, string hand, string? reason = null)
        where T : Fact
    {
        if (now.IsMeasured && string.IsNullOrWhiteSpace(reason))
        {
            throw new ArgumentException("A reading is corrected only with a reason. Say in a few words what was wrong.", nameof(reason));
        }

        return new Entry(Guid.CreateVersion7(at), standing.Id, standing.Entry.Job, at, hand, "typed", now, standing.Entry.Number, reason);
    }

    /// <summary>Hides a subject; <see cref="Show"/> brings it back.</summary>
    public static Entry Hide<T>(Kept<T> standing, DateTimeOffset at, string hand, string reason)
        where T : Fact =>
        new(Guid.CreateVersion7(at), standing.Id, standing.Entry.Job, at, hand, "typed", new Hidden(), standing.Entry.Number, reason);

    /// <summary>Brings a hidden subject back as it last stood.</summary>
    public static Entry Show<T>(Kept<T> standing, DateTimeOffset at, string hand, string reason)
        where T : Fact =>
        new(Guid.CreateVersion7(at), standing.Id, standing.Entry.Job, at, hand, "typed", new Shown(), standing.Entry.Number, reason);
}
