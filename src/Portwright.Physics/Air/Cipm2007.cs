namespace Portwright.Physics.Air;

/// <summary>
/// Density of moist air by CIPM-2007, in full: with compressibility factor and enhancement factor, for a
/// carbon dioxide mole fraction of 0.0004.
/// </summary>
/// <remarks>
/// Source: A. Picard, R. S. Davis, M. Gläser, K. Fujii, "Revised formula for the density of moist air (CIPM-2007)",
/// Metrologia 45 (2008) 149-155, equations (1) to (5) and appendix A.
/// Range of the formula: 600 hPa to 1100 hPa and 15 to 27 degC (<see cref="InRange"/>). The functions compute past it,
/// where the relative standard uncertainty of the formula itself, 2.2e-5 inside, is no longer vouched for.
/// Temperatures are kelvin, pressures pascal absolute.
/// </remarks>
public static class Cipm2007
{
    /// <summary>Ma/R for x_CO2 = 0.0004, in kg K/J: equation (2), 3.483740e-3.</summary>
    private const double MassOverGasConstant = 3.483740e-3;

    /// <summary>1 - Mv/Ma, equation (2).</summary>
    private const double VapourDeficit = 0.3780;

    /// <summary>Ends of the range the formula is published for, Pa.</summary>
    public const double LowestPressure = 60_000, HighestPressure = 110_000;

    /// <summary>Ends of the range the formula is published for, K.</summary>
    public const double LowestTemperature = 288.15, HighestTemperature = 300.15;

    /// <summary>True while pressure (Pa) and temperature (K) are inside the range the formula is published for.</summary>
    /// <param name="pressure">Absolute, Pa, above zero; published for 60000 to 110000 Pa.</param>
    /// <param name="temperature">K; published for 288.15 to 300.15 K.</param>
    public static bool InRange(double pressure, double temperature) =>
        pressure is >= LowestPressure and <= HighestPressure && temperature is >= LowestTemperature and <= HighestTemperature;

    /// <summary>Saturation vapour pressure over water, Pa (appendix A1.1).</summary>
    /// <param name="temperature">K; published for 288.15 to 300.15 K.</param>
    public static double SaturationVapourPressure(double temperature) =>
        Math.Exp((1.2378847e-5 * temperature - 1.9121316e-2) * temperature + 33.93711047 - 6.3431645e3 / temperature);

    /// <summary>Enhancement factor f, the ratio of saturated vapour pressure in air to that over pure water (appendix A1.2), no unit.</summary>
    /// <param name="pressure">Absolute, Pa, above zero; published for 60000 to 110000 Pa.</param>
    /// <param name="temperature">K; published for 288.15 to 300.15 K.</param>
    public static double EnhancementFactor(double pressure, double temperature)
    {
        var t = temperature - 273.15;
        return 1.00062 + 3.14e-8 * pressure + 5.6e-7 * t * t;
    }

    /// <summary>Mole fraction of water vapour at the dew point <paramref name="dewPoint"/> (K).</summary>
    /// <param name="pressure">Absolute, Pa, above zero; published for 60000 to 110000 Pa.</param>
    /// <param name="dewPoint">K; published for 288.15 to 300.15 K.</param>
    public static double SaturatedVapourMoleFraction(double pressure, double dewPoint) =>
        EnhancementFactor(pressure, dewPoint) * SaturationVapourPressure(dewPoint) / pressure;

    /// <summary>Compressibility factor Z (appendix A1.4), no unit.</summary>
    /// <param name="pressure">Absolute, Pa, above zero; published for 60000 to 110000 Pa.</param>
    /// <param name="temperature">K; published for 288.15 to 300.15 K.</param>
    /// <param name="vapourMoleFraction">Fraction by mole of water vapour, 0 to below 1.</param>
    public static double Compressibility(double pressure, double temperature, double vapourMoleFraction)
    {
        var t = temperature - 273.15;
        var x = vapourMoleFraction;
        var pt = pressure / temperature;
        var first = 1.58123e-6 + (-2.9331e-8 + 1.1043e-10 * t) * t
            + (5.707e-6 - 2.051e-8 * t + (1.9898e-4 - 2.376e-6 * t) * x) * x;
        return 1 - pt * (first - pt * (1.83e-11 - 0.765e-8 * x * x));
    }

    /// <summary>Density, kg/m3 (equation 2).</summary>
    /// <param name="pressure">Absolute, Pa, above zero; published for 60000 to 110000 Pa.</param>
    /// <param name="temperature">K; published for 288.15 to 300.15 K.</param>
    /// <param name="vapourMoleFraction">Fraction by mole of water vapour, 0 to below 1.</param>
    public static double Density(double pressure, double temperature, double vapourMoleFraction) =>
        MassOverGasConstant * pressure / (Compressibility(pressure, temperature, vapourMoleFraction) * temperature)
        * (1 - VapourDeficit * vapourMoleFraction);
}
