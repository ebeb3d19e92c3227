using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using Portwright.Engine.Runs;
using Portwright.Shop.Ports;
using Portwright.Shop.Reduction;
using Portwright.Store.Runs;

namespace Portwright.Web.Engine;

/// <summary>The engines that run behind the pages, one batch a job at a time, and what is kept of all runs.</summary>
public sealed class RunningEngines(WorkbenchOptions options) : IDisposable
{
    private readonly Lock _gate = new();
    private readonly Dictionary<Guid, EngineWork> _works = [];
    private readonly ConcurrentDictionary<string, string> _lastRun = [];
    private readonly ConditionalWeakTable<Reductions, ConcurrentDictionary<(Guid?, Guid?), EngineStanding>> _answered = [];

    public KeptRuns Kept { get; } = new(options.DataFolder);

    /// <summary>The batch last begun for a job; null where none was since the workbench started.</summary>
    public EngineWork? Of(Guid job)
    {
        lock (_gate)
        {
            return _works.GetValueOrDefault(job);
        }
    }

    /// <summary>Begins a batch; where one of the job is running already that one goes on instead.</summary>
    /// <param name="address">The page that asks for it.</param>
    public EngineWork Start(Guid job, string address, IReadOnlyList<EngineTask> tasks)
    {
        ArgumentNullException.ThrowIfNull(tasks);
        lock (_gate)
        {
            if (_works.GetValueOrDefault(job) is { State: WorkState.Running } running) return running;
            _works.GetValueOrDefault(job)?.Dispose();
            _lastRun[address] = tasks[0].Key();
            return _works[job] = new EngineWork(address, tasks, Kept);
        }
    }

    public void Stop(Guid job) => Of(job)?.Stop();

    /// <summary>Whether the page's runs were begun earlier with another plan or other readings.</summary>
    public bool HasChanged(string address, IReadOnlyList<EngineTask> tasks)
    {
        ArgumentNullException.ThrowIfNull(tasks);
        return tasks.Count > 0 && _lastRun.TryGetValue(address, out var key) && key != tasks[0].Key();
    }

    /// <summary>How the engine run of these cuts stands; an answer is put together once until something is saved to the job.</summary>
    public EngineStanding Standing(Reductions reductions, Guid job, Guid? intake, Guid? exhaust)
    {
        var known = _answered.GetOrCreateValue(reductions);
        if (known.TryGetValue((intake, exhaust), out var done)) return done;
        // What the command line worked out meanwhile is known here too.
        Kept.TakeIn();
        var standing = EngineStanding.Of(reductions, job, intake, exhaust, Kept);
        if (standing.Answer is not null) known[(intake, exhaust)] = standing;
        return standing;
    }

    /// <summary>A port at a cut, the latest where none is named, with what is kept of the engine's runs.</summary>
    public PortAtCut Port(Reductions reductions, Guid port, Guid? cut)
    {
        Kept.TakeIn();
        return PortAtCut.Of(reductions, port, cut, Kept);
    }

    public void Dispose()
    {
        lock (_gate)
        {
            foreach (var work in _works.Values) work.Dispose();
        }
    }
}
