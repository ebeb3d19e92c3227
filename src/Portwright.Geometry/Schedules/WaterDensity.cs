namespace Portwright.Geometry.Schedules;

/// <summary>Density of pure water without dissolved air at 101.325 kPa.</summary>
public static class WaterDensity
{
    /// <summary>
    /// kg/m3. M. Tanaka, G. Girard, R. Davis, A. Peuto, N. Bignell, Recommended table for the density of water between 0 degC and 40 degC based on recent
    /// experimental reports, Metrologia 38 (2001) 301-309: rho = a5 (1 - (t + a1)^2 (t + a2) / (a3 (t + a4))). Its own uncertainty is below 1e-6; tap water differs by up to 5e-4.
    /// </summary>
    /// <param name="celsius">0 to 40 degC.</param>
    /// <exception cref="ArgumentOutOfRangeException">The water is not at 0 to 40 degC.</exception>
    public static double At(double celsius)
    {
        Require.Between(celsius, 0, 40, nameof(celsius), "degC");
        const double a1 = -3.983035, a2 = 301.797, a3 = 522528.9, a4 = 69.34881, a5 = 999.974950;
        return a5 * (1 - (celsius + a1) * (celsius + a1) * (celsius + a2) / (a3 * (celsius + a4)));
    }
}
