namespace Portwright.Web.Tests;

/// <summary>
/// One running workbench for tests that neither kill it nor ask what the whole shop holds: each puts its own job beside the others.
/// Starting the program costs more than most tests.
/// </summary>
public sealed class StandingWorkbench : IAsyncLifetime
{
    public RunningWorkbench Bench { get; } = new();

    public async ValueTask InitializeAsync() => await Bench.Start();

    public ValueTask DisposeAsync()
    {
        Bench.Dispose();
        return ValueTask.CompletedTask;
    }
}
