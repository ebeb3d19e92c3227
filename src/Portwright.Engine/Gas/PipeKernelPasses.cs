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

    public override int Lanes => T.Count;

    [MethodImpl(Whole)]
    public override void Predict(PipeMemory m, in PipeNumbers n, double step, double order)
    {
        double* density = m[PipeMemory.Density], velocity = m[PipeMemory.Velocity], pressure = m[PipeMemory.Pressure], burnt = m[PipeMemory.Burnt];
        double* areaSlope = m[PipeMemory.AreaSlope], friction = m[PipeMemory.Friction], heat = m[PipeMemory.Heat];
        double* first0 = m[PipeMemory.FirstEdge], first1 = m[PipeMemory.FirstEdge + 1], first2 = m[PipeMemory.FirstEdge + 2], first3 = m[PipeMemory.FirstEdge + 3];
        double* last0 = m[PipeMemory.LastEdge], last1 = m[PipeMemory.LastEdge + 1], last2 = m[PipeMemory.LastEdge + 2], last3 = m[PipeMemory.LastEdge + 3];
        T half = T.All(0.5 * order), zero = T.All(0), one = T.All(1), kept = T.All(Kept), k = T.All(n.K);
        T ahead = T.All(-0.5 * order * step / n.CellLength), time = T.All(0.5 * order * step);
        T kLess = T.All(n.K - 1), perK = T.All(n.K / (n.K - 1)), wallHeat = T.All(n.WallHeat);
        var cells = m.Cells;
        for (var i = 0; i < cells; i += T.Count)
        {
            T r = T.Load(density + i), u = T.Load(velocity + i), p = T.Load(pressure + i), y = T.Load(burnt + i);
            var sr = Slope(T.Load(density + i - 1), r, T.Load(density + i + 1));
            var su = Slope(T.Load(velocity + i - 1), u, T.Load(velocity + i + 1));
            var sp = Slope(T.Load(pressure + i - 1), p, T.Load(pressure + i + 1));
            var sy = Slope(T.Load(burnt + i - 1), y, T.Load(burnt + i + 1));
            var spread = T.MultiplyAdd(u, T.Load(areaSlope + i), su);
            var speed = T.Abs(u);
            var drag = T.Load(friction + i) * speed * u;
            var warmth = T.Load(heat + i) * speed * T.MultiplyAdd(wallHeat, r, zero - perK * p) * kLess;
            var dr = ahead * T.MultiplyAdd(u, sr, r * spread);
            var du = T.MultiplyAdd(ahead, T.MultiplyAdd(u, su, sp / r), zero - time * drag);
            var dp = T.MultiplyAdd(ahead, T.MultiplyAdd(u, sp, k * p * spread), time * warmth);
            var dy = ahead * u * sy;

            var floor = kept * r;
            T.Max(r + (dr - half * sr), floor).Store(first0 + i);
            T.Max(r + T.MultiplyAdd(half, sr, dr), floor).Store(last0 + i);
            (u + (du - half * su)).Store(first1 + i);
            (u + T.MultiplyAdd(half, su, du)).Store(last1 + i);
            floor = kept * p;
            T.Max(p + (dp - half * sp), floor).Store(first2 + i);
            T.Max(p + T.MultiplyAdd(half, sp, dp), floor).Store(last2 + i);
            (y + (dy - half * sy)).Store(first3 + i);
            (y + T.MultiplyAdd(half, sy, dy)).Store(last3 + i);
        }
    }

    [MethodImpl(Whole)]
    public override void Flows(PipeMemory m, in PipeNumbers n)
    {
        double* sound = m[PipeMemory.Sound];
        double* left0 = m[PipeMemory.LastEdge], left1 = m[PipeMemory.LastEdge + 1], left2 = m[PipeMemory.LastEdge + 2], left3 = m[PipeMemory.LastEdge + 3];
        double* right0 = m[PipeMemory.FirstEdge], right1 = m[PipeMemory.FirstEdge + 1], right2 = m[PipeMemory.FirstEdge + 2], right3 = m[PipeMemory.FirstEdge + 3];
        double* mass = m[PipeMemory.Flow], momentum = m[PipeMemory.Flow + 1], energy = m[PipeMemory.Flow + 2], burnt = m[PipeMemory.Flow + 3];
        var perK = T.All(n.K / (n.K - 1));
        var cells = m.Cells;
        for (var i = 0; i < cells; i += T.Count)
        {
            // The sound of the cell stands for that of its borders: a root and a division less for each.
            T rl = T.Load(left0 + i - 1), ul = T.Load(left1 + i - 1), pl = T.Load(left2 + i - 1), yl = T.Load(left3 + i - 1), cl = T.Load(sound + i - 1);
            T rr = T.Load(right0 + i), ur = T.Load(right1 + i), pr = T.Load(right2 + i), yr = T.Load(right3 + i), cr = T.Load(sound + i);
            Hllc<T>.Flow(rl, ul, pl, yl, cl, rr, ur, pr, yr, cr, perK, out var f0, out var f1, out var f2, out var f3);
            f0.Store(mass + i);
            f1.Store(momentum + i);
            f2.Store(energy + i);
            f3.Store(burnt + i);
        }
    }

    [MethodImpl(Whole)]
    public override StepSigns Update(PipeMemory m, in PipeNumbers n, double step)
    {
        int now = m.Now, then = m.Then;
        double* old0 = m[now], old1 = m[now + 1], old2 = m[now + 2], old3 = m[now + 3];
        double* new0 = m[then], new1 = m[then + 1], new2 = m[then + 2], new3 = m[then + 3];
        double* first0 = m[PipeMemory.FirstEdge], first1 = m[PipeMemory.FirstEdge + 1], first2 = m[PipeMemory.FirstEdge + 2];
        double* last0 = m[PipeMemory.LastEdge], last1 = m[PipeMemory.LastEdge + 1], last2 = m[PipeMemory.LastEdge + 2];
        double* mass = m[PipeMemory.Flow], momentum = m[PipeMemory.Flow + 1], energy = m[PipeMemory.Flow + 2], burntFlow = m[PipeMemory.Flow + 3];
        double* area = m[PipeMemory.FaceArea], inverseVolume = m[PipeMemory.InverseVolume], friction = m[PipeMemory.Friction], heat = m[PipeMemory.Heat];
        double* density = m[PipeMemory.Density], velocity = m[PipeMemory.Velocity], pressure = m[PipeMemory.Pressure], burnt = m[PipeMemory.Burnt], sound = m[PipeMemory.Sound];
        T dt = T.All(step), half = T.All(0.5), zero = T.All(0), one = T.All(1), k = T.All(n.K), kLess = T.All(n.K - 1), perK = T.All(n.K / (n.K - 1)), wallHeat = T.All(n.WallHeat);
        T fastest = zero, leastDensity = T.All(double.MaxValue), leastPressure = leastDensity;
        var cells = m.Cells;
        for (var i = 0; i < cells; i += T.Count)
        {
            T a = T.Load(area + i), b = T.Load(area + i + 1), scale = dt * T.Load(inverseVolume + i);
            T rm = half * (T.Load(first0 + i) + T.Load(last0 + i)), um = half * (T.Load(first1 + i) + T.Load(last1 + i)), pm = half * (T.Load(first2 + i) + T.Load(last2 + i));
            var speed = T.Abs(um);
            var drag = dt * T.Load(friction + i) * rm * speed * um;
            var warmth = dt * T.Load(heat + i) * speed * T.MultiplyAdd(wallHeat, rm, zero - perK * pm);

            var r = T.MultiplyAdd(scale, T.MultiplyAdd(a, T.Load(mass + i), zero - b * T.Load(mass + i + 1)), T.Load(old0 + i));
            // The wall's push on a tapering cell is taken out of both borders: still gas leaves exactly nothing.
            var push = T.MultiplyAdd(a, T.Load(momentum + i) - pm, zero - b * (T.Load(momentum + i + 1) - pm));
            var ru = T.MultiplyAdd(scale, push, T.Load(old1 + i) - drag);
            var e = T.MultiplyAdd(scale, T.MultiplyAdd(a, T.Load(energy + i), zero - b * T.Load(energy + i + 1)), T.Load(old2 + i) + warmth);
            var ry = T.MultiplyAdd(scale, T.MultiplyAdd(a, T.Load(burntFlow + i), zero - b * T.Load(burntFlow + i + 1)), T.Load(old3 + i));
            r.Store(new0 + i);
            ru.Store(new1 + i);
            e.Store(new2 + i);
            ry.Store(new3 + i);

            var inverse = one / r;
            var u = ru * inverse;
            var p = kLess * (e - half * ru * u);
            var c = T.Sqrt(k * p * inverse);
            r.Store(density + i);
            u.Store(velocity + i);
            p.Store(pressure + i);
            (ry * inverse).Store(burnt + i);
            c.Store(sound + i);
            fastest = T.Max(fastest, T.Abs(u) + c);
            leastDensity = T.Min(leastDensity, r);
            leastPressure = T.Min(leastPressure, p);
        }

        return new(fastest.Greatest(), leastDensity.Least(), leastPressure.Least());
    }

    [MethodImpl(Whole)]
    public override void Wall(PipeMemory m, in PipeNumbers n)
    {
        double* density = m[PipeMemory.Density], velocity = m[PipeMemory.Velocity], pressure = m[PipeMemory.Pressure];
        double* diameter = m[PipeMemory.Diameter], half = m[PipeMemory.HalfPerDiameter], rough = m[PipeMemory.RoughnessTerm], bend = m[PipeMemory.Bend];
        double* friction = m[PipeMemory.Friction], heat = m[PipeMemory.Heat];
        T perR = T.All(1 / n.R), perFriction = T.All(n.HeatPerFriction);
        var cells = m.Cells;
        for (var i = 0; i < cells; i += T.Count)
        {
            var r = T.Load(density + i);
            var factor = WallFriction<T>.Factor(r, T.Abs(T.Load(velocity + i)), T.Load(pressure + i) / r * perR, T.Load(diameter + i), T.Load(rough + i));
            var wall = factor * T.Load(half + i);
            (wall + T.Load(bend + i)).Store(friction + i);
            (wall * perFriction).Store(heat + i);
        }
    }

    /// <summary>Van Leer's harmonic mean of the two differences, zero where they disagree in sign.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Slope(T before, T here, T after)
    {
        T a = here - before, b = after - here;
        var product = a * b;
        var twice = T.Max(product + product, T.All(0));
        return twice / T.Choose(product, a + b, T.All(1));
    }
}
