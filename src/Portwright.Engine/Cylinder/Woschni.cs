namespace Portwright.Engine.Cylinder;

/// <summary>Heat from gas to cylinder walls.</summary>
/// <remarks>
/// G. Woschni, SAE 670931 (1967), as J. B. Heywood gives it, Internal Combustion Engine Fundamentals (1988), equations 12.18 and 12.19:
/// h = 3.26 B^-0.2 p^0.8 T^-0.55 w^0.8 with p in kPa and w = C1 Sp + C2 Vd Tr/(pr Vr) (p - pm). Made for one engine; others differ by tens of percent.
/// </remarks>
public static class Woschni
{
    /// <summary>C1 while a valve is open, and while both are shut, no unit.</summary>
    public const double GasExchange = 6.18, Closed = 2.28;

    /// <summary>C2 from the start of burning until the exhaust opens, m/(s K); else zero.</summary>
    public const double Burning = 3.24e-3;

    /// <summary>Exponent of the motored pressure pm = pr (Vr/V)^n. Common practice, no source. No unit.</summary>
    public const double MotoredExponent = 1.33;

    /// <summary>h, W/(m2 K).</summary>
    /// <param name="bore">m.</param>
    /// <param name="pressure">Pa.</param>
    /// <param name="temperature">Mean of the gas, K.</param>
    /// <param name="gasSpeed">w, m/s, zero or above.</param>
    public static double Coefficient(double bore, double pressure, double temperature, double gasSpeed) => OfBore(bore) * WithoutBore(pressure, temperature, gasSpeed);

    /// <summary>The factor that depends on the bore (m) alone.</summary>
    internal static double OfBore(double bore) => 3.26 * Math.Pow(bore, -0.2);

    /// <summary>The factor that changes over the cycle, by one exponential: it is much of a step's work.</summary>
    internal static double WithoutBore(double pressure, double temperature, double gasSpeed) =>
        gasSpeed <= 0 ? 0 : Math.Exp(0.8 * Math.Log(1e-3 * pressure * gasSpeed) - 0.55 * Math.Log(temperature));

    /// <summary>Pressure at a volume (m3) had nothing burnt since the intake closed, Pa.</summary>
    /// <param name="volume">m3.</param>
    /// <param name="atClosing">As for <see cref="BurningSpeed"/>, pressure in Pa, volume in m3, temperature in K.</param>
    public static double MotoredPressure(double volume, (double Pressure, double Volume, double Temperature) atClosing) =>
        atClosing.Pressure * Math.Exp(MotoredExponent * Math.Log(atClosing.Volume / volume));

    /// <summary>w while the charge burns or has burnt, m/s.</summary>
    /// <param name="meanPistonSpeed">m/s.</param>
    /// <param name="displacement">m3.</param>
    /// <param name="pressure">Pa.</param>
    /// <param name="motoredPressure">Pa, at the same crank angle without burning.</param>
    /// <param name="atClosing">Pressure (Pa), volume (m3) and temperature (K) when the intake closed.</param>
    public static double BurningSpeed(
        double meanPistonSpeed, double displacement, double pressure, double motoredPressure, (double Pressure, double Volume, double Temperature) atClosing) =>
        Closed * meanPistonSpeed
        + Burning * displacement * atClosing.Temperature / (atClosing.Pressure * atClosing.Volume) * Math.Max(0, pressure - motoredPressure);
}

/// <summary>Mean temperatures of the surfaces round the gas, K.</summary>
/// <param name="Head">K, above zero.</param>
/// <param name="Piston">K, above zero.</param>
/// <param name="Sleeve">K, above zero.</param>
/// <remarks>Usual: common practice, no source.</remarks>
public sealed record WallTemperatures(double Head, double Piston, double Sleeve)
{
    /// <summary>At full load, water cooled: 485, 525 and 425 K.</summary>
    public static readonly WallTemperatures Usual = new(485, 525, 425);
}
