namespace Portwright.Physics.Rings;

/// <summary>The power-law profile of a developed turbulent pipe, u = u_axis (1 - r/R)^(1/n) (H. Schlichting, Boundary-Layer Theory, chapter XX).</summary>
public static class PipeProfile
{
    /// <summary>The usual exponent near a Reynolds number of 1e5, no unit.</summary>
    public const double SeventhPower = 7;

    /// <summary>Mean over axis speed: 2 n^2 / ((n + 1)(2 n + 1)). No unit.</summary>
    /// <param name="n">Above zero, no unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double MeanOverAxis(double n)
    {
        Require.Positive(n, nameof(n), "(no unit)");
        return 2 * n * n / ((n + 1) * (2 * n + 1));
    }
}
