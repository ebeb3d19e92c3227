using System.Runtime.CompilerServices;
using Portwright.Engine.Gas.Lanes;

namespace Portwright.Engine.Gas.Ends;

/// <summary>Pipes that meet at one point, at one pressure: what flows in mixes, what flows out carries the mixture.</summary>
/// <remarks>
/// Constant-pressure junction: R. S. Benson (1982) vol. 1; D. E. Winterbone, R. J. Pearson, Theory of Engine Manifold Design (2000). Here with the exact
/// wave in each pipe and the mixture's total enthalpy in what flows out, so that mass, energy and burnt gas that go in come out.
/// <para>With a collector, the first pipe, the jets of those that feed it keep their speed along its axis until they have mixed: the momentum over its mouth is p + G U before and
/// p_c + G u after, G the mass flow a unit of its section, U the feeding pipes' speed along its axis weighted by mass. For one pipe that is the sudden enlargement of Borda and Carnot
/// (R. D. Zucker, O. Biblarz, Fundamentals of Gas Dynamics, 2nd ed. 2002, from memory). Where the collector feeds, all pressures are one.</para>
/// </remarks>
internal static class Junction
{
    private const int MostTries = 60;

    /// <summary>One pipe at the junction.</summary>
    /// <param name="State">Gas at its end; velocity counted towards the junction.</param>
    public readonly record struct Branch(GasState State, double Area, double K);

    /// <summary>Finds the pressure of the junction and each pipe's flow, counted out of the pipe.</summary>
    /// <param name="along">Cosine of the angle between the other pipes and the first, which collects; NaN where none does.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static double Solve(ReadOnlySpan<Branch> branches, Span<EndFlow> flows, double along = double.NaN)
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

        // Between the least and the most closed-end pressure: at the least all pipes give, at the most all take.
        double low = Math.Max(least, 1e-6 * most), high = most, p = Math.Clamp(sum / weight, low, high);
        var mixture = Meet(branches, p, along, streams);
        double before = double.NaN, excessBefore = 0;
        for (var i = 0; i < MostTries && high > low && Math.Abs(mixture.Excess) > 1e-15 * weight * p; i++)
        {
            if (mixture.Excess > 0) low = p;
            else high = p;
            var next = double.IsNaN(before) ? p + mixture.Excess / weight : p - mixture.Excess * (p - before) / (mixture.Excess - excessBefore);
            if (!(next > low && next < high)) next = 0.5 * (low + high);
            if (next == p) break;
            (before, excessBefore, p) = (p, mixture.Excess, next);
            mixture = Meet(branches, p, along, streams);
        }

        // What the search left over is shared out among those that leave, so that nothing is made or lost.
        var outflow = mixture.Inflow - mixture.Excess;
        var scale = outflow > 0 && mixture.Inflow > 0 ? mixture.Inflow / outflow : 0;
        for (var i = 0; i < branches.Length; i++)
        {
            var (mass, velocity, enthalpy, pressure) = streams[i];
            var flux = mass / branches[i].Area * (velocity > 0 && scale > 0 ? 1 : scale);
            flows[i] = new(flux, pressure + flux * velocity, flux * enthalpy, flux * (velocity > 0 ? branches[i].State.Burnt : mixture.Burnt));
        }

        return p;
    }

    /// <summary>Every pipe's flow at a pressure of the junction, and the mixture of what flows in.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static Mixture Meet(ReadOnlySpan<Branch> branches, double p, double along, Span<Stream> streams)
    {
        double inflow = 0, enthalpy = 0, burnt = 0, momentum = 0;
        for (var i = 0; i < branches.Length; i++)
        {
            var b = branches[i];
            var (change, density) = WaveCurve<OneLane>.Across(b.State.Density, b.State.Pressure, b.State.SoundSpeed(b.K), b.K, p);
            double u = b.State.Velocity - change, mass = b.Area * density * u, total = b.K / (b.K - 1) * p / density + 0.5 * u * u;
            streams[i] = new(mass, u, total, p);
            if (!(u > 0)) continue;
            inflow += mass;
            enthalpy += mass * total;
            burnt += mass * b.State.Burnt;
            momentum += mass * u;
        }

        if (!(inflow > 0)) return new(-p * streams.Length, 0, 0);
        (enthalpy, burnt) = (enthalpy / inflow, burnt / inflow);
        var excess = inflow;
        for (var i = 0; i < branches.Length; i++)
        {
            var u = streams[i].Velocity;
            if (u > 0) continue;
            var b = branches[i];
            streams[i] = i == 0 && !double.IsNaN(along) ? Collected(b, p, enthalpy, along * momentum / inflow) : Leaving(b, p, u, enthalpy);
            excess += streams[i].Mass;
        }

        return new(excess, inflow, burnt);
    }

    private static Stream Leaving(in Branch b, double p, double u, double enthalpy) =>
        new(b.Area * u * (b.K / (b.K - 1) * p / Math.Max(enthalpy - 0.5 * u * u, 0.35 * enthalpy)), u, enthalpy, p);

    /// <summary>The stream into the collector, whose own pressure follows from the momentum over its mouth.</summary>
    /// <param name="feeding">Speed along its axis of what feeds it, m/s.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static Stream Collected(in Branch b, double p, double enthalpy, double feeding)
    {
        Stream At(in Branch of, double pressure)
        {
            var (change, _) = WaveCurve<OneLane>.Across(of.State.Density, of.State.Pressure, of.State.SoundSpeed(of.K), of.K, pressure);
            return Leaving(of, pressure, Math.Min(0, of.State.Velocity - change), enthalpy);
        }

        double Miss(in Branch of, in Stream s) => s.Pressure - p + s.Mass / of.Area * (feeding + s.Velocity);

        // Its pressure rises with what it takes: the secant needs two or three rounds.
        var before = At(b, p);
        double missBefore = Miss(b, before), slope = 1 + Math.Abs(feeding + 2 * before.Velocity) / b.State.SoundSpeed(b.K);
        var now = At(b, Math.Max(0.2 * p, p - missBefore / slope));
        for (var i = 0; i < 6; i++)
        {
            var miss = Miss(b, now);
            if (Math.Abs(miss) < 1e-10 * p || now.Pressure == before.Pressure || miss == missBefore) break;
            var next = Math.Max(0.2 * p, now.Pressure - miss * (now.Pressure - before.Pressure) / (miss - missBefore));
            (before, missBefore) = (now, miss);
            now = At(b, next);
        }

        return now;
    }

    /// <param name="Pressure">At the pipe's end, Pa.</param>
    private readonly record struct Stream(double Mass, double Velocity, double Enthalpy, double Pressure);

    private readonly record struct Mixture(double Excess, double Inflow, double Burnt);
}
