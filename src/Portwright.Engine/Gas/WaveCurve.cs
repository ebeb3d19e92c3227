using System.Runtime.CompilerServices;
using Portwright.Engine.Gas.Lanes;

namespace Portwright.Engine.Gas;

/// <summary>What one pressure wave makes of the gas it runs into: a shock where the pressure rises, a fan of expansion where it falls.</summary>
/// <remarks>
/// Source: E. F. Toro, Riemann Solvers and Numerical Methods for Fluid Dynamics (3rd ed., 2009), section 4.2: equations 4.6 and 4.7 (change of
/// velocity), 4.19 and 4.23 (density behind). Pressures above zero.
/// </remarks>
internal static class WaveCurve<T>
    where T : struct, ILanes<T>
{
    /// <summary>Change of velocity over the wave (m/s, above zero for a shock) and density behind it, when the pressure becomes <paramref name="behind"/>.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static (T Change, T Density) Across(T density, T pressure, T sound, T k, T behind)
    {
        var (change, after, _) = Along(density, pressure, sound, k, behind);
        return (change, after);
    }

    /// <summary>The same, and the logarithm of the pressure's ratio, which it needs anyway.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static (T Change, T Density, T LogRatio) Along(T density, T pressure, T sound, T k, T behind)
    {
        var one = T.All(1);
        var kLess = k - one;
        var kMore = k + one;
        var rise = behind - pressure;

        // Shock.
        var share = kLess / kMore;
        var shock = rise * T.Sqrt((one + one) / (kMore * density * T.MultiplyAdd(share, pressure, behind)));
        var shocked = density * T.MultiplyAdd(share, pressure, behind) / T.MultiplyAdd(share, behind, pressure);

        // Fan: isentropic.
        var logRatio = T.Log(behind / pressure);
        var fan = sound * (one + one) / kLess * (T.Exp(T.All(0.5) * kLess / k * logRatio) - one);
        var fanned = density * T.Exp(logRatio / k);

        return (T.Choose(rise, shock, fan), T.Choose(rise, shocked, fanned), logRatio);
    }
}
