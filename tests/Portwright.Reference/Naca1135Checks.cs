using Portwright.Physics.TestPiece;

namespace Portwright.Reference;

/// <summary>Isentropic flow: NACA Report 1135 (1953), equations 43 to 80.</summary>
public sealed class Naca1135Checks
{
    public static TheoryData<PublishedCase> Cases => [.. PublishedCases.Read("air-and-metering", "naca1135-")];

    [Theory, MemberData(nameof(Cases))]
    public void Isentropic_flow_is_as_published(PublishedCase c)
    {
        var mach = c.In("mach");
        c.Check("p_over_p0", IsentropicFlow.PressureRatio(mach, 1.4));
        c.Check("T_over_T0", IsentropicFlow.TemperatureRatio(mach, 1.4));
        c.Check("rho_over_rho0", IsentropicFlow.DensityRatio(mach, 1.4));
        c.Check("A_over_Astar", IsentropicFlow.AreaRatio(mach, 1.4));
    }

    [Theory, MemberData(nameof(Cases))]
    public void Mach_number_comes_back_from_the_published_pressure_ratio(PublishedCase c) =>
        Assert.Equal(c.In("mach"), IsentropicFlow.MachFromPressureRise(1 / c.Expected["p_over_p0"]!.GetValue<double>() - 1, 1.4), 1e-12);

    /// <summary>The nozzle function and the area ratio are two routes to one mass flux: G/G* = A*/A.</summary>
    [Theory, MemberData(nameof(Cases))]
    public void Mass_flux_over_choked_flux_is_the_inverse_of_the_area_ratio(PublishedCase c)
    {
        if (c.In("mach") > 1) return; // a plain nozzle stays choked there
        const double p0 = 101_325, rho0 = 1.2, k = 1.4;
        var flux = Nozzle.MassFlux(p0, rho0, k, p0 * c.Expected["p_over_p0"]!.GetValue<double>());
        c.Check("A_over_Astar", Nozzle.MassFlux(p0, rho0, k, 0) / flux);
    }
}
