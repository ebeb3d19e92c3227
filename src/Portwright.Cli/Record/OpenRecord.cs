using Portwright.Cli.Terminal;
using Portwright.Shop.Record;
using Portwright.Store;

namespace Portwright.Cli.Record;

/// <summary>A record opened for one command.</summary>
internal sealed class OpenRecord : IDisposable
{
    private OpenRecord(Journal journal) => Journal = journal;

    public Journal Journal { get; }

    /// <summary>Everything in the record, as it stands.</summary>
    public Ledger Ledger { get; private set; } = Ledger.Empty;

    /// <summary>Entries that could not be used, in sentences: whoever prints a result prints these too.</summary>
    public IReadOnlyList<string> LeftOut { get; private set; } = [];

    public static OpenRecord At(string? data)
    {
        var record = new OpenRecord(Journal.Open(DataFolder.Resolve(data)));
        record.Read();
        return record;
    }

    public void Read()
    {
        var all = Journal.ReadAll();
        Ledger = Ledger.Of(all);
        LeftOut = [.. all.Unreadable.Select(u => u.Words)];
    }

    public void Dispose() => Journal.Dispose();

    /// <summary>The one job of that name, or the only one there is.</summary>
    /// <exception cref="Refusal">None, or several.</exception>
    public Kept<Job> JobNamed(string? name)
    {
        var jobs = Ledger.All<Job>();
        if (jobs.Count == 0) throw new Refusal("The record has no job yet. Start one in the workbench (portwright serve), or see the demo shop (portwright demo).", ExitCode.File);
        var found = name is null ? jobs : [.. jobs.Where(j => j.Fact.Name.Contains(name, StringComparison.OrdinalIgnoreCase))];
        return found.Count == 1 ? found[0]
            : throw new Refusal(found.Count == 0
                ? $"No job is named \"{name}\". There are: {string.Join(", ", jobs.Select(j => j.Fact.Name))}."
                : $"Which job? Say --job with one of: {string.Join(", ", found.Select(j => j.Fact.Name))}.");
    }

    /// <summary>The port a text like <c>intake 2</c> or <c>head B intake 2</c> means; the one tested last where nothing is said.</summary>
    /// <exception cref="Refusal">None, or several.</exception>
    public Kept<Port> PortNamed(Kept<Job> job, string? text, string? head)
    {
        var ports = Ledger.HeadsOf(job.Id)
            .Where(h => head is null || h.Fact.Name.Contains(head, StringComparison.OrdinalIgnoreCase))
            .SelectMany(h => Ledger.PortsOf(h.Id).Select(p => (Head: h, Port: p))).ToList();
        if (ports.Count == 0) throw new Refusal(head is null ? $"{job.Fact.Name} has no head yet." : $"No head of {job.Fact.Name} is named \"{head}\".");
        if (string.IsNullOrWhiteSpace(text))
        {
            var last = Ledger.All<Sweep>().Select(s => Ledger.Find<Cut>(s.Fact.Cut)?.Fact.Port).LastOrDefault(p => ports.Any(q => q.Port.Id == p));
            return last is { } id ? Ledger.Get<Port>(id) : throw new Refusal($"No port of {job.Fact.Name} was tested yet.");
        }
        var wanted = text.Trim();
        var found = ports.Where(p => p.Port.Fact.Name.Equals(wanted, StringComparison.OrdinalIgnoreCase)
            || $"{p.Head.Fact.Name} {p.Port.Fact.Name}".Equals(wanted, StringComparison.OrdinalIgnoreCase)
            || $"{p.Head.Fact.Name} {p.Port.Fact.Name}".EndsWith(" " + wanted, StringComparison.OrdinalIgnoreCase)).ToList();
        return found.Count == 1 ? found[0].Port
            : throw new Refusal(found.Count == 0
                ? $"{job.Fact.Name} has no port \"{wanted}\". There are: {string.Join(", ", ports.Select(p => $"{p.Head.Fact.Name} {p.Port.Fact.Name}"))}."
                : $"Which one? {string.Join(", ", found.Select(p => $"\"{p.Head.Fact.Name} {p.Port.Fact.Name}\""))}.");
    }

    /// <summary>The cut of that number; null for the latest.</summary>
    public Guid? CutNumbered(Kept<Port> port, int? number)
    {
        if (number is null) return null;
        var cuts = Ledger.CutsOf(port.Id);
        return cuts.FirstOrDefault(c => c.Fact.Number == number)?.Id
            ?? throw new Refusal($"{port.Fact.Name} has no cut {number}. There are: {string.Join(", ", cuts.Select(c => c.Fact.Number))}.");
    }
}
