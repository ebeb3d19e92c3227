using Portwright.Physics.Air;
using Portwright.Shop.Units;

namespace Portwright.Cli.Calc;

/// <summary>Air: density and the rest of its state, station pressure, standard atmosphere.</summary>
internal static class AirCalculations
{
    private const string Cipm = "CIPM-2007 (Picard et al., Metrologia 45 (2008) 149)";

    public static readonly Input Barometer = new("barometer", "air pressure at the bench, absolute", Dimension.Barometer, "101325 Pa");
    public static readonly Input Temperature = new("temperature", "air temperature", Dimension.Temperature, "20 °C");
    public static readonly Input Humidity = new("humidity", "relative humidity", Dimension.Fraction, "0 %");

    public static IReadOnlyList<Calculation> All { get; } =
    [
        new("air", "density of moist air, speed of sound, viscosity",
            [
                Barometer, Temperature, Humidity,
                Input.Optional("dew-point", "dew point, in place of humidity", Dimension.Temperature),
                Input.Optional("wet-bulb", "ventilated wet bulb, in place of humidity", Dimension.Temperature),
            ],
            [], Air, "air --barometer 29.4inHg --temperature 75F --humidity \"45 +- 5 %\"", "air --barometer 990hPa --temperature 24C --wet-bulb 17C"),
        new("station-pressure", "air pressure at the bench from a weather report reduced to sea level",
            [
                new("sea-level", "pressure as the weather report gives it", Dimension.Barometer),
                new("elevation", "height of the shop above the sea", Dimension.Elevation),
            ],
            [], Station, "station-pressure --sea-level 30.02inHg --elevation 870ft"),
        new("atmosphere", "the standard atmosphere at a height",
            [new("altitude", "geometric height above the sea", Dimension.Elevation)],
            [], Atmosphere, "atmosphere --altitude 5000ft"),
    ];

    /// <summary>The air a calculation's weather makes.</summary>
    public static AirState Of(Given g)
    {
        double p = g["barometer"], t = g["temperature"];
        return g.Find("dew-point") is { } dew ? AirState.FromDewPoint(p, t, dew)
            : g.Find("wet-bulb") is { } wet ? AirState.FromWetBulb(p, t, wet)
            : AirState.FromRelativeHumidity(p, t, g["humidity"]);
    }

    private static void Air(Given g, Working w)
    {
        double p = g["barometer"], t = g["temperature"];
        var air = Of(g);
        w.Line("saturation_pressure", "saturation vapour pressure", Cipm2007.SaturationVapourPressure(t), Dimension.Pressure, "psv = exp(A T^2 + B T + C + D/T)", Cipm + ", A1.1");
        w.Line("enhancement_factor", "enhancement factor", Cipm2007.EnhancementFactor(p, t), Dimension.Ratio, "f = a + b p + c t^2", "the same, A1.2");
        w.Line("vapour_mole_fraction", "water vapour by mole", air.VapourMoleFraction, Dimension.Ratio,
            g.Has("dew-point") ? "xv = f(p, td) psv(td)/p" : g.Has("wet-bulb") ? "psychrometer, WMO-No. 8, annex 4.B" : "xv = h f psv/p");
        w.Line("relative_humidity", "relative humidity", air.RelativeHumidity, Dimension.Ratio, "h = xv p/(f psv)");
        w.Line("compressibility", "compressibility factor", Cipm2007.Compressibility(p, t, air.VapourMoleFraction), Dimension.Ratio, "Z(p, T, xv)", "the same, A1.4");
        w.Line("heat_capacity_ratio", "heat-capacity ratio", air.HeatCapacityRatio, Dimension.Ratio, "k = cp/cv of the mixture", "McBride, Gordon, Reno, NASA TM-4513 (1993)");
        w.Answer("density", "density", air.Density, Dimension.Density, "rho = p Ma/(Z R T) (1 - xv (1 - Mv/Ma))", Cipm + ", equation 2");
        w.Answer("speed_of_sound", "speed of sound", air.SpeedOfSound, Dimension.Speed, "a = sqrt(k p/rho)");
        w.Answer("viscosity", "viscosity", air.DynamicViscosity, Dimension.Viscosity, "beta T^1.5/(T + S)", "U.S. Standard Atmosphere 1976, equation 51 (Sutherland)");
        RangeRemark(air, w);
    }

    /// <summary>Says where the density formula is used past what it is published for.</summary>
    public static void RangeRemark(in AirState air, Working w)
    {
        if (!air.InCipmRange) w.Remark("The air is outside 600 to 1100 hPa or 15 to 27 degC, the range CIPM-2007 is published for.");
    }

    private static void Station(Given g, Working w)
    {
        w.Line("geopotential_altitude", "geopotential height", StandardAtmosphere.GeopotentialAltitude(g["elevation"]), Dimension.Elevation,
            "H = r h/(r + h)", "U.S. Standard Atmosphere 1976, equation 18");
        w.Answer("station_pressure", "station pressure", StationPressure.FromSeaLevel(g["sea-level"], g["elevation"]), Dimension.Barometer,
            "p^n = Q^n - p0^n L H/T0, n = L R/g", "the same, equation 33a");
        w.Remark("Exact for an altimeter setting. A mean-sea-level pressure was reduced with the day's temperature and can be some hPa off in high places: a barometer at the bench is better.");
    }

    private static void Atmosphere(Given g, Working w)
    {
        var level = StandardAtmosphere.At(g["altitude"]);
        const string source = "U.S. Standard Atmosphere 1976";
        w.Answer("temperature", "temperature", level.Temperature, Dimension.Temperature, "T = Tb + L (H - Hb)", source + ", equation 23");
        w.Answer("pressure", "pressure", level.Pressure, Dimension.Barometer, "hydrostatic, layer by layer", source + ", equations 33a and 33b");
        w.Answer("density", "density", level.Density, Dimension.Density, "rho = p/(R T)", source + ", equation 42");
        w.Answer("sound", "speed of sound", level.SpeedOfSound, Dimension.Speed, "a = sqrt(1.4 R T)", source + ", equation 50");
        w.Answer("viscosity", "viscosity", level.DynamicViscosity, Dimension.Viscosity, "beta T^1.5/(T + S)", source + ", equation 51");
    }
}
