using System.Diagnostics;
using Portwright.Engine.Gas;
using Portwright.Engine.Gas.Ends;

namespace Portwright.Bench.Gas;

/// <summary>Pipes with ends as an engine has them: each from a valve to the room, or four and four to a junction with a tail pipe.</summary>
internal static class NetworkRun
{
    private static readonly PerfectGas Gas = PerfectGas.Air;

    public static PipeNetwork Valves(int pipes, int cells, int lanes)
    {
        var network = new PipeNetwork(lanes);
        for (var i = 0; i < pipes; i++)
        {
            var pipe = Pipe(cells, i);
            network.Add(pipe)
                .Join(PipeEnd.First(pipe), new Plenum(4e-4, Gas, new(150_000 + 5_000 * i, 400)), new() { AreaIntoPipe = 2e-4, AreaOutOfPipe = 1.5e-4 })
                .Join(PipeEnd.Last(pipe), new Room(new(101_325, 293.15)));
        }

        return network;
    }

    public static PipeNetwork Junctions(int cells, int lanes)
    {
        var network = new PipeNetwork(lanes);
        for (var group = 0; group < 2; group++)
        {
            var tail = Pipe(cells, group);
            network.Add(tail).Join(PipeEnd.Last(tail), new Room(new(101_325, 293.15)));
            var branches = new List<PipeEnd> { PipeEnd.First(tail) };
            for (var i = 0; i < 3; i++)
            {
                var pipe = Pipe(cells, i + 3 * group);
                network.Add(pipe).Join(PipeEnd.First(pipe), new Plenum(4e-4, Gas, new(150_000 + 5_000 * i, 400)), new() { AreaIntoPipe = 2e-4, AreaOutOfPipe = 1.5e-4 });
                branches.Add(PipeEnd.Last(pipe));
            }

            network.JoinAtOnePoint([.. branches]);
        }

        return network;
    }

    public static void Print(string name, Func<int, PipeNetwork> make)
    {
        foreach (var lanes in new[] { 1, new PipeNetwork().Lanes })
        {
            var network = make(lanes);
            for (var i = 0; i < 300; i++) network.Step();
            var best = double.MaxValue;
            for (var round = 0; round < 400; round++)
            {
                var start = Stopwatch.GetTimestamp();
                for (var i = 0; i < 200; i++) network.Step();
                best = Math.Min(best, Stopwatch.GetElapsedTime(start).TotalNanoseconds / 200);
            }

            Console.WriteLine($"{name}, {lanes} at once: {best / 1000:F2} us a step, {best / network.Pipes.Sum(p => p.Cells):F2} ns a cell and step");
        }
    }

    private static Pipe Pipe(int cells, int number)
    {
        var pipe = new Pipe(PipeShape.Cone(0.5, cells, 0.035, 0.042), Gas, new(2e-5, BendLoss: 0.2, Temperature: 400), $"pipe {number}");
        for (var i = 0; i < cells; i++) pipe[i] = Gas.State(101_325 + 8_000 * Math.Sin(9.0 * i / cells + number), 330, 20);
        return pipe;
    }
}
