namespace Portwright.Physics.Targets;

/// <summary>The note of a vessel with a neck, Hz: a plenum with its pipe, or a cylinder with its runner.</summary>
/// <remarks>
/// L. E. Kinsler, A. R. Frey, A. B. Coppens, J. V. Sanders, Fundamentals of Acoustics (4th ed. 2000), ch. 10. Small waves, no flow, no losses. The length is the
/// acoustic one: end corrections (0.6133 r for a plain end, about 0.85 r for an end in a wall) are added by the caller.
/// </remarks>
public static class VesselResonance
{
    public static readonly TargetRule Rule = new(
        "Note of a plenum", TargetBasis.Published, "Kinsler, Frey, Coppens and Sanders, Fundamentals of Acoustics (4th ed. 2000), ch. 10",
        "Small waves in still air. With several runners open to it in turn, a plenum has more notes than this one.");

    /// <summary>The neck's air as one lump, Hz: a/(2 pi) sqrt(A/(V L)). Too high by a fortieth where the neck holds as little as a seventh of the vessel's air, more for longer necks.</summary>
    /// <param name="volume">m3, above zero.</param>
    /// <param name="neckArea">m2, above zero.</param>
    /// <param name="acousticLength">m, above zero, end corrections included.</param>
    /// <param name="speedOfSound">m/s, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double Lumped(double volume, double neckArea, double acousticLength, double speedOfSound)
    {
        Check(volume, neckArea, acousticLength, speedOfSound);
        return speedOfSound / (2 * Math.PI) * Math.Sqrt(neckArea / (volume * acousticLength));
    }

    /// <summary>The neck as a pipe with waves, Hz: the lowest root of tan(k L) = A/(k V), times a/(2 pi).</summary>
    /// <param name="volume">m3, above zero.</param>
    /// <param name="neckArea">m2, above zero.</param>
    /// <param name="acousticLength">m, above zero, end corrections included.</param>
    /// <param name="speedOfSound">m/s, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double WithPipe(double volume, double neckArea, double acousticLength, double speedOfSound)
    {
        Check(volume, neckArea, acousticLength, speedOfSound);
        // x tan x = share, with x = k L between 0 and pi/2; x sin x - share cos x is smooth and rises there.
        var share = neckArea * acousticLength / volume;
        var phase = Root.Between(x => (x * Math.Sin(x) - share * Math.Cos(x)) / (1 + share), 0, Math.PI / 2);
        return phase / acousticLength * speedOfSound / (2 * Math.PI);
    }

    private static void Check(double volume, double neckArea, double acousticLength, double speedOfSound)
    {
        Require.Positive(volume, nameof(volume), "m3");
        Require.Positive(neckArea, nameof(neckArea), "m2");
        Require.Positive(acousticLength, nameof(acousticLength), "m");
        Require.Positive(speedOfSound, nameof(speedOfSound), "m/s");
    }
}
