namespace Portwright.Physics.Air;

/// <summary>Moist air at rest: its absolute pressure, temperature and water vapour, with what follows from them.</summary>
/// <remarks>
/// Density by <see cref="Cipm2007"/>, heat-capacity ratio by <see cref="MoistAirHeat"/>, viscosity by <see cref="Sutherland"/>.
/// Pressure is the station pressure at the place of the test, never one reduced to sea level (see <see cref="StationPressure"/>).
/// Valid: pressure above 0 to 1 MPa, temperature 200 to 1000 K; the density formula is published for less
/// (<see cref="InCipmRange"/>). A state is made without allocation; <see cref="At"/> needs no exponential.
/// The default value is not a state of air.
/// </remarks>
public readonly record struct AirState
{
    /// <param name="pressure">Absolute, above 0 to 1000000 Pa.</param>
    /// <param name="temperature">200 to 1000 K.</param>
    /// <param name="vapourMoleFraction">Fraction by mole of water vapour, 0 to below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Pressure not in 0 to 1 MPa, temperature not in 200 to 1000 K, or vapour mole fraction not in 0 to 1.</exception>
    public AirState(double pressure, double temperature, double vapourMoleFraction)
    {
        if (!(pressure > 0 && pressure <= 1e6)) Require.Refuse(pressure, nameof(pressure), "an absolute pressure above 0 and up to 1000000 Pa");
        if (!(temperature >= 200 && temperature <= 1000)) Require.Refuse(temperature, nameof(temperature), "200 to 1000 K");
        if (!(vapourMoleFraction >= 0 && vapourMoleFraction < 1)) Require.Refuse(vapourMoleFraction, nameof(vapourMoleFraction), "0 or above and below 1");
        Pressure = pressure;
        Temperature = temperature;
        VapourMoleFraction = vapourMoleFraction;
        Density = Cipm2007.Density(pressure, temperature, vapourMoleFraction);
        HeatCapacityRatio = MoistAirHeat.HeatCapacityRatio(temperature, vapourMoleFraction);
    }

    /// <summary>Absolute pressure, Pa.</summary>
    public double Pressure { get; }

    /// <summary>Temperature, K.</summary>
    public double Temperature { get; }

    /// <summary>Moles of water vapour over all moles, no unit.</summary>
    public double VapourMoleFraction { get; }

    /// <summary>kg/m3.</summary>
    public double Density { get; }

    /// <summary>Share by mass of dry air, the rest vapour: molar masses 28.96546 and 18.01528 g/mol (CIPM-2007).</summary>
    public double DryMassFraction => (1 - VapourMoleFraction) * 28.96546 / ((1 - VapourMoleFraction) * 28.96546 + VapourMoleFraction * 18.01528);

    /// <summary>cp/cv, no unit.</summary>
    public double HeatCapacityRatio { get; }

    /// <summary>Effective gas constant p/(rho T), J/(kg K): it carries vapour and compressibility at this state.</summary>
    public double GasConstant => Pressure / (Density * Temperature);

    /// <summary>m/s: sqrt(k p/rho).</summary>
    public double SpeedOfSound => Math.Sqrt(HeatCapacityRatio * Pressure / Density);

    /// <summary>Pa s.</summary>
    public double DynamicViscosity => Sutherland.Viscosity(Temperature);

    /// <summary>Vapour pressure over its saturation value at this temperature, 0 to 1 (above 1: fog). No unit.</summary>
    public double RelativeHumidity => VapourMoleFraction / Cipm2007.SaturatedVapourMoleFraction(Pressure, Temperature);

    /// <summary>True inside 600 to 1100 hPa and 15 to 27 degC, the range CIPM-2007 is published for.</summary>
    public bool InCipmRange => Cipm2007.InRange(Pressure, Temperature);

    /// <summary>The same air (same vapour fraction) brought to another pressure and temperature: in the plenum, at the meter.</summary>
    /// <param name="pressure">Absolute, above 0 to 1000000 Pa.</param>
    /// <param name="temperature">200 to 1000 K.</param>
    public AirState At(double pressure, double temperature) => new(pressure, temperature, VapourMoleFraction);

    /// <param name="pressure">Absolute, above 0 to 1000000 Pa.</param>
    /// <param name="temperature">200 to 1000 K.</param>
    public static AirState Dry(double pressure, double temperature) => new(pressure, temperature, 0);

    /// <param name="pressure">Absolute, above 0 to 1000000 Pa.</param>
    /// <param name="temperature">200 to 1000 K.</param>
    /// <param name="relativeHumidity">0 to 1, over water, no unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">The fraction is not 0 to 1.</exception>
    public static AirState FromRelativeHumidity(double pressure, double temperature, double relativeHumidity)
    {
        Require.Between(relativeHumidity, 0, 1, nameof(relativeHumidity), "(a fraction, not percent)");
        return new(pressure, temperature, relativeHumidity == 0 ? 0 : relativeHumidity * Cipm2007.SaturatedVapourMoleFraction(pressure, temperature));
    }

    /// <param name="pressure">Absolute, above 0 to 1000000 Pa.</param>
    /// <param name="temperature">200 to 1000 K.</param>
    /// <param name="dewPoint">K, over water, not above the air's temperature.</param>
    /// <exception cref="ArgumentOutOfRangeException">The dew point is under 200 K or above the air's temperature.</exception>
    public static AirState FromDewPoint(double pressure, double temperature, double dewPoint)
    {
        Require.Between(dewPoint, 200, temperature, nameof(dewPoint), "K (not above the air's temperature)");
        return new(pressure, temperature, Cipm2007.SaturatedVapourMoleFraction(pressure, dewPoint));
    }

    /// <summary>From the wet bulb of a ventilated psychrometer, water (not ice) on the wick.</summary>
    /// <param name="pressure">Absolute, above 0 to 1000000 Pa.</param>
    /// <param name="temperature">200 to 1000 K.</param>
    /// <param name="wetBulb">K, not above the air's temperature.</param>
    /// <remarks>
    /// e = e'w(p, tw) - 6.53e-4 (1 + 9.44e-4 tw) p (t - tw): the psychrometric formula of the WMO Guide to Instruments and Methods
    /// of Observation (WMO-No. 8), Volume I, annex 4.B, after D. Sonntag, Zeitschrift für Meteorologie (1990) 340-344. Saturation by CIPM-2007.
    /// A bulb that is not ventilated (a sling left hanging) reads high and so gives damper air than there is.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The wet bulb is above the air's temperature, or so low that the formula leaves no vapour at all.</exception>
    public static AirState FromWetBulb(double pressure, double temperature, double wetBulb)
    {
        Require.Between(wetBulb, 273.15, temperature, nameof(wetBulb), "K (not freezing, not above the air's temperature)");
        var tw = wetBulb - 273.15;
        var vapour = Cipm2007.SaturatedVapourMoleFraction(pressure, wetBulb) - 6.53e-4 * (1 + 9.44e-4 * tw) * (temperature - wetBulb);
        if (vapour < 0) Require.Refuse(wetBulb, nameof(wetBulb), "nearer to the air's temperature: this reading would be drier than dry air");
        return new(pressure, temperature, vapour);
    }
}
