namespace Portwright.Physics.Air;

/// <summary>The U.S. Standard Atmosphere 1976 from -5 to 86 km geometric altitude.</summary>
/// <remarks>
/// Source: U.S. Standard Atmosphere, 1976 (NOAA, NASA, USAF), equations 18 (geopotential altitude), 23 (temperature), 33a and 33b
/// (pressure), 42 (density), 50 (sound), 51 (viscosity) and table 4 (layers). Temperature is the molecular-scale temperature,
/// equal to the kinetic one to 80 km and within 0.05 percent to 86 km.
/// </remarks>
public static class StandardAtmosphere
{
    /// <summary>At sea level: pressure in Pa, temperature in K.</summary>
    public const double SeaLevelPressure = 101_325, SeaLevelTemperature = 288.15;

    /// <summary>Lapse of the lowest layer, in K/m (geopotential metres).</summary>
    public const double SeaLevelLapse = 0.0065;

    /// <summary>g0 M0 / R*, K a geopotential metre, with R* = 8314.32 J/(kmol K) and M0 = 28.9644 kg/kmol.</summary>
    internal const double HydrostaticConstant = 9.80665 * 28.9644 / 8314.32;

    private const double GasConstant = 8314.32 / 28.9644, EarthRadius = 6_356_766, HeatCapacityRatio = 1.4;

    private static readonly double[] Base = [0, 11_000, 20_000, 32_000, 47_000, 51_000, 71_000];
    private static readonly double[] Gradient = [-SeaLevelLapse, 0, 0.001, 0.0028, 0, -0.0028, -0.002];

    /// <summary>Geopotential altitude, m, of a geometric one, m.</summary>
    /// <param name="geometricAltitude">m, -5000 to 86000.</param>
    public static double GeopotentialAltitude(double geometricAltitude) => EarthRadius * geometricAltitude / (EarthRadius + geometricAltitude);

    /// <summary>The standard atmosphere at a geometric altitude of -5000 to 86000 m.</summary>
    /// <param name="geometricAltitude">m, -5000 to 86000.</param>
    /// <exception cref="ArgumentOutOfRangeException">The altitude is not -5000 to 86000 m.</exception>
    public static AtmosphereLevel At(double geometricAltitude)
    {
        Require.Between(geometricAltitude, -5000, 86_000, nameof(geometricAltitude), "m");
        var height = GeopotentialAltitude(geometricAltitude);
        double temperature = SeaLevelTemperature, pressure = SeaLevelPressure;
        for (var layer = 0; layer < Base.Length; layer++)
        {
            var top = layer + 1 < Base.Length ? Math.Min(height, Base[layer + 1]) : height;
            var rise = top - Base[layer];
            var next = temperature + Gradient[layer] * rise;
            pressure *= Gradient[layer] == 0
                ? Math.Exp(-HydrostaticConstant * rise / temperature)
                : Math.Pow(temperature / next, HydrostaticConstant / Gradient[layer]);
            temperature = next;
            if (height <= top) break;
        }
        return new(temperature, pressure, pressure / (GasConstant * temperature),
            Math.Sqrt(HeatCapacityRatio * GasConstant * temperature), Sutherland.Viscosity(temperature));
    }
}

/// <summary>One level of the standard atmosphere: K, Pa, kg/m3, m/s, Pa s.</summary>
/// <param name="Temperature">K.</param>
/// <param name="Pressure">Pa.</param>
/// <param name="Density">kg/m3.</param>
/// <param name="SpeedOfSound">m/s.</param>
/// <param name="DynamicViscosity">Pa s.</param>
public readonly record struct AtmosphereLevel(double Temperature, double Pressure, double Density, double SpeedOfSound, double DynamicViscosity);
