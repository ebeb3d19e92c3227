using Portwright.Physics.Air;

namespace Portwright.Reference;

/// <summary>Viscosity of dry air: U.S. Standard Atmosphere 1976 equation 51; White, Viscous Fluid Flow (3rd ed. 2006) table 1-2.</summary>
public sealed class ViscosityChecks
{
    public static TheoryData<PublishedCase> Cases => [.. PublishedCases.Read("geometry-and-flow", "viscosity-")];

    [Theory, MemberData(nameof(Cases))]
    public void Sutherland_is_as_published(PublishedCase c)
    {
        c.Check("ussa_1976_pa_s", Sutherland.Viscosity(c.In("temperature_k")));
        c.Check("white_pa_s", Sutherland.ViscosityByWhite(c.In("temperature_k")));
    }

    /// <summary>The second route: dilute-gas air of Lemmon and Jacobsen (2004). Sutherland lies within half a percent of it up to 325 K.</summary>
    [Theory, MemberData(nameof(Cases))]
    public void Sutherland_lies_near_the_dilute_gas_correlation_at_bench_temperatures(PublishedCase c)
    {
        c.Check("lemmon_jacobsen_dilute_pa_s", DiluteGas(c.In("temperature_k")));
        if (c.In("temperature_k") <= 325) c.Check("lemmon_jacobsen_dilute_pa_s", Sutherland.Viscosity(c.In("temperature_k")), 0.005);
    }

    /// <summary>E. W. Lemmon and R. T. Jacobsen, Int. J. Thermophys. 25 (2004) 21-69, equation 2 and tables I, II, with air's constants; Pa s.</summary>
    private static double DiluteGas(double temperature)
    {
        var log = Math.Log(temperature / 103.3);
        var collision = Math.Exp(0.431 + log * (-0.4623 + log * (0.08406 + log * (0.005341 + log * -0.00331))));
        return 1e-6 * 0.0266958 * Math.Sqrt(28.9586 * temperature) / (0.360 * 0.360 * collision);
    }
}
