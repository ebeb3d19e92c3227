using System.Runtime.CompilerServices;
using Portwright.Engine.Gas.Lanes;

namespace Portwright.Engine.Gas;

/// <summary>MUSCL-Hancock with van Leer's slopes and the HLLC flow, once for any number of lanes.</summary>
/// <remarks>
/// <para>Sources: E. F. Toro, Riemann Solvers and Numerical Methods for Fluid Dynamics (3rd ed., 2009): MUSCL-Hancock section 14.4, HLLC section 10.4,
/// speeds of the outer waves equation 10.48 (Davis); van Leer's slope: B. van Leer, J. Comput. Phys. 14 (1974) 361-370.</para>
/// <para>Every pass is kept out of its caller and compiled at full optimisation from the first call. Left to itself the runtime may inline the passes
/// into one another, run out of its budget and leave the vector operators as calls: six times slower for the life of the process.</para>
/// </remarks>
internal sealed unsafe class PipeKernel<T> : PipeKernel
    where T : struct, ILanes<T>
{
    private const MethodImplOptions Whole = MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization;

    /// <summary>An edge keeps at least this share of its cell's density and pressure when it is moved half a step ahead.</summary>
    private const double Kept = 0.05;

    /// <summary>Friction and heat of slower gas, as a share of the speed of sound, are worked out as if it went this fast.</summary>
    private const double SlowestForWall = 0.01;

    public override int Lanes => T.Count;

    [MethodImpl(Whole)]
    public override void Predict(PipeMemory m, in PipeNumbers n, double step)
    {
        double* gas = m[PipeMemory.Density], shape = m[PipeMemory.AreaSlope], first = m[PipeMemory.FirstEdge], last = m[PipeMemory.LastEdge];
        nint row = m.Stride, row2 = 2 * row, row3 = 3 * row;
        T half = T.All(0.5), kept = T.All(Kept), k = T.All(n.K), ahead = T.All(-step * n.PerCellLength), time = T.All(0.5 * step);
        T timeHeat = T.All(0.5 * step * n.KLess), perK = T.All(n.PerK), wallHeat = T.All(n.WallHeat);
        for (var left = m.Cells; left > 0; left -= T.Count)
        {
            T r = T.Load(gas), u = T.Load(gas + row), p = T.Load(gas + row2), y = T.Load(gas + row3);
            var sr = HalfSlope(T.Load(gas - 1), r, T.Load(gas + 1));
            var su = HalfSlope(T.Load(gas + row - 1), u, T.Load(gas + row + 1));
            var sp = HalfSlope(T.Load(gas + row2 - 1), p, T.Load(gas + row2 + 1));
            var sy = HalfSlope(T.Load(gas + row3 - 1), y, T.Load(gas + row3 + 1));
            var spread = T.MultiplyAdd(half * u, T.Load(shape), su);
            var speed = T.Abs(u);
            var drag = T.Load(shape + row) * speed * u;
            var warmth = T.Load(shape + row2) * speed * T.LessProduct(perK, p, wallHeat * r);
            var r1 = T.MultiplyAdd(ahead, T.MultiplyAdd(u, sr, r * spread), r);
            var u1 = T.MultiplyAdd(ahead, T.MultiplyAdd(u, su, sp / r), T.LessProduct(time, drag, u));
            var p1 = T.MultiplyAdd(ahead, T.MultiplyAdd(u, sp, k * p * spread), T.MultiplyAdd(timeHeat, warmth, p));
            var y1 = T.MultiplyAdd(ahead, u * sy, y);

            var floor = kept * r;
            T.Max(r1 - sr, floor).Store(first);
            T.Max(r1 + sr, floor).Store(last);
            (u1 - su).Store(first + row);
            (u1 + su).Store(last + row);
            floor = kept * p;
            T.Max(p1 - sp, floor).Store(first + row2);
            T.Max(p1 + sp, floor).Store(last + row2);
            (y1 - sy).Store(first + row3);
            (y1 + sy).Store(last + row3);
            gas += T.Count;
            shape += T.Count;
            first += T.Count;
            last += T.Count;
        }
    }

    [MethodImpl(Whole)]
    public override void Flows(PipeMemory m, in PipeNumbers n)
    {
        double* sound = m[PipeMemory.Sound], before = m[PipeMemory.LastEdge] - 1, after = m[PipeMemory.FirstEdge], flow = m[PipeMemory.Flow];
        nint row = m.Stride, row2 = 2 * row, row3 = 3 * row;
        var perK = T.All(n.PerK);
        for (var left = m.Cells; left > 0; left -= T.Count)
        {
            // The sound of the cell stands for that of its borders: a root and a division less for each.
            Hllc<T>.Flow(
                T.Load(before), T.Load(before + row), T.Load(before + row2), T.Load(before + row3), T.Load(sound - 1),
                T.Load(after), T.Load(after + row), T.Load(after + row2), T.Load(after + row3), T.Load(sound),
                perK, out var mass, out var momentum, out var energy, out var burnt);
            mass.Store(flow);
            momentum.Store(flow + row);
            energy.Store(flow + row2);
            burnt.Store(flow + row3);
            sound += T.Count;
            before += T.Count;
            after += T.Count;
            flow += T.Count;
        }
    }

    [MethodImpl(Whole)]
    public override double Update(PipeMemory m, in PipeNumbers n, double step)
    {
        // One pointer a group of rows, and the distances of one to three rows: as many addresses as the machine has registers for.
        double* old = m[m.Now], next = m[m.Then], first = m[PipeMemory.FirstEdge], last = m[PipeMemory.LastEdge], flow = m[PipeMemory.Flow], shape = m[PipeMemory.AreaSlope], gas = m[PipeMemory.Velocity];
        nint row = m.Stride, row2 = 2 * row, row3 = 3 * row;
        T dt = T.All(step), half = T.All(0.5), zero = T.All(0), one = T.All(1), k = T.All(n.K), kLess = T.All(n.KLess), perK = T.All(n.PerK), wallHeat = T.All(n.WallHeat);
        T fastest = zero, least = T.All(double.MaxValue);
        for (var left = m.Cells; left > 0; left -= T.Count)
        {
            T scale = dt * T.Load(shape - row), a = scale * T.Load(shape - row2), b = scale * T.Load(shape - row2 + 1);
            T rm = half * (T.Load(first) + T.Load(last)), um = half * (T.Load(first + row) + T.Load(last + row)), pm = half * (T.Load(first + row2) + T.Load(last + row2));
            var travel = dt * T.Abs(um);
            var drag = T.Load(shape + row) * travel * rm;
            var warmth = T.Load(shape + row2) * travel;

            var r = T.LessProduct(b, T.Load(flow + 1), T.MultiplyAdd(a, T.Load(flow), T.Load(old)));
            // The wall's push on a tapering cell is taken out of both borders: still gas leaves exactly nothing.
            var ru = T.LessProduct(b, T.Load(flow + row + 1) - pm, T.MultiplyAdd(a, T.Load(flow + row) - pm, T.LessProduct(drag, um, T.Load(old + row))));
            var e = T.MultiplyAdd(warmth, T.LessProduct(perK, pm, wallHeat * rm), T.Load(old + row2));
            e = T.LessProduct(b, T.Load(flow + row2 + 1), T.MultiplyAdd(a, T.Load(flow + row2), e));
            var ry = T.LessProduct(b, T.Load(flow + row3 + 1), T.MultiplyAdd(a, T.Load(flow + row3), T.Load(old + row3)));
            r.Store(next);
            ru.Store(next + row);
            e.Store(next + row2);
            ry.Store(next + row3);

            var inverse = one / r;
            var u = ru * inverse;
            var p = kLess * T.LessProduct(half * ru, u, e);
            var c = T.Sqrt(k * p * inverse);
            r.Store(gas - row);
            u.Store(gas);
            p.Store(gas + row);
            (ry * inverse).Store(gas + row2);
            c.Store(gas + row3);
            fastest = T.Max(fastest, T.Abs(u) + c);
            least = T.Min(least, T.Min(r, p));
            old += T.Count;
            next += T.Count;
            first += T.Count;
            last += T.Count;
            flow += T.Count;
            shape += T.Count;
            gas += T.Count;
        }

        return T.Least(least) > 0 ? T.Greatest(fastest) : double.NaN;
    }

    [MethodImpl(Whole)]
    public override void Wall(PipeMemory m, in PipeNumbers n)
    {
        double* density = m[PipeMemory.Density], velocity = m[PipeMemory.Velocity], pressure = m[PipeMemory.Pressure];
        double* diameter = m[PipeMemory.Diameter], half = m[PipeMemory.HalfPerDiameter], rough = m[PipeMemory.RoughnessTerm], bend = m[PipeMemory.Bend];
        double* friction = m[PipeMemory.Friction], heat = m[PipeMemory.Heat], sound = m[PipeMemory.Sound];
        T slowest = T.All(SlowestForWall), perR = T.All(1 / n.R), perFriction = T.All(n.HeatPerFriction);
        var cells = m.Cells;
        for (var i = 0; i < cells; i += T.Count)
        {
            var r = T.Load(density + i);
            // The coefficients stand for several steps: were they those of gas nearly at rest, the next wave would be braked and cooled a thousandfold.
            var speed = T.Max(T.Abs(T.Load(velocity + i)), slowest * T.Load(sound + i));
            var factor = WallFriction<T>.Factor(r, speed, T.Load(pressure + i) / r * perR, T.Load(diameter + i), T.Load(rough + i));
            var wall = factor * T.Load(half + i);
            (wall + T.Load(bend + i)).Store(friction + i);
            (wall * perFriction).Store(heat + i);
        }
    }

    /// <summary>Half of van Leer's harmonic mean of the two differences, zero where they disagree in sign.</summary>
    /// <remarks>The tiny number stands in for a sum of zero, where the product is not above zero either.</remarks>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T HalfSlope(T before, T here, T after)
    {
        T a = here - before, b = after - here;
        return T.Max(a * b, T.All(0)) / (a + b + T.All(1e-300));
    }
}
