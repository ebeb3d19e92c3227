using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace Portwright.Physics.Rings;

/// <summary>Core speeds turned into speeds, a vector at a time.</summary>
internal static class RowOfSpeeds
{
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public static void Fill(Span<double> cores, ReadOnlySpan<double> signed, double exponent, double deepest, double lowestCore, double highestCore, double highestSpeed)
    {
        var rows = MemoryMarshal.Cast<double, Vector<double>>(cores);
        var distances = MemoryMarshal.Cast<double, Vector<double>>(signed);
        var (low, high, top) = (new Vector<double>(lowestCore), new Vector<double>(highestCore), new Vector<double>(highestSpeed));
        var (one, zero, nan) = (Vector<double>.One, Vector<double>.Zero, new Vector<double>(double.NaN));
        for (var i = 0; i < rows.Length; i++)
        {
            var inside = Vector.GreaterThanOrEqual(distances[i], zero);
            var depth = Vector.MinNative(distances[i] / deepest, one);
            // The logarithm of the wall itself is minus infinity and its exponential zero: no slip.
            var share = Vector.Exp(exponent * Vector.Log(Vector.Abs(depth)));
            var speed = Vector.MinNative(top, Vector.MinNative(high, Vector.MaxNative(low, rows[i])) * share);
            rows[i] = Vector.ConditionalSelect(inside, speed, nan);
        }
    }
}
