using System.Runtime.CompilerServices;
using Portwright.Engine.Gas.Lanes;

namespace Portwright.Engine.Gas;

/// <summary>Darcy friction factor of a pipe's wall.</summary>
/// <remarks>
/// Turbulent: S. E. Haaland, J. Fluids Eng. 105 (1983) 89-90: 1/sqrt(f) = -1.8 log10((e/3.7D)^1.11 + 6.9/Re), within 2 percent of Colebrook and White.
/// Slow: 64/Re, where that is the larger: the flow in an engine's pipes stops and turns too often to stay laminar past the crossing near Re = 1,100.
/// Viscosity by Sutherland's formula (U.S. Standard Atmosphere 1976, equation 51, as Portwright.Physics states it).
/// </remarks>
internal static class WallFriction<T>
    where T : struct, ILanes<T>
{
    /// <summary>Below this Reynolds number the factor stays: still gas has none.</summary>
    private const double LeastReynolds = 1;

    /// <summary>Haaland's roughness term (e/3.7D)^1.11.</summary>
    public static double RoughnessTerm(double roughness, double diameter) => Math.Pow(roughness / (3.7 * diameter), 1.11);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Factor(T density, T speed, T temperature, T diameter, T roughnessTerm)
    {
        var viscosity = T.All(1.458e-6) * temperature * T.Sqrt(temperature) / (temperature + T.All(110.4));
        var reynolds = T.Max(density * speed * diameter / viscosity, T.All(LeastReynolds));
        var root = T.All(-1.8 / Math.Log(10)) * T.Log(roughnessTerm + T.All(6.9) / reynolds);
        // Haaland's curve has a pole at Re = 6.9; 64/Re is the larger long before.
        root = T.Max(root, T.All(0.5));
        return T.Max(T.All(64) / reynolds, T.All(1) / (root * root));
    }
}
