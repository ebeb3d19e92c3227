using System.Text.Json;
using System.Text.Json.Nodes;
using Portwright.Shop.Record;

namespace Portwright.Store.Demo;

/// <summary>
/// The invented shop in the folder <c>demo/</c>: its bench, one job of two heads, and its sweeps, brought into a record through the same
/// doors everybody's readings go. Every entry has the same number each time, so loading it again adds nothing.
/// </summary>
public static class DemoShop
{
    /// <summary>The initials of its invented porter, Ansel Wick.</summary>
    private const string Hand = "A.W.";

    /// <summary>The job.</summary>
    public static Guid Job { get; } = DemoName.Subject("job");

    /// <summary>The bench.</summary>
    public static Guid Bench { get; } = DemoName.Subject("bench");

    /// <summary>The port that was worked through three cuts: intake 2 of head B.</summary>
    public static Guid Featured { get; } = DemoName.Subject("head B intake 2");

    /// <summary>Saves what of the demo the record does not have yet, all or nothing.</summary>
    /// <returns>How many entries were new.</returns>
    /// <exception cref="RecordProblem">They could not be saved.</exception>
    public static int Load(Journal journal)
    {
        ArgumentNullException.ThrowIfNull(journal);
        return journal.Append(Entries());
    }

    /// <summary>All entries in the order they were made.</summary>
    public static IReadOnlyList<Entry> Entries()
    {
        var shop = Lines("bench.json").Select(l => Made(l, null));
        var job = Lines("job.json").Select(l => Made(l, Job));
        var air = Lines("air.json").Select(l => Made(l, Job));
        var sweeps = JsonSerializer.Deserialize(DemoFiles.Read("sweeps.json"), DemoJson.Default.IReadOnlyListDemoSweep)!.SelectMany(s => s.Entries(Job, Hand));
        // A stable order: what was written down at one time keeps the order of its file.
        return [.. shop.Concat(job).Concat(sweeps).Concat(air).OrderBy(e => e.At)];
    }

    private static IReadOnlyList<DemoLine> Lines(string file) =>
        JsonSerializer.Deserialize(DemoFiles.Read(file), DemoJson.Default.IReadOnlyListDemoLine)!;

    private static Entry Made(DemoLine line, Guid? job)
    {
        var fact = DemoName.Resolved(JsonNode.Parse(line.Fact.GetRawText())).Deserialize(RecordJson.Default.Fact)!;
        return new Entry(
            DemoName.Number(line.Name), DemoName.Subject(line.About ?? line.Name), job, line.At, Hand, "demo", fact,
            line.Replaces is { } replaced ? DemoName.Number(replaced) : null, line.Reason);
    }
}
