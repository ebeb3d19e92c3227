namespace Portwright.Geometry.Schedules;

/// <summary>
/// The volume of a port filled with liquid, restated to metal at 20 degC. Port, liquid and burette are taken to share one temperature.
/// </summary>
public static class BuretteVolume
{
    /// <summary>Temperature lengths and volumes are stated at, degC (ISO 1).</summary>
    public const double StandardTemperature = 20;

    /// <summary>Cubic expansion of borosilicate glass, 1/K: 3 x 3.3e-6, the linear one by Callister and Rethwisch, Fundamentals of Materials Science and Engineering (3rd ed.), table B.6.</summary>
    public const double Borosilicate = 9.9e-6;

    /// <summary>Cubic expansion of a polypropylene burette or syringe, 1/K: 3 x 1.5e-4; 1.46e-4 to 1.80e-4 by table B.6 of the same book.</summary>
    public const double Polypropylene = 4.5e-4;

    /// <summary>Linear expansion of cast aluminium, 1/K; aluminium and its alloys lie between 21.1e-6 and 24.7e-6 (Materials Selector, Reinhold, as given in a public table). Which of them a head is cast of is not asked; the choice is judgement.</summary>
    public const double CastAluminium = 22e-6;

    /// <summary>Linear expansion of grey cast iron, 1/K; public tables give 10.8e-6 and 11e-6. The spread, 10e-6 to 12e-6, from memory.</summary>
    public const double CastIron = 11e-6;

    /// <summary>
    /// From a reading, m3: V20 = V (1 + beta (t - 20)) / (1 + 3 alpha (t - 20)). The burette is marked for 20 degC, so warm it lets out more than it shows; the warm port holds more than it will at 20 degC.
    /// </summary>
    /// <remarks>The liquid's own expansion does not enter while it keeps its temperature: it does when a cold liquid warms in the port, 2e-4 of the volume for each kelvin of water.</remarks>
    /// <param name="reading">m3 read off the burette, above zero.</param>
    /// <param name="celsius">0 to 60 degC.</param>
    /// <param name="buretteExpansion">Cubic, 1/K.</param>
    /// <param name="metalExpansion">Linear, 1/K.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double FromReading(double reading, double celsius, double buretteExpansion, double metalExpansion)
    {
        Require.Positive(reading, nameof(reading), "m3");
        Require.Between(celsius, 0, 60, nameof(celsius), "degC");
        Require.NotNegative(buretteExpansion, nameof(buretteExpansion), "1/K");
        return reading * (1 + buretteExpansion * (celsius - StandardTemperature)) / MetalGrowth(celsius, metalExpansion);
    }

    /// <summary>
    /// From the balance, m3: V = m (1 - rho_air/rho_weights) / (rho_liquid - rho_air), then to metal at 20 degC. The buoyancy of air is 1.05 parts in a thousand with water (the equation of ISO 4787, from memory).
    /// </summary>
    /// <param name="mass">kg shown by the balance for the liquid alone, above zero.</param>
    /// <param name="liquidDensity">kg/m3 at the temperature of the filling: <see cref="WaterDensity"/> for water, the maker's figure for a solvent.</param>
    /// <param name="celsius">0 to 60 degC.</param>
    /// <param name="metalExpansion">Linear, 1/K.</param>
    /// <param name="airDensity">kg/m3.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double FromMass(double mass, double liquidDensity, double celsius, double metalExpansion, double airDensity = 1.2)
    {
        Require.Positive(mass, nameof(mass), "kg");
        Require.Between(liquidDensity, 500, 2000, nameof(liquidDensity), "kg/m3");
        Require.Between(celsius, 0, 60, nameof(celsius), "degC");
        Require.Between(airDensity, 0, 2, nameof(airDensity), "kg/m3");
        const double weights = 8000; // Conventional density of balance weights, kg/m3 (OIML D 28).
        return mass * (1 - airDensity / weights) / (liquidDensity - airDensity) / MetalGrowth(celsius, metalExpansion);
    }

    private static double MetalGrowth(double celsius, double metalExpansion)
    {
        Require.NotNegative(metalExpansion, nameof(metalExpansion), "1/K");
        return 1 + 3 * metalExpansion * (celsius - StandardTemperature);
    }
}
