using Microsoft.AspNetCore.Components.Server.Circuits;

namespace Portwright.Web.Security;

/// <summary>How many live pages are connected.</summary>
public sealed class OpenCircuits
{
    /// <summary>More live pages than this are refused: nobody has so many at one bench.</summary>
    public const int Most = 32;

    private int _open;

    public bool Full => Volatile.Read(ref _open) >= Most;

    internal void Up() => Interlocked.Increment(ref _open);

    internal void Down() => Interlocked.Decrement(ref _open);
}

/// <summary>Counts connections as they come and go.</summary>
public sealed class CircuitCount(OpenCircuits circuits) : CircuitHandler
{
    public override Task OnConnectionUpAsync(Circuit circuit, CancellationToken cancellationToken)
    {
        circuits.Up();
        return Task.CompletedTask;
    }

    public override Task OnConnectionDownAsync(Circuit circuit, CancellationToken cancellationToken)
    {
        circuits.Down();
        return Task.CompletedTask;
    }
}
