namespace Portwright.Shop.Record;

/// <summary>
/// The entries read as what they say now: for each subject its latest fact, less what is hidden. Immutable; adding entries gives a new
/// ledger. Nothing is lost: <see cref="History"/> has every entry there ever was.
/// </summary>
public sealed class Ledger
{
    private readonly List<Entry> _entries = [];
    private readonly Dictionary<Guid, (Entry Entry, int Sequence)> _standing = [];
    private readonly HashSet<Guid> _hidden = [];
    private readonly Dictionary<Type, object> _lists = [];

    public static Ledger Empty { get; } = Of([]);

    /// <summary>Entries in the order they were saved.</summary>
    public static Ledger Of(IEnumerable<Entry> entries)
    {
        var ledger = new Ledger();
        foreach (var entry in entries)
        {
            ledger._entries.Add(entry);
            switch (entry.Fact)
            {
                case Hidden: ledger._hidden.Add(entry.Subject); break;
                case Shown: ledger._hidden.Remove(entry.Subject); break;
                default:
                    // A corrected fact keeps the place of the first, so that a list does not jump.
                    var place = ledger._standing.TryGetValue(entry.Subject, out var first) ? first.Sequence : ledger._entries.Count;
                    ledger._standing[entry.Subject] = (entry, place);
                    break;
            }
        }

        return ledger;
    }

    public IReadOnlyList<Entry> Entries => _entries;

    public Ledger With(IEnumerable<Entry> more) => Of(_entries.Concat(more));

    /// <summary>The fact of that subject as it stands, hidden or not; null where there is none of that kind.</summary>
    public Kept<T>? Find<T>(Guid subject)
        where T : Fact =>
        _standing.TryGetValue(subject, out var s) && s.Entry.Fact is T fact ? new Kept<T>(subject, fact, s.Entry, s.Sequence) : null;

    /// <summary>As <see cref="Find"/>, for a subject that must be there.</summary>
    /// <exception cref="KeyNotFoundException">No such subject of that kind.</exception>
    public Kept<T> Get<T>(Guid subject)
        where T : Fact =>
        Find<T>(subject) ?? throw new KeyNotFoundException($"The record has no {typeof(T).Name.ToLowerInvariant()} {subject}.");

    public bool IsHidden(Guid subject) => _hidden.Contains(subject);

    /// <summary>All facts of a kind that are not hidden, in the order they were first saved.</summary>
    public IReadOnlyList<Kept<T>> All<T>()
        where T : Fact
    {
        lock (_lists)
        {
            if (!_lists.TryGetValue(typeof(T), out var list))
            {
                list = _standing
                    .Where(s => s.Value.Entry.Fact is T && !_hidden.Contains(s.Key))
                    .OrderBy(s => s.Value.Sequence)
                    .Select(s => new Kept<T>(s.Key, (T)s.Value.Entry.Fact, s.Value.Entry, s.Value.Sequence))
                    .ToList();
                _lists[typeof(T)] = list;
            }

            return (IReadOnlyList<Kept<T>>)list;
        }
    }

    /// <summary>Every entry about a subject, oldest first: the first statement, corrections, hiding and showing.</summary>
    public IReadOnlyList<Entry> History(Guid subject) => [.. _entries.Where(e => e.Subject == subject)];

    /// <summary>The day a thing was first written down: a later correction does not move it.</summary>
    public DateOnly DayOf<T>(Kept<T> kept)
        where T : Fact
    {
        return DateOnly.FromDateTime(FirstWritten(kept).DateTime);
    }

    /// <summary>When a thing was first written down; one that is only tried and not saved yet, as its entry says.</summary>
    public DateTimeOffset FirstWritten<T>(Kept<T> kept)
        where T : Fact
    {
        ArgumentNullException.ThrowIfNull(kept);
        return kept.Sequence <= _entries.Count ? _entries[kept.Sequence - 1].At : kept.Entry.At;
    }

    public IReadOnlyList<Kept<Head>> HeadsOf(Guid job) =>
        [.. All<Head>().Where(h => h.Entry.Job == job).OrderBy(h => h.Fact.Place)];

    /// <summary>Ports of a head by cylinder, the intake before the exhaust.</summary>
    public IReadOnlyList<Kept<Port>> PortsOf(Guid head) =>
        [.. All<Port>().Where(p => p.Fact.Head == head).OrderBy(p => p.Fact.Cylinder).ThenBy(p => p.Fact.Kind)];

    public IReadOnlyList<Kept<Cut>> CutsOf(Guid port) =>
        [.. All<Cut>().Where(c => c.Fact.Port == port).OrderBy(c => c.Fact.Number)];

    public IReadOnlyList<Kept<Sweep>> SweepsOf(Guid cut) => [.. All<Sweep>().Where(s => s.Fact.Cut == cut)];

    public IReadOnlyList<Kept<FlowReading>> ReadingsOf(Guid sweep) => [.. All<FlowReading>().Where(r => r.Fact.Sweep == sweep)];

    public IReadOnlyList<Kept<WeatherReading>> WeatherOf(Guid of) => [.. All<WeatherReading>().Where(w => w.Fact.Of == of)];

    public IReadOnlyList<Kept<LeakReading>> LeaksOf(Guid of) => [.. All<LeakReading>().Where(l => l.Fact.Of == of)];

    public IReadOnlyList<Kept<Photo>> PhotosOf(Guid of) => [.. All<Photo>().Where(p => p.Fact.Of == of)];
}
