namespace Portwright.Physics.Air;

/// <summary>The absolute pressure at the bench from a pressure that a weather report has reduced to sea level.</summary>
/// <remarks>
/// The altimeter setting relation of the standard atmosphere (lowest layer, U.S. Standard Atmosphere 1976, equation 33a; the one
/// aviation's QNH is made by): p^n = Q^n - p0^n L H / T0, with n = L R/g0 = 0.19026, p0 = 101325 Pa, T0 = 288.15 K, L = 0.0065 K/m.
/// It is exact for an altimeter setting. A report of "mean sea level pressure" was reduced with the air temperature of the
/// day instead and may differ by several hPa at high places on hot or cold days: a barometer at the bench is better.
/// </remarks>
public static class StationPressure
{
    private const double N = StandardAtmosphere.SeaLevelLapse / StandardAtmosphere.HydrostaticConstant;

    /// <param name="seaLevelPressure">Altimeter setting, 80000 to 110000 Pa.</param>
    /// <param name="elevation">Geometric height above sea level, -500 to 9000 m.</param>
    /// <returns>Station pressure, Pa absolute.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The pressure is not above zero, or the elevation is outside the range given.</exception>
    public static double FromSeaLevel(double seaLevelPressure, double elevation)
    {
        Check(seaLevelPressure, nameof(seaLevelPressure), elevation);
        return Math.Pow(Math.Pow(seaLevelPressure, N) - Lift(elevation), 1 / N);
    }

    /// <summary>The altimeter setting (Pa) that belongs to a station pressure (Pa): the other way round.</summary>
    /// <param name="stationPressure">Pa, above zero.</param>
    /// <param name="elevation">m, the height of the shop above the sea.</param>
    /// <exception cref="ArgumentOutOfRangeException">The pressure is not above zero, or the elevation is outside the range given.</exception>
    public static double ToSeaLevel(double stationPressure, double elevation)
    {
        Require.Positive(stationPressure, nameof(stationPressure), "Pa");
        Require.Between(elevation, -500, 9000, nameof(elevation), "m");
        return Math.Pow(Math.Pow(stationPressure, N) + Lift(elevation), 1 / N);
    }

    private static void Check(double pressure, string name, double elevation)
    {
        Require.Between(pressure, 80_000, 110_000, name, "Pa");
        Require.Between(elevation, -500, 9000, nameof(elevation), "m");
    }

    private static double Lift(double elevation) =>
        Math.Pow(StandardAtmosphere.SeaLevelPressure, N) * StandardAtmosphere.SeaLevelLapse
        * StandardAtmosphere.GeopotentialAltitude(elevation) / StandardAtmosphere.SeaLevelTemperature;
}
