using System.Runtime.CompilerServices;
using Portwright.Engine.Gas.Lanes;

namespace Portwright.Engine.Gas.Ends;

/// <summary>Inputs and results of all openings, one row a quantity, so that several are solved side by side.</summary>
internal sealed unsafe class OpeningRows
{
    public const int Density = 0, Velocity = 1, Pressure = 2, K = 3, RestPressure = 4, RestDensity = 5, ShareIn = 6, ShareOut = 7, Mass = 8, Momentum = 9, Energy = 10;

    private readonly double* _first;
    private readonly int _stride;

    public OpeningRows(int count)
    {
        Count = count;
        _stride = (count + 7) / 8 * 8;
        Owner = GC.AllocateArray<double>(11 * _stride + 8, pinned: true);
        fixed (double* start = Owner)
        {
            _first = (double*)(((nint)start + 63) & ~(nint)63);
        }

        for (var row = 0; row <= ShareOut; row++)
            new Span<double>(this[row], _stride).Fill(row switch { Velocity => 0, K => 1.4, _ => 1 });
    }

    public int Count { get; }

    public double[] Owner { get; }

    public double* this[int row] => _first + row * _stride;
}

/// <summary>The quasi-steady opening between a pipe's end and gas at rest, in either direction, solved until the wave's height moves by less than 1e-9 of itself (the secant's next error is far smaller).</summary>
/// <remarks>
/// <para>Between the pipe's gas and its end runs one pressure wave (<see cref="WaveCurve{T}"/>). Into the pipe: the reservoir's gas expands without loss to
/// the pressure at the pipe's end, or to the speed of sound, in the effective area; the jet spreads over the pipe's section at that pressure and keeps
/// its total enthalpy. Out of the pipe: the gas at the end, brought to rest without loss, expands to the reservoir's pressure or to the speed of sound
/// in the effective area. Source: R. S. Benson, The Thermodynamics and Gas Dynamics of Internal-Combustion Engines, vol. 1 (1982); D. E. Winterbone,
/// R. J. Pearson, Theory of Engine Manifold Design (2000): constant-pressure valve model. Nozzle: <see cref="Physics.TestPiece.Nozzle"/> states it.</para>
/// <para>Unknown is the pressure at the end, between that of a closed end and that of the reservoir (or the sonic one), where the balance of mass
/// squared changes sign; the secant is kept inside that bracket. A stream into the pipe is at most sonic at the end. With the pipe's full section the same equations give the free open end, also sonic.</para>
/// </remarks>
internal static unsafe class Openings<T>
    where T : struct, ILanes<T>
{
    private const int MostTries = 30;

    /// <summary>A move of this share of the wave's height is the last.</summary>
    private const double Enough = 1e-9;

    /// <summary>An opening smaller than this share of the pipe's section is shut.</summary>
    private const double Shut = 1e-9;

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public static void Solve(OpeningRows rows)
    {
        T zero = T.All(0), one = T.All(1), two = T.All(2), half = T.All(0.5), tiny = T.All(1e-300);
        for (var i = 0; i < rows.Count; i += T.Count)
        {
            T density = T.Load(rows[OpeningRows.Density] + i), velocity = T.Load(rows[OpeningRows.Velocity] + i), pressure = T.Load(rows[OpeningRows.Pressure] + i);
            T k = T.Load(rows[OpeningRows.K] + i), restPressure = T.Load(rows[OpeningRows.RestPressure] + i), restDensity = T.Load(rows[OpeningRows.RestDensity] + i);
            T sound = T.Sqrt(k * pressure / density), kLess = k - one, kMore = k + one;

            // The pressure of a closed end says which way the gas goes.
            var push = T.All(0.25) * kMore * density * velocity * velocity;
            var stopped = pressure + push + T.Sqrt(push * push + k * pressure * density * velocity * velocity);
            var emptied = pressure * T.Exp(two * k / kLess * T.Log(T.Max(one + half * kLess * velocity / sound, T.All(1e-6))));
            var closed = T.Choose(velocity, stopped, emptied);
            var outward = closed - restPressure;
            var share = T.Choose(outward, T.Load(rows[OpeningRows.ShareOut] + i), T.Load(rows[OpeningRows.ShareIn] + i));
            share = T.Choose(share - T.All(Shut), share, zero);

            // Outwards the end is never below its sonic pressure; where the pipe runs supersonic, behind a standing shock.
            var mach = velocity / sound;
            var sonicRatio = T.Max(two / kMore + kLess / kMore * mach, tiny);
            var sonic = pressure * T.Exp(two * k / kLess * T.Log(sonicRatio));
            var standing = pressure * (one + two * k / kMore * (mach * mach - one));
            var lowest = T.Max(restPressure, T.Choose(mach - one, standing, sonic));
            var span = T.Max(T.Choose(outward, closed - lowest, restPressure - closed), zero);
            var sign = T.Choose(outward, zero - one, one);

            // First guess: a small wave through an orifice; inwards not more than a sonic one passes (about 0.47 of its pressure, near enough for any gas).
            // Outwards through the whole section this is the answer: the reservoir's pressure, or the sonic one, where the balance only touches zero.
            var drop = T.Abs(outward);
            var a = two * share * share * T.Choose(outward, density, restDensity);
            var b = T.Choose(outward, one - share * share, one) / (sound * sound);
            var x = T.Min(two * a * drop / (a + T.Sqrt(a * a + T.All(4) * a * b * drop) + tiny), span);
            x = T.Choose(outward, x, T.Min(x, sound * share * T.Sqrt(T.All(0.47) * restPressure * restDensity)));
            var restHeat = restPressure / restDensity;
            var end = new End(density, velocity, pressure, sound, k, outward, share, restPressure, restHeat);
            var balance = end.Balance(T.MultiplyAdd(sign, x, closed), out _, out _, out _);
            // A loop of its own, not Root: the openings of several runs are solved at once, one a lane.
            T low = zero, high = span;
            var step = zero - balance / (a + two * b * x + tiny);
            for (var attempt = 0; attempt < MostTries; attempt++)
            {
                low = T.Choose(balance, low, x);
                high = T.Choose(balance, x, high);
                var next = x + step;
                // Outside its bracket the secant gives way to the middle.
                var inside = T.Min(next - low, high - next);
                next = T.Choose(inside, next, T.Choose(T.Abs(step) - T.All(1e-15) * span, half * (low + high), x));
                var moved = next - x;
                x = next;
                // The secant's next error is far smaller than its last move.
                if (T.Greatest(T.Abs(moved) - T.MultiplyAdd(T.All(Enough), x, T.All(2e-16) * closed)) <= 0) break;
                var after = end.Balance(T.MultiplyAdd(sign, x, closed), out _, out _, out _);
                var change = after - balance;
                step = T.Choose(T.Abs(change), zero - after * moved / T.Choose(T.Abs(change), change, one), zero);
                balance = after;
            }

            var p = T.MultiplyAdd(sign, x, closed);
            var left = end.Balance(p, out var r, out var u, out var totalHeat);
            // A supersonic stream that the opening takes whole swallows the shock.
            var swallowed = T.Choose(outward, T.Choose(mach - one, T.All(-1e-6) * (r * u) * (r * u) - left, zero), zero);
            r = T.Choose(swallowed, density, r);
            u = T.Choose(swallowed, velocity, u);
            p = T.Choose(swallowed, pressure, p);
            totalHeat = T.Choose(swallowed, k / kLess * pressure / density + half * velocity * velocity, totalHeat);
            // Into a pipe that runs away from the end faster than sound no wave comes back to say how fast: the jet is taken as sonic where it fills the pipe. What it does then, the pipe's cells work out.
            var afterHeat = two / kMore * restHeat;
            var afterSound = T.Sqrt(k * afterHeat);
            var runsAway = T.Choose(outward, zero, T.Max(zero - u - afterSound, zero));
            var afterDensity = share * restPressure / restHeat * T.Exp(one / kLess * T.Log(two / kMore));
            r = T.Choose(runsAway, afterDensity, r);
            u = T.Choose(runsAway, zero - afterSound, u);
            p = T.Choose(runsAway, afterDensity * afterHeat, p);

            var mass = T.Choose(share, r * u, zero);
            mass.Store(rows[OpeningRows.Mass] + i);
            T.MultiplyAdd(mass, u, p).Store(rows[OpeningRows.Momentum] + i);
            (mass * totalHeat).Store(rows[OpeningRows.Energy] + i);
        }
    }

    /// <summary>One end and what stands before it.</summary>
    private readonly struct End
    {
        private readonly T _density, _velocity, _pressure, _sound, _k, _outward, _share2, _restHeat, _logPressure, _logRest, _logCritical;

        public End(T density, T velocity, T pressure, T sound, T k, T outward, T share, T restPressure, T restHeat)
        {
            (_density, _velocity, _pressure, _sound, _k, _outward, _share2, _restHeat) = (density, velocity, pressure, sound, k, outward, share * share, restHeat);
            _logPressure = T.Log(pressure);
            _logRest = T.Log(restPressure);
            _logCritical = k / (k - T.All(1)) * T.Log(T.All(2) / (k + T.All(1)));
        }

        /// <summary>Squared mass flow of the pipe's wave less that of the opening, outwards; inwards the same. Rises from a closed end's pressure on.</summary>
        /// <remarks>Not put into its caller three times: the compiler would run out of its budget and call every single operator.</remarks>
        [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
        public T Balance(T p, out T r, out T u, out T totalHeat)
        {
            T one = T.All(1), two = T.All(2), half = T.All(0.5), perKLess = one / (_k - one), perK = _k * perKLess, inverseK = one / _k;
            var (change, behind, logRise) = WaveCurve<T>.Along(_density, _pressure, _sound, _k, p);
            u = _velocity - change;
            var kinetic = half * u * u;
            // Inwards the gas behind the end is the reservoir's; its speed is bounded at Mach 3 so that no temperature falls below zero.
            var spread = T.Max(_restHeat - kinetic / perK, T.All(0.35) * _restHeat);
            r = T.Choose(_outward, behind, p / spread);
            totalHeat = T.Choose(_outward, perK * p / behind + kinetic, perK * _restHeat);

            // All pressures by their logarithms: the end's, the total before the opening, and the ratio over it.
            var heat = totalHeat / perK;
            var logEnd = _logPressure + logRise;
            var logTotal = T.Choose(_outward, logEnd + perK * T.Log(heat * r / p), _logRest);
            var logRatio = T.Max(T.Min(T.Choose(_outward, _logRest, logEnd) - logTotal, T.All(0)), _logCritical);
            var nozzle = two * perK / heat * T.Exp(two * T.MultiplyAdd(logRatio, inverseK, logTotal)) * (one - T.Exp((one - inverseK) * logRatio));
            var mass = r * u;
            return mass * mass - _share2 * nozzle;
        }
    }
}
