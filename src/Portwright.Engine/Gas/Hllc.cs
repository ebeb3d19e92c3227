using System.Runtime.CompilerServices;
using Portwright.Engine.Gas.Lanes;

namespace Portwright.Engine.Gas;

/// <summary>Flow through the border of two gases by the HLLC approximation: two outer waves and the contact between them.</summary>
/// <remarks>
/// E. F. Toro, Riemann Solvers and Numerical Methods for Fluid Dynamics (3rd ed., 2009), section 10.4: contact speed equation 10.37, star states
/// 10.39, outer waves after Davis 10.48. Written without branches: the flow of the side that the contact leaves behind, moved through its outer wave
/// where that wave runs outwards. Gas at rest at one pressure gives exactly (0, p, 0).
/// </remarks>
internal static class Hllc<T>
    where T : struct, ILanes<T>
{
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Flow(
        T rl, T ul, T pl, T yl, T cl, T rr, T ur, T pr, T yr, T cr, T perK, out T mass, out T momentum, out T energy, out T burnt)
    {
        T zero = T.All(0), half = T.All(0.5);
        T back = T.Min(ul - cl, ur - cr), fore = T.Max(ul + cl, ur + cr);
        T ml = rl * (back - ul), mr = rr * (fore - ur);
        var contact = (pr - pl + T.LessProduct(ur, mr, ul * ml)) / (ml - mr);
        var s = T.Choose(contact, T.Min(back, zero), T.Max(fore, zero));
        T r = T.Choose(contact, rl, rr), u = T.Choose(contact, ul, ur), p = T.Choose(contact, pl, pr), y = T.Choose(contact, yl, yr);
        var t = s * (contact - u) / (s - contact);
        var through = u + t;
        mass = r * through;
        momentum = T.MultiplyAdd(r, T.MultiplyAdd(u, u, s * t), p);
        energy = T.MultiplyAdd(T.MultiplyAdd(half * r * u, u, perK * p), through, t * r * (s - u) * contact);
        burnt = y * mass;
    }
}
