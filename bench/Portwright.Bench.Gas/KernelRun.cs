using System.Runtime.CompilerServices;
using Portwright.Engine.Gas;

namespace Portwright.Bench.Gas;

/// <summary>One pipe, closed at both ends, with friction, taper, heat and waves, stepped by one version of the kernel.</summary>
internal sealed unsafe class KernelRun
{
    private const double Courant = 0.85;

    private readonly PipeKernel? _kernel;
    private readonly nint _twin;
    private readonly PipeNetwork? _network;
    private readonly Pipe _pipe;
    private double _fastest;

    public KernelRun(string name, int cells, PipeKernel? kernel = null, nint twin = 0, bool network = false)
    {
        (Name, _kernel, _twin) = (name, kernel, twin);
        var gas = PerfectGas.Air;
        _pipe = new(PipeShape.Cone(0.01 * cells, cells, 0.035, 0.045), gas, new(0, FrictionFactor: 0.02, Temperature: 350));
        for (var i = 0; i < cells; i++)
            _pipe[i] = gas.State(101_325 + 4_000 * Math.Sin(12.0 * i / cells), 320 + 20 * Math.Cos(9.0 * i / cells), 25 * Math.Sin(17.0 * i / cells), i / (double)cells);
        _fastest = _pipe.Fastest;
        if (network) _network = new PipeNetwork().Add(_pipe);
    }

    public string Name { get; }

    public Pipe Pipe => _pipe;

    /// <summary>An even number of steps.</summary>
    public void Run(int steps)
    {
        if (_network is not null)
        {
            for (var i = 0; i < steps; i++) _network.Step();
        }
        else if (_kernel is not null)
        {
            RunKernel(steps);
        }
        else
        {
            var m = _pipe.Memory;
            var twin = (delegate* unmanaged<double*, long, int, double, double, double, double, double, int, double>)_twin;
            _fastest = twin(m[0], m[1] - m[0], m.Cells, _pipe.Numbers.K, _pipe.Numbers.CellLength, _pipe.Numbers.WallHeat, Courant, _fastest, steps);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void RunKernel(int steps)
    {
        var m = _pipe.Memory;
        var n = _pipe.Numbers;
        PipeEnd first = PipeEnd.First(_pipe), last = PipeEnd.Last(_pipe);
        for (var i = 0; i < steps; i++)
        {
            var dt = Courant * n.CellLength / _fastest;
            first.Mirror();
            last.Mirror();
            _kernel!.Predict(m, n, dt);
            _kernel.Flows(m, n);
            first.Close();
            last.Close();
            _fastest = _kernel.Update(m, n, dt);
            m.Swap();
        }
    }
}
