using System.Runtime.CompilerServices;
using Portwright.Engine.Gas.Ends;
using Portwright.Engine.Gas.Lanes;

namespace Portwright.Engine.Gas;

public sealed unsafe partial class PipeNetwork
{
    private const int MostHalvings = 20;

    /// <summary>Tries a step; where it would leave a cell without gas or pressure, takes two of half the length with flat cells instead.</summary>
    private void Advance(double step, bool flat, int halvings)
    {
        if (!_ready) MakeReady();
        if (Try(step, flat)) return;
        if (halvings >= MostHalvings)
            throw new InvalidOperationException($"The gas in the pipes has no solution that stays above a vacuum at a step of {step:R} s.");
        foreach (var pipe in _pipes) pipe.Restate();
        Advance(0.5 * step, true, halvings + 1);
        Advance(0.5 * step, true, halvings + 1);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private bool Try(double step, bool flat)
    {
        if (_stepsToWall-- == 0)
        {
            foreach (var pipe in _pipes)
                if (pipe.FrictionFollowsGas) _kernel.Wall(pipe.Memory, pipe.Numbers);
            _stepsToWall = WallEvery - 1;
        }

        foreach (var wall in _walls) wall.Mirror();
        foreach (var (end, _) in _endless) end.Continue();
        foreach (var joined in _joined) joined.End.Continue();
        foreach (var junction in _junctions)
            foreach (var end in junction) end.Continue();

        foreach (var pipe in _pipes)
        {
            if (flat) PipeKernel.Flat(pipe.Memory);
            else _kernel.Predict(pipe.Memory, pipe.Numbers, step);
            _kernel.Flows(pipe.Memory, pipe.Numbers);
        }

        foreach (var wall in _walls) wall.Close();
        foreach (var (end, beyond) in _endless) end.SetFlow(Through(end, beyond));
        SolveOpenings(step);
        foreach (var junction in _junctions) Solve(junction);

        var sound = true;
        foreach (var pipe in _pipes)
        {
            pipe.Fastest = _kernel.Update(pipe.Memory, pipe.Numbers, step);
            sound &= double.IsFinite(pipe.Fastest);
        }

        if (!sound) return false;
        foreach (var pipe in _pipes) pipe.Memory.Swap();
        for (var i = 0; i < _reservoirs.Length; i++) _reservoirs[i].Take(_taking[3 * i], _taking[3 * i + 1], _taking[3 * i + 2], step);
        if (flat) FlatSteps++;
        return true;
    }

    /// <summary>The same flow as between two cells, with gas beyond that never changes.</summary>
    private static EndFlow Through(PipeEnd end, GasState beyond)
    {
        var edge = end.Edge;
        var k = end.Pipe.Gas.HeatCapacityRatio;
        Hllc<OneLane>.Flow(
            edge.Density, edge.Velocity, edge.Pressure, edge.Burnt, edge.SoundSpeed(k),
            beyond.Density, beyond.Velocity, beyond.Pressure, beyond.Burnt, beyond.SoundSpeed(k),
            k / (k - 1), out var mass, out var momentum, out var energy, out var burnt);
        return new(mass, momentum, energy, burnt);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void SolveOpenings(double step)
    {
        for (var i = 0; i < _joined.Length; i++) _joined[i].Write(_rows, i, step);
        if (_kernel.Lanes == 8) Openings<EightLanes>.Solve(_rows);
        else if (_kernel.Lanes == 4) Openings<FourLanes>.Solve(_rows);
        else Openings<OneLane>.Solve(_rows);

        Array.Clear(_taking);
        for (var i = 0; i < _joined.Length; i++)
        {
            var joined = _joined[i];
            double mass = _rows[OpeningRows.Mass][i], energy = _rows[OpeningRows.Energy][i], burnt = mass * (mass > 0 ? joined.BurntInside : joined.BurntBeyond);
            joined.End.SetFlow(new(mass, _rows[OpeningRows.Momentum][i], energy, burnt));
            var area = joined.Area;
            var at = 3 * joined.Place;
            _taking[at] += step * area * mass;
            _taking[at + 1] += step * area * energy;
            _taking[at + 2] += step * area * burnt;
            joined.Opening.MassFlow = -area * mass;
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Solve(PipeEnd[] junction)
    {
        for (var i = 0; i < junction.Length; i++) _branches[i] = new(junction[i].Edge, junction[i].Area, junction[i].Pipe.Gas.HeatCapacityRatio);
        Junction.Solve(_branches.AsSpan(0, junction.Length), _flows);
        for (var i = 0; i < junction.Length; i++) junction[i].SetFlow(_flows[i]);
    }
}
