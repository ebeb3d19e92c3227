using Portwright.Engine.Gas;

namespace Portwright.Engine.Tests.Gas;

/// <summary>Straight tubes with what the tests start in them.</summary>
internal static class Tubes
{
    public static readonly PerfectGas Plain = new(1.4, 1);

    /// <summary>A tube of length 1 without end echoes, filled by position.</summary>
    public static (PipeNetwork Network, Pipe Pipe) Endless(int cells, Func<double, GasState> fill, PerfectGas? gas = null, int lanes = 0, double length = 1)
    {
        var pipe = new Pipe(PipeShape.Of(length, cells, _ => 1), gas ?? Plain);
        for (var i = 0; i < cells; i++) pipe[i] = fill(pipe.Position(i));
        var network = new PipeNetwork(lanes).Add(pipe).LeaveEndless(PipeEnd.First(pipe)).LeaveEndless(PipeEnd.Last(pipe));
        return (network, pipe);
    }

    public static double Sum(int count, Func<int, double> of) => Enumerable.Range(0, count).Sum(of);
}
