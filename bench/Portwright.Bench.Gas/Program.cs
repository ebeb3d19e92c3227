using System.Diagnostics;
using System.Globalization;
using System.Runtime.Intrinsics;
using Portwright.Bench;
using Portwright.Bench.Gas;
using Portwright.Engine.Gas;

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
using var kept = History.Asked(ref args) ? new Overheard("Gas in pipes and engines") : null;
var bits = Vector512.IsHardwareAccelerated ? 512 : Vector256.IsHardwareAccelerated ? 256 : 64;
Console.WriteLine($"{History.Processor}, vectors of {bits} bits, .NET {Environment.Version}");

// One figure and no more: for runs in fresh processes, which must not differ.
if (args is ["one"])
{
    Console.WriteLine($"{Best(new KernelRun("C#", 100, PipeKernel.Widest), 60):F2} ns");
    return 0;
}

if (args is [] or ["engine"]) EngineRuns.Print();
if (args is ["engine"]) return 0;

NetworkRun.Print("8 pipes of 60 cells, each from a vessel through a valve to the room", lanes => NetworkRun.Valves(8, 60, lanes));
NetworkRun.Print("8 pipes of 30 cells, the same", lanes => NetworkRun.Valves(8, 30, lanes));
NetworkRun.Print("two junctions of three pipes and a tail, 60 cells each", lanes => NetworkRun.Junctions(60, lanes));
if (args is ["network"]) return 0;

var twins = Twin.Build(out var compiler);
Console.WriteLine(compiler);
foreach (var cells in new[] { 30, 100, 300, 3_200 })
{
    List<KernelRun> runs = [new("C# one number", cells, PipeKernel.One), new("C# 256 bits", cells, PipeKernel.Four)];
    if (bits == 512) runs.Add(new("C# 512 bits", cells, PipeKernel.Eight));
    runs.Add(new("C# whole step", cells, network: true));
    if (twins.TryGetValue("plain", out var plain)) runs.Add(new("C++ plain loops", cells, twin: plain));
    if (twins.TryGetValue("vectors4", out var four)) runs.Add(new("C++ 256 bits", cells, twin: four));
    if (twins.TryGetValue("vectors8", out var eight) && bits == 512) runs.Add(new("C++ 512 bits", cells, twin: eight));
    Compare(cells, runs);
}

return FreshProcesses();

// All versions take turns, so that what else the machine does falls on all of them; the best of many short turns counts.
static void Compare(int cells, List<KernelRun> runs)
{
    foreach (var run in runs) run.Run(200);
    var apart = runs.Max(r => Enumerable.Range(0, cells).Max(i => Math.Abs(r.Pipe[i].Pressure / runs[0].Pipe[i].Pressure - 1)));
    var steps = Math.Max(4, 200_000 / cells / 2 * 2);
    var times = runs.ToDictionary(r => r, _ => new List<double>());
    var allocated = GC.GetAllocatedBytesForCurrentThread();
    foreach (var run in runs) run.Run(steps);
    allocated = GC.GetAllocatedBytesForCurrentThread() - allocated;
    var random = new Random(1);
    var turns = runs.ToArray();
    for (var round = 0; round < 150; round++)
    {
        // In ever new order: what ran just before leaves the processor warmer or cooler.
        random.Shuffle(turns);
        foreach (var run in turns)
        {
            var start = Stopwatch.GetTimestamp();
            run.Run(steps);
            times[run].Add(Stopwatch.GetElapsedTime(start).TotalNanoseconds / ((double)steps * cells));
        }
    }

    Console.WriteLine($"{cells} cells: {allocated} bytes allocated, pressures after 200 steps agree to {apart:E1}");
    foreach (var run in runs)
    {
        // The same turn of each against the same turn of the other.
        string Against(string other) => runs.Find(r => r.Name == other) is { } o && o != run
            ? $", {Median(times[o].Zip(times[run], (a, b) => a / b)):F2} x {other}"
            : "";
        var same = run.Name.Contains("512", StringComparison.Ordinal) ? "C++ 512 bits" : "C++ 256 bits";
        var more = run.Name.StartsWith("C#", StringComparison.Ordinal) ? Against("C++ plain loops") + (run.Name.EndsWith("bits", StringComparison.Ordinal) ? Against(same) : "") : "";
        Console.WriteLine($"  {run.Name,-16} {times[run].Min(),7:F2} ns a cell and step{more}");
    }
}

static double Median(IEnumerable<double> values)
{
    var sorted = values.Order().ToArray();
    return sorted[sorted.Length / 2];
}

static double Best(KernelRun run, int rounds)
{
    var best = double.MaxValue;
    for (var round = 0; round < rounds; round++)
    {
        var start = Stopwatch.GetTimestamp();
        run.Run(2_000);
        best = Math.Min(best, Stopwatch.GetElapsedTime(start).TotalNanoseconds / (2_000.0 * run.Pipe.Cells));
    }

    return best;
}

// Whether the kernel is compiled well must not be left to chance: several processes, none much slower than the best.
static int FreshProcesses()
{
    var figures = new List<double>();
    for (var i = 0; i < 5; i++)
    {
        using var process = Process.Start(new ProcessStartInfo(Environment.ProcessPath!, "one") { RedirectStandardOutput = true })!;
        var last = process.StandardOutput.ReadToEnd().Trim().Split('\n')[^1];
        process.WaitForExit();
        figures.Add(double.Parse(last.Split(' ')[0], CultureInfo.InvariantCulture));
    }

    var good = figures.Max() <= 1.5 * figures.Min();
    Console.WriteLine($"five fresh processes, 100 cells: {string.Join(", ", figures.Select(f => f.ToString("F2", CultureInfo.InvariantCulture)))} ns{(good ? "" : ": one is more than 1.5 times the best")}");
    return good ? 0 : 1;
}
