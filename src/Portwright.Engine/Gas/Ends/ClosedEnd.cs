using System.Runtime.CompilerServices;

namespace Portwright.Engine.Gas.Ends;

/// <summary>A wall across the pipe: nothing passes, the gas that runs against it is stopped by a wave.</summary>
internal static class ClosedEnd
{
    /// <summary>Pressure on the wall, Pa: exact for the shock or fan that stops gas of the given state; velocity counted towards the wall.</summary>
    /// <remarks>Toro (2009), equations 4.6 and 4.7 solved for the pressure at which the velocity becomes zero.</remarks>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Pressure(double density, double velocity, double pressure, double k)
    {
        if (velocity > 0)
        {
            // rise^2 = velocity^2 density ((k+1) rise/2 + k pressure), a square in the rise.
            var half = (k + 1) / 4 * density * velocity * velocity;
            return pressure + half + Math.Sqrt(half * half + k * pressure * density * velocity * velocity);
        }

        var left = 1 + (k - 1) / 2 * velocity / Math.Sqrt(k * pressure / density);
        // Gas that leaves the wall faster than it can follow leaves a vacuum there.
        return left > 0 ? pressure * Math.Pow(left, 2 * k / (k - 1)) : 0;
    }
}
