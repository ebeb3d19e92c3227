namespace Portwright.Physics.TestPiece;

/// <summary>Steady isentropic flow of a perfect gas by Mach number.</summary>
/// <remarks>Source: NACA Report 1135 (1953), equations 43, 44, 45 and 80. Mach zero or above, k above 1.</remarks>
public static class IsentropicFlow
{
    /// <summary>T/T0 (equation 43), no unit.</summary>
    /// <param name="mach">Mach number, zero or above.</param>
    /// <param name="k">Heat-capacity ratio, above 1.</param>
    public static double TemperatureRatio(double mach, double k) => 1 / (1 + (k - 1) / 2 * mach * mach);

    /// <summary>p/p0 (equation 44), no unit.</summary>
    /// <param name="mach">Mach number, zero or above.</param>
    /// <param name="k">Heat-capacity ratio, above 1.</param>
    public static double PressureRatio(double mach, double k) => Math.Pow(TemperatureRatio(mach, k), k / (k - 1));

    /// <summary>rho/rho0 (equation 45), no unit.</summary>
    /// <param name="mach">Mach number, zero or above.</param>
    /// <param name="k">Heat-capacity ratio, above 1.</param>
    public static double DensityRatio(double mach, double k) => Math.Pow(TemperatureRatio(mach, k), 1 / (k - 1));

    /// <summary>A/A*, the section over the section that would be sonic (equation 80). Mach above zero. No unit.</summary>
    /// <param name="mach">Mach number, above zero.</param>
    /// <param name="k">Heat-capacity ratio, above 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The Mach number is not above zero.</exception>
    public static double AreaRatio(double mach, double k)
    {
        Require.Positive(mach, nameof(mach), "(no unit)");
        return Math.Pow(2 / (k + 1) * (1 + (k - 1) / 2 * mach * mach), (k + 1) / (2 * (k - 1))) / mach;
    }

    /// <summary>Mach number whose total pressure exceeds the static pressure by <paramref name="rise"/> = (p0 - p)/p, zero or above.</summary>
    /// <param name="rise">Ratio (p0 - p)/p, zero or above.</param>
    /// <param name="k">Heat-capacity ratio, above 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The rise is below zero.</exception>
    public static double MachFromPressureRise(double rise, double k)
    {
        Require.NotNegative(rise, nameof(rise), "(no unit)");
        return Math.Sqrt(2 / (k - 1) * NearZero.Expm1((k - 1) / k * NearZero.Log1p(rise)));
    }
}
