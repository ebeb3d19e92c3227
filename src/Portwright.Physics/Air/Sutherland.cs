namespace Portwright.Physics.Air;

/// <summary>Dynamic viscosity of dry air by Sutherland's formula.</summary>
/// <remarks>
/// Source: U.S. Standard Atmosphere 1976, equation 51: beta T^1.5 / (T + S), beta = 1.458e-6 kg/(s m K^0.5), S = 110.4 K.
/// Near room temperature it lies 0.25 percent under the dilute-gas correlation of Lemmon and Jacobsen (2004), which the
/// reference checks compare; past about 500 K it falls further behind. Water vapour is left out: saturated air at 25 degC is
/// about one percent less viscous. Viscosity enters a plate's flow only through its Reynolds number; it enters a laminar
/// element's flow in full.
/// </remarks>
public static class Sutherland
{
    private const double Beta = 1.458e-6, Constant = 110.4;

    /// <summary>Viscosity in Pa s at a temperature in K, above zero.</summary>
    /// <param name="temperature">K.</param>
    public static double Viscosity(double temperature) => Beta * temperature * Math.Sqrt(temperature) / (temperature + Constant);

    /// <summary>
    /// The same formula with the constants of F. M. White, Viscous Fluid Flow (3rd ed., 2006), table 1-2:
    /// 1.716e-5 (T/273)^1.5 (273 + 111)/(T + 111), Pa s. It shows how far two published fits lie apart.
    /// </summary>
    /// <param name="temperature">K.</param>
    public static double ViscosityByWhite(double temperature)
    {
        var ratio = temperature / 273;
        return 1.716e-5 * ratio * Math.Sqrt(ratio) * (273 + 111) / (temperature + 111);
    }
}
