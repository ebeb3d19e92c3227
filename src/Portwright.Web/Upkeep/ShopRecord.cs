using System.Collections.Concurrent;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Store;

namespace Portwright.Web.Upkeep;

/// <summary>The record as pages read it: each job's ledger is kept until something is saved to that job or to the shop.</summary>
public sealed class ShopRecord : IDisposable
{
    private const int MostKept = 64;
    private readonly Dictionary<Guid, Reductions> _jobs = [];
    private readonly ConcurrentDictionary<Guid, Guid> _jobOf = [];
    private readonly ConcurrentDictionary<string, byte> _unreadable = [];
    private readonly Lock _keeping = new();
    private Ledger? _shop;
    private int _version;

    public ShopRecord(Journal journal)
    {
        Journal = journal;
        journal.Changed += Forget;
    }

    public Journal Journal { get; }

    /// <summary>Raised after something was saved, with the job concerned; null for the shop.</summary>
    public event Action<Guid?>? Changed;

    /// <summary>Entries that were read and could not be used, in sentences: every page shows them, because a figure may lack a correction.</summary>
    public IReadOnlyCollection<string> Unreadable => [.. _unreadable.Keys.Order(StringComparer.Ordinal)];

    /// <summary>What belongs to the shop: bench cards, calibrations, morning checks.</summary>
    public Ledger Shop()
    {
        SeeOthers();
        int version;
        lock (_keeping)
        {
            if (_shop is { } kept)
            {
                return kept;
            }

            version = _version;
        }

        var shop = Ledger.Of(Noted(Journal.ReadShop()));
        lock (_keeping)
        {
            // Something saved meanwhile: what was read may be old, and is not kept.
            if (version == _version)
            {
                _shop = shop;
            }
        }

        return shop;
    }

    /// <summary>A job with the benches it was tested on.</summary>
    public Ledger Job(Guid job) => Reduced(job).Ledger;

    /// <summary>The same with its sweeps reduced, each once until something is saved.</summary>
    public Reductions Reduced(Guid job)
    {
        SeeOthers();
        int version;
        lock (_keeping)
        {
            if (_jobs.TryGetValue(job, out var kept))
            {
                return kept;
            }

            version = _version;
        }

        var reduced = new Reductions(Ledger.Of(Noted(Journal.ReadJobAndShop(job))));
        lock (_keeping)
        {
            if (version == _version)
            {
                if (_jobs.Count >= MostKept)
                {
                    _jobs.Clear();
                }

                _jobs[job] = reduced;
            }
        }

        return reduced;
    }

    /// <summary>The whole record, read anew: for questions asked seldom, of all jobs at once.</summary>
    public Ledger Everything() => Ledger.Of(Noted(Journal.ReadAll()));

    /// <summary>All jobs that are not hidden, the latest first.</summary>
    public IReadOnlyList<Kept<Job>> Jobs() => [.. Ledger.Of(Noted(Journal.ReadJobs())).All<Job>().Reverse()];

    /// <summary>Jobs put away.</summary>
    public IReadOnlyList<Kept<Job>> HiddenJobs()
    {
        var entries = Journal.ReadJobs();
        var ledger = Ledger.Of(entries);
        return [.. entries.Where(e => e.Fact is Job && ledger.IsHidden(e.Subject)).Select(e => e.Subject).Distinct().Select(ledger.Get<Job>)];
    }

    /// <summary>The job a head, port, cut, sweep or reading belongs to.</summary>
    /// <exception cref="KeyNotFoundException">The record has no such thing.</exception>
    public Guid JobOf(Guid subject)
    {
        if (_jobOf.TryGetValue(subject, out var known))
        {
            return known;
        }

        var entries = Journal.ReadSubject(subject);
        if (entries.Count == 0 || entries[0].Job is not { } job)
        {
            throw new KeyNotFoundException("The record has nothing at this address. It may have been typed wrong, or belong to another record.");
        }

        if (_jobOf.Count > 10_000)
        {
            _jobOf.Clear();
        }

        _jobOf[subject] = job;
        return job;
    }

    /// <summary>Saves; on the disk before this returns.</summary>
    public void Save(params IReadOnlyList<Entry> entries) => Journal.Append(entries);

    public void Dispose() => Journal.Changed -= Forget;

    /// <summary>Another program (an import in the terminal) may have saved something; that is asked of the disk, cheaply, before each reading.</summary>
    private void SeeOthers()
    {
        if (Journal.ChangedElsewhere())
        {
            Forget(null);
        }
    }

    private EntryList Noted(EntryList entries)
    {
        foreach (var unreadable in entries.Unreadable)
        {
            _unreadable.TryAdd(unreadable.Words, 0);
        }

        return entries;
    }

    private void Forget(Guid? job)
    {
        lock (_keeping)
        {
            _version++;
            if (job is { } one)
            {
                _jobs.Remove(one);
            }
            else
            {
                _shop = null;
                _jobs.Clear();
            }
        }

        Changed?.Invoke(job);
    }
}
