using Portwright.Physics.TestPiece;

namespace Portwright.Reference;

/// <summary>Nozzle function at 1 to 250 inH2O: de Saint-Venant and Wantzel; Heywood (1988) appendix C, equations C.8 and C.9.</summary>
public sealed class NozzleChecks
{
    private const double InchOfWater = 249.08891, Foot = 0.3048, Cfm = 0.0004719474432, K = 1.4, R = 287.05;

    public static TheoryData<PublishedCase> Cases => [.. PublishedCases.Read("air-and-metering", "nozzle-")];

    [Theory, MemberData(nameof(Cases))]
    public void Ten_square_centimetres_flow_as_published(PublishedCase c)
    {
        double p0 = c.In("upstream_pressure_pa"), rho0 = p0 / (R * c.In("upstream_temperature_k"));
        var inches = c.In("test_pressure_inH2O_4C");
        double Flow(double inH2O) => c.In("effective_area_m2") * Nozzle.MassFlux(p0, rho0, K, p0 - inH2O * InchOfWater);

        c.Check("mass_flow_kg_s", Flow(inches));
        c.Check("volume_flow_cfm", Flow(inches) / rho0 / Cfm);
        c.Check("ratio_to_28", Flow(inches) / Flow(28));
        c.Check("square_root_rule", RestatedFlow.SquareRootRule(1, 28, inches));
    }

    [Fact]
    public void Ideal_air_speed_at_28_inches_is_as_published()
    {
        var c = PublishedCases.Read("air-and-metering", "ideal-28").Single();
        double dp = c.In("test_pressure_pa"), p0 = 101_325, t0 = 293.15, rho0 = p0 / (R * t0);
        c.Check("incompressible_ft_s", Physics.Pitot.PitotSpeed.Incompressible(dp, rho0) / Foot);
        // The stream that left air at rest at p0 and reached p0 - dp.
        c.Check("isentropic_ft_s", Physics.Pitot.PitotSpeed.FromTotalTemperature(dp, p0 - dp, t0, K, R) / Foot);
    }
}
