using Portwright.Engine.Runs;

namespace Portwright.Web.Engine;

/// <summary>How a batch of runs stands.</summary>
public enum WorkState
{
    Running,
    Done,
    Stopped,
    Failed,
}

/// <summary>One batch of runs being worked out behind the pages. What is done is kept, so that stopping loses nothing.</summary>
public sealed class EngineWork : IDisposable
{
    private readonly Lock _gate = new();
    private readonly CancellationTokenSource _cancel = new();
    private readonly Task _worker;
    private BatchProgress _progress;

    internal EngineWork(string address, IReadOnlyList<EngineTask> tasks, IKeptPoints kept)
    {
        Address = address;
        _progress = new(0, tasks.Count, 0, TimeSpan.Zero);
        // A thread of its own: runs that fill the machine must not keep pages waiting for one.
        _worker = Task.Factory.StartNew(() => Work(tasks, kept), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
    }

    /// <summary>The page that asked for it.</summary>
    public string Address { get; }

    public WorkState State { get; private set; }

    /// <summary>Why it failed, in a sentence.</summary>
    public string Problem { get; private set; } = "";

    public BatchProgress Progress
    {
        get
        {
            lock (_gate)
            {
                return _progress;
            }
        }
    }

    /// <summary>Stops after the cycles being run, and returns once it has.</summary>
    internal void Stop()
    {
        _cancel.Cancel();
        _worker.Wait(TimeSpan.FromSeconds(10));
    }

    public void Dispose()
    {
        Stop();
        _cancel.Dispose();
    }

    private void Work(IReadOnlyList<EngineTask> tasks, IKeptPoints kept)
    {
        try
        {
            new EngineBatch { Kept = kept, Progress = Tell, Cancel = _cancel.Token }.Run(tasks);
            State = WorkState.Done;
        }
        catch (OperationCanceledException)
        {
            State = WorkState.Stopped;
        }
        catch (ArgumentException fault)
        {
            (Problem, State) = ($"The engine cannot be put together: {fault.Message}", WorkState.Failed);
        }
        catch (AggregateException fault)
        {
            (Problem, State) = ($"The run broke off: {fault.GetBaseException().Message}", WorkState.Failed);
        }
    }

    private void Tell(BatchProgress now)
    {
        lock (_gate)
        {
            if (now.Done > _progress.Done) _progress = now;
        }
    }
}
