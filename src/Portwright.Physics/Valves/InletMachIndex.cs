namespace Portwright.Physics.Valves;

/// <summary>Taylor's inlet-valve Mach index: how near to the speed of sound the air is driven through the valve, on the mean.</summary>
/// <remarks>
/// Z = A_p s / (C_i A_i a): piston area times mean piston speed over mean effective area of the open inlet valve times the speed of sound.
/// C. F. Taylor, The Internal Combustion Engine in Theory and Practice, vol. 1, ch. 6; J. C. Livengood and J. D. Stanitz, NACA TN 915 (1943); both from memory.
/// Where volumetric efficiency begins to fall: <see cref="Targets.NamedLimits.InletMachKnee"/>; the Japan Society of Mechanical Engineers' dictionary (entry 11-1002813, opened) has the same Z and the lower of its two figures.
/// </remarks>
public static class InletMachIndex
{
    /// <summary>Standard uncertainty of the speed of sound in the engine's intake against that of the plan's air, relative: air 20 K warmer or cooler; judgement, no source. No unit.</summary>
    public const double SoundDoubt = 0.03;

    /// <summary>Name of that cause of doubt: shared by every figure that rests on it.</summary>
    public const string SoundSource = "speed of sound in the engine's intake";

    /// <summary>Mean piston speed, m/s: 2 stroke n.</summary>
    /// <param name="stroke">m, above zero.</param>
    /// <param name="revolutionsASecond">1/s, zero or above.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double MeanPistonSpeed(double stroke, double revolutionsASecond) =>
        2 * Require.Positive(stroke, nameof(stroke), "m") * Require.NotNegative(revolutionsASecond, nameof(revolutionsASecond), "1/s");

    /// <summary>The index Z, no unit.</summary>
    /// <param name="bore">m, above zero.</param>
    /// <param name="stroke">m, above zero.</param>
    /// <param name="revolutionsASecond">1/s, zero or above.</param>
    /// <param name="meanEffectiveArea">Of all inlet valves of the cylinder over their lift, m2, above zero.</param>
    /// <param name="speedOfSound">m/s, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double Of(double bore, double stroke, double revolutionsASecond, double meanEffectiveArea, double speedOfSound)
    {
        Require.Positive(bore, nameof(bore), "m");
        Require.Positive(meanEffectiveArea, nameof(meanEffectiveArea), "m2");
        Require.Positive(speedOfSound, nameof(speedOfSound), "m/s");
        return Math.PI / 4 * bore * bore * MeanPistonSpeed(stroke, revolutionsASecond) / (meanEffectiveArea * speedOfSound);
    }
}
