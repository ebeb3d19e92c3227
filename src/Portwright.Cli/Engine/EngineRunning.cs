using System.Globalization;
using System.Runtime.InteropServices;
using Portwright.Cli.Terminal;
using Portwright.Engine.Runs;

namespace Portwright.Cli.Engine;

/// <summary>Runs worked out at the terminal: one line that tells how far they are, and a clean stop.</summary>
internal static class EngineRunning
{
    private static readonly TimeSpan Often = TimeSpan.FromMilliseconds(150);

    /// <exception cref="Refusal">Stopped by the person, or a design cannot be put together.</exception>
    public static IReadOnlyList<OperatingPoint> Run(IReadOnlyList<EngineTask> tasks, IKeptPoints kept, TextWriter error, CancellationToken stop = default)
    {
        using var stopped = CancellationTokenSource.CreateLinkedTokenSource(stop);
        using var interrupt = Stops(PosixSignal.SIGINT, stopped);
        using var terminate = Stops(PosixSignal.SIGTERM, stopped);
        var line = ReferenceEquals(error, Console.Error) && !Console.IsErrorRedirected ? new ProgressLine(error) : null;
        var done = 0;
        try
        {
            return new EngineBatch
            {
                Kept = kept,
                Cancel = stopped.Token,
                Progress = p =>
                {
                    if (p.Done > Volatile.Read(ref done)) Volatile.Write(ref done, p.Done);
                    line?.Show(p);
                },
            }.Run(tasks);
        }
        catch (OperationCanceledException)
        {
            line?.Clear();
            throw new Refusal($"Stopped after {Number(done)} of {Number(tasks.Count)} runs. What was done is kept: the same command goes on from there.", ExitCode.Stopped);
        }
        catch (ArgumentException problem)
        {
            line?.Clear();
            throw Cannot(problem);
        }
        finally
        {
            line?.Clear();
        }
    }

    /// <summary>Why an engine cannot be run, without what the runtime adds for programmers.</summary>
    public static Refusal Cannot(ArgumentException problem) =>
        new($"The engine cannot be run. {problem.Message.Split(" (Parameter '", StringSplitOptions.None)[0]} Look over the engine plan and the sections of the ports.");

    private static PosixSignalRegistration Stops(PosixSignal signal, CancellationTokenSource stopped) => PosixSignalRegistration.Create(signal, context =>
    {
        context.Cancel = true;
        stopped.Cancel();
    });

    private static string Number(int n) => n.ToString("N0", CultureInfo.InvariantCulture);

    /// <summary>One line written over and over.</summary>
    private sealed class ProgressLine(TextWriter error)
    {
        private readonly Lock _gate = new();
        private TimeSpan _last;
        private int _most, _width;

        public void Show(BatchProgress progress)
        {
            lock (_gate)
            {
                // Points come from several threads, not always in their order.
                if (progress.Done <= _most || (_width > 0 && progress.Elapsed - _last < Often)) return;
                (_most, _last) = (progress.Done, progress.Elapsed);
                var words = $"engine run {Number(progress.Done)} of {Number(progress.Total)}" + (progress.Left is { } left ? $", {Time(left)} left" : "");
                error.Write("\r" + words.PadRight(_width));
                _width = words.Length;
            }
        }

        public void Clear()
        {
            lock (_gate)
            {
                if (_width == 0) return;
                error.Write("\r" + new string(' ', _width) + "\r");
                _width = 0;
            }
        }

        private static string Time(TimeSpan left) => left.TotalSeconds < 90
            ? FormattableString.Invariant($"{Math.Max(1, Math.Ceiling(left.TotalSeconds)):0} s")
            : FormattableString.Invariant($"{Math.Ceiling(left.TotalMinutes):0} min");
    }
}
