using System.Runtime.CompilerServices;
using Portwright.Engine.Gas.Lanes;

namespace Portwright.Engine.Gas.Ends;

/// <summary>Pipes that meet at one point, at one pressure: what flows in mixes, what flows out carries the mixture.</summary>
/// <remarks>
/// Constant-pressure junction: R. S. Benson (1982) vol. 1; D. E. Winterbone, R. J. Pearson, Theory of Engine Manifold Design (2000). Here with the exact
/// wave in each pipe and the mixture's total enthalpy in what flows out, so that mass, energy and burnt gas that go in come out. No stream leaves faster than sound.
/// </remarks>
internal static class Junction
{
    private const int MostTries = 60;

    /// <summary>One pipe at the junction.</summary>
    /// <param name="State">Gas at its end; velocity counted towards the junction.</param>
    public readonly record struct Branch(GasState State, double Area, double K);

    /// <summary>Finds the pressure of the junction and each pipe's flow, counted out of the pipe.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static double Solve(ReadOnlySpan<Branch> branches, Span<EndFlow> flows)
    {
        Span<Stream> streams = stackalloc Stream[branches.Length];
        double weight = 0, sum = 0, least = double.MaxValue, most = 0;
        foreach (var b in branches)
        {
            var sound = b.State.SoundSpeed(b.K);
            weight += b.Area / sound;
            sum += b.Area * (b.State.Pressure / sound + b.State.Density * b.State.Velocity);
            var closed = ClosedEnd.Pressure(b.State.Density, b.State.Velocity, b.State.Pressure, b.K);
            (least, most) = (Math.Min(least, closed), Math.Max(most, closed));
        }

        // A loop of its own, not Root: each try works out every pipe at once into memory of the caller's, at every step of a run.
        // Between the least and the most closed-end pressure: at the least all pipes give, at the most all take.
        double low = Math.Max(least, 1e-6 * most), high = most, p = Math.Clamp(sum / weight, low, high);
        var mixture = Meet(branches, p, streams);
        double before = double.NaN, excessBefore = 0;
        for (var i = 0; i < MostTries && high > low && Math.Abs(mixture.Excess) > 1e-15 * weight * p; i++)
        {
            if (mixture.Excess > 0) low = p;
            else high = p;
            var next = double.IsNaN(before) ? p + mixture.Excess / weight : p - mixture.Excess * (p - before) / (mixture.Excess - excessBefore);
            if (!(next > low && next < high)) next = 0.5 * (low + high);
            if (next == p) break;
            (before, excessBefore, p) = (p, mixture.Excess, next);
            mixture = Meet(branches, p, streams);
        }

        // What the search left over is shared out among those that leave, so that nothing is made or lost.
        var outflow = mixture.Inflow - mixture.Excess;
        var scale = outflow > 0 && mixture.Inflow > 0 ? mixture.Inflow / outflow : 0;
        for (var i = 0; i < branches.Length; i++)
        {
            var (mass, velocity, enthalpy) = streams[i];
            var flux = mass / branches[i].Area * (velocity > 0 && scale > 0 ? 1 : scale);
            flows[i] = new(flux, p + flux * velocity, flux * enthalpy, flux * (velocity > 0 ? branches[i].State.Burnt : mixture.Burnt));
        }

        return p;
    }

    /// <summary>Every pipe's flow at a pressure of the junction, and the mixture of what flows in.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static Mixture Meet(ReadOnlySpan<Branch> branches, double p, Span<Stream> streams)
    {
        double inflow = 0, enthalpy = 0, burnt = 0;
        for (var i = 0; i < branches.Length; i++)
        {
            var b = branches[i];
            var (change, density) = WaveCurve<OneLane>.Across(b.State.Density, b.State.Pressure, b.State.SoundSpeed(b.K), b.K, p);
            double u = b.State.Velocity - change, mass = b.Area * density * u, total = b.K / (b.K - 1) * p / density + 0.5 * u * u;
            streams[i] = new(mass, u, total);
            if (!(u > 0)) continue;
            inflow += mass;
            enthalpy += mass * total;
            burnt += mass * b.State.Burnt;
        }

        if (!(inflow > 0)) return new(-p * streams.Length, 0, 0);
        (enthalpy, burnt) = (enthalpy / inflow, burnt / inflow);
        var excess = inflow;
        for (var i = 0; i < branches.Length; i++)
        {
            var u = streams[i].Velocity;
            if (u > 0) continue;
            var b = branches[i];
            u = Math.Max(u, -Math.Sqrt(2 * (b.K - 1) / (b.K + 1) * enthalpy));
            var density = b.K / (b.K - 1) * p / (enthalpy - 0.5 * u * u);
            streams[i] = new(b.Area * density * u, u, enthalpy);
            excess += b.Area * density * u;
        }

        return new(excess, inflow, burnt);
    }

    private readonly record struct Stream(double Mass, double Velocity, double Enthalpy);

    private readonly record struct Mixture(double Excess, double Inflow, double Burnt);
}
