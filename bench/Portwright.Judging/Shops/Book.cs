using Portwright.Judging.Chance;
using Portwright.Shop.Record;

namespace Portwright.Judging.Shops;

/// <summary>The record as it is typed, entry after entry, with the clock on the wall.</summary>
public sealed class Book(Draw draw, DateTimeOffset start)
{
    private readonly List<Entry> _entries = [];

    public Guid Job { get; } = draw.Name();

    public DateTimeOffset Now { get; private set; } = start;

    public DateOnly Day => DateOnly.FromDateTime(Now.Date);

    public IReadOnlyList<Entry> Entries => _entries;

    /// <summary>Types a fact of the job.</summary>
    public Guid Add(Fact fact) => Add(fact, Job);

    /// <summary>Types a fact of the shop.</summary>
    public Guid AddForShop(Fact fact) => Add(fact, null);

    public void AddJob(Job job)
    {
        _entries.Add(new Entry(draw.Name(), Job, Job, Now, "", "typed", job));
    }

    public void Wait(TimeSpan time) => Now += time;

    public void NextMorning() => Now = new DateTimeOffset(Now.Date.AddDays(1).AddHours(8), Now.Offset);

    public void Set(DateTimeOffset time) => Now = time;

    /// <summary>The facts of a kind as they stand, with their subject.</summary>
    public IReadOnlyList<(Guid Id, T Fact)> All<T>()
        where T : Fact => [.. _entries.Where(e => e.Fact is T).Select(e => (e.Subject, (T)e.Fact))];

    /// <summary>A slip of the pen: the fact was typed so from the start.</summary>
    public void Mistype<T>(Guid id, Func<T, T> slip)
        where T : Fact
    {
        var i = _entries.FindIndex(e => e.Subject == id);
        _entries[i] = _entries[i] with { Fact = slip((T)_entries[i].Fact) };
    }

    private Guid Add(Fact fact, Guid? job)
    {
        Now += TimeSpan.FromSeconds(20);
        var id = draw.Name();
        _entries.Add(new Entry(draw.Name(), id, job, Now, "", "typed", fact));
        return id;
    }
}
