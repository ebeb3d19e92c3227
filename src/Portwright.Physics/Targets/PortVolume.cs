namespace Portwright.Physics.Targets;

/// <summary>Volume of a port from two sections and its length, before there is a port to pour full.</summary>
public static class PortVolume
{
    public static readonly TargetRule Rule = new(
        "Port volume", TargetBasis.WorkedOut, "frustum, plain geometry, worked out here",
        "One even taper between the two sections, without guide boss, bowl or stem. Sections measured along the port give the volume with its doubt.");

    /// <summary>L/3 (A1 + A2 + sqrt(A1 A2)), m3.</summary>
    /// <param name="flangeArea">m2, above zero.</param>
    /// <param name="throatArea">m2, above zero.</param>
    /// <param name="length">Along the centreline from flange to throat, m, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double Frustum(double flangeArea, double throatArea, double length)
    {
        Require.Positive(flangeArea, nameof(flangeArea), "m2");
        Require.Positive(throatArea, nameof(throatArea), "m2");
        return Require.Positive(length, nameof(length), "m") / 3 * (flangeArea + throatArea + Math.Sqrt(flangeArea * throatArea));
    }

    /// <summary>Flange section that gives a volume with a known throat and length, m2; the inverse of <see cref="Frustum"/>.</summary>
    /// <param name="volume">m3, more than a cone from the throat to a point holds.</param>
    /// <param name="throatArea">m2, above zero.</param>
    /// <param name="length">m, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double FlangeFor(double volume, double throatArea, double length)
    {
        Require.Positive(throatArea, nameof(throatArea), "m2");
        Require.Positive(length, nameof(length), "m");
        // In s = sqrt(A1): s^2 + s sqrt(A2) + A2 - 3V/L = 0.
        var rest = 3 * volume / length - throatArea;
        if (!(rest > 0) || double.IsInfinity(rest)) Require.Refuse(volume, nameof(volume), "more than throat x length/3, in m3");
        var t = Math.Sqrt(throatArea);
        var s = 2 * rest / (t + Math.Sqrt(throatArea + 4 * rest));
        return s * s;
    }
}
