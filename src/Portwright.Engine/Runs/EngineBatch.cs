using System.Diagnostics;
using System.Security.Cryptography;
using System.Text.Json;

namespace Portwright.Engine.Runs;

/// <summary>A design at one speed, waiting to be run.</summary>
/// <param name="TurnsASecond">1/s.</param>
public sealed record EngineTask(EngineDesign Design, double TurnsASecond, Settling Settling)
{
    private static Guid Version(Type of) => of.Assembly.ManifestModule.ModuleVersionId;

    /// <summary>The same for two tasks written alike, and for no others: a hash of every figure and of the program that runs them.</summary>
    public string Key()
    {
        // What the run computes with lives in two rooms and a library.
        Guid[] program = [Version(typeof(EngineTask)), Version(typeof(Physics.Curves.MonotoneCubic)), Version(typeof(MathNet.Numerics.Constants))];
        return Convert.ToHexStringLower(SHA256.HashData(JsonSerializer.SerializeToUtf8Bytes((object)new { program, Design, TurnsASecond, Settling })));
    }
}

/// <summary>Where operating points are kept between runs. They can be lost without harm: they are worked out again.</summary>
/// <remarks>Used from several threads at once.</remarks>
public interface IKeptPoints
{
    OperatingPoint? Find(string key);

    void Keep(string key, OperatingPoint point);
}

/// <summary>How far a batch has come.</summary>
/// <param name="Kept">Of those done, how many were known already.</param>
/// <param name="Elapsed">Since it began.</param>
public readonly record struct BatchProgress(int Done, int Total, int Kept, TimeSpan Elapsed)
{
    /// <summary>By the pace of those worked out so far; null before the first.</summary>
    public TimeSpan? Left => Done <= Kept ? null : Elapsed * ((double)(Total - Done) / (Done - Kept));
}

/// <summary>Runs many designs side by side. Each runs as if it were alone: no result depends on which others ran beside it or on how many at a time.</summary>
public sealed class EngineBatch
{
    /// <summary>Runs at a time; the machine's processors unless set.</summary>
    public int AtATime { get; init; } = Environment.ProcessorCount;

    /// <summary>Null: nothing is kept.</summary>
    public IKeptPoints? Kept { get; init; }

    /// <summary>Told after every point, from any thread.</summary>
    public Action<BatchProgress>? Progress { get; init; }

    public CancellationToken Cancel { get; init; }

    /// <summary>All points from what is kept, or null where one has not been run yet.</summary>
    public static IReadOnlyList<OperatingPoint>? FromKept(IReadOnlyList<EngineTask> tasks, IKeptPoints kept)
    {
        ArgumentNullException.ThrowIfNull(tasks);
        ArgumentNullException.ThrowIfNull(kept);
        var points = new OperatingPoint[tasks.Count];
        for (var i = 0; i < points.Length; i++)
        {
            if (kept.Find(tasks[i].Key()) is not { } point) return null;
            points[i] = point;
        }

        return points;
    }

    /// <summary>One point a task, in their order. What was done before a cancellation is kept.</summary>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    /// <exception cref="ArgumentException">A design cannot be put together.</exception>
    public IReadOnlyList<OperatingPoint> Run(IReadOnlyList<EngineTask> tasks)
    {
        ArgumentNullException.ThrowIfNull(tasks);
        var points = new OperatingPoint[tasks.Count];
        var watch = Stopwatch.StartNew();
        int done = 0, known = 0;
        var problem = default(Exception);
        Parallel.For(0, tasks.Count, new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, AtATime), CancellationToken = Cancel }, (i, state) =>
        {
            try
            {
                var task = tasks[i];
                var key = Kept is null ? "" : task.Key();
                if (Kept?.Find(key) is { } point)
                {
                    Interlocked.Increment(ref known);
                }
                else
                {
                    point = EngineRun.At(task.Design, task.TurnsASecond, task.Settling, Cancel);
                    if (point.IsFinite) Kept?.Keep(key, point);
                }

                points[i] = point;
                Progress?.Invoke(new(Interlocked.Increment(ref done), tasks.Count, known, watch.Elapsed));
            }
            catch (ArgumentException e)
            {
                problem = e;
                state.Stop();
            }
        });
        Cancel.ThrowIfCancellationRequested();
        if (problem is not null) System.Runtime.ExceptionServices.ExceptionDispatchInfo.Throw(problem);
        return points;
    }
}
