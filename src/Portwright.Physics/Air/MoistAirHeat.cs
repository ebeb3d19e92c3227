namespace Portwright.Physics.Air;

/// <summary>Molar heat capacity and heat-capacity ratio of moist air, as a mixture of ideal gases.</summary>
/// <remarks>
/// cp of each gas by the seven-coefficient polynomials (cp/R = a1 + a2 T + a3 T2 + a4 T3 + a5 T4, 200 to 1000 K) of
/// B. J. McBride, S. Gordon and M. A. Reno, "Coefficients for calculating thermodynamic and transport properties of individual
/// species", NASA TM-4513 (1993).
/// Dry air: N2 0.780848, O2 0.209390, Ar 0.009332, CO2 0.0004 by mole (Picard et al. 2008, table 1), scaled to one.
/// As an ideal mixture the pressure dependence (about 0.1 percent of the ratio at one atmosphere) is left out.
/// Dry air at 20 degC: 1.400. A change of the ratio by 0.1 percent moves an effective area at 28 inH2O by 4e-5.
/// </remarks>
public static class MoistAirHeat
{
    private const double N2 = 0.780848, O2 = 0.209390, Ar = 0.009332, Co2 = 0.0004, All = N2 + O2 + Ar + Co2;

    private const double
        A1 = (N2 * 3.53100528 + O2 * 3.78245636 + Ar * 2.5 + Co2 * 2.35677352) / All,
        A2 = (N2 * -1.23660987e-4 + O2 * -2.99673416e-3 + Co2 * 8.98459677e-3) / All,
        A3 = (N2 * -5.02999437e-7 + O2 * 9.84730201e-6 + Co2 * -7.12356269e-6) / All,
        A4 = (N2 * 2.43530612e-9 + O2 * -9.68129509e-9 + Co2 * 2.45919022e-9) / All,
        A5 = (N2 * -1.40881235e-12 + O2 * 3.24372837e-12 + Co2 * -1.43699548e-13) / All;

    /// <summary>cp/R (per mole, no unit) at a temperature of 200 to 1000 K.</summary>
    /// <param name="temperature">200 to 1000 K.</param>
    /// <param name="vapourMoleFraction">Fraction by mole of water vapour, 0 to below 1.</param>
    public static double MolarHeatCapacityOverR(double temperature, double vapourMoleFraction)
    {
        var t = temperature;
        var dry = A1 + (A2 + (A3 + (A4 + A5 * t) * t) * t) * t;
        if (vapourMoleFraction == 0) return dry;
        var vapour = 4.19864056 + (-2.03643410e-3 + (6.52040211e-6 + (-5.48797062e-9 + 1.77197817e-12 * t) * t) * t) * t;
        return dry + vapourMoleFraction * (vapour - dry);
    }

    /// <summary>cp/cv = (cp/R) / (cp/R - 1), no unit.</summary>
    /// <param name="temperature">200 to 1000 K.</param>
    /// <param name="vapourMoleFraction">Fraction by mole of water vapour, 0 to below 1.</param>
    public static double HeatCapacityRatio(double temperature, double vapourMoleFraction)
    {
        var cp = MolarHeatCapacityOverR(temperature, vapourMoleFraction);
        return cp / (cp - 1);
    }
}
