using System.Diagnostics;
using Portwright.Judging.Faults;

namespace Portwright.Judging.Trial;

/// <summary>How much is tried.</summary>
/// <param name="Heads">Healthy jobs.</param>
/// <param name="Faults">Jobs of each fault and size.</param>
/// <param name="Only">Part of a fault's name, to try that alone; null: all.</param>
/// <param name="Cores">As many at once; 0: all there are.</param>
/// <param name="Sizes">Of the faults; null: all.</param>
public sealed record Extent(long Seed, int Heads, int Faults, string? Only = null, int Cores = 0, IReadOnlyList<Size>? Sizes = null)
{
    public IReadOnlyList<Fault> Chosen => Only is null ? PlantedFaults.All : [.. PlantedFaults.All.Where(f => f.Name.Contains(Only, StringComparison.OrdinalIgnoreCase))];
}

/// <summary>The whole trial.</summary>
/// <param name="Took">On this machine.</param>
public sealed record Run(Extent Extent, IReadOnlyList<Tried> Healthy, IReadOnlyList<Tried> Faulty, TimeSpan Took)
{
    /// <param name="progress">Told now and then how many are done, of how many.</param>
    public static Run Of(Extent extent, Action<int, int>? progress = null)
    {
        ArgumentNullException.ThrowIfNull(extent);
        var watch = Stopwatch.StartNew();
        var asked = new List<(Fault? Fault, Size Size, int Number)>();
        for (var i = 0; i < extent.Heads; i++) asked.Add((null, Size.Middle, i));
        foreach (var fault in extent.Chosen)
        {
            foreach (var size in extent.Sizes ?? Enum.GetValues<Size>())
            {
                for (var i = 0; i < extent.Faults; i++) asked.Add((fault, size, i));
            }
        }

        var tried = new Tried[asked.Count];
        var (done, tenth) = (0, Math.Max(1, asked.Count / 10));
        Parallel.For(0, asked.Count, new ParallelOptions { MaxDegreeOfParallelism = extent.Cores > 0 ? extent.Cores : Environment.ProcessorCount }, i =>
        {
            var (fault, size, number) = asked[i];
            tried[i] = Tried.Once(extent.Seed, fault, size, number);
            var now = Interlocked.Increment(ref done);
            if (now % tenth == 0) progress?.Invoke(now, asked.Count);
        });
        return new Run(extent, [.. tried.Where(t => t.Fault is null)], [.. tried.Where(t => t.Fault is not null)], watch.Elapsed);
    }
}
