using Portwright.Physics.Air;

namespace Portwright.Reference;

/// <summary>U.S. Standard Atmosphere 1976 (NOAA/NASA/USAF), computed with fluids 1.0.22.</summary>
public sealed class StandardAtmosphereChecks
{
    public static TheoryData<PublishedCase> Cases => [.. PublishedCases.Read("air-and-metering", "ussa-")];

    [Theory, MemberData(nameof(Cases))]
    public void The_standard_atmosphere_is_as_published(PublishedCase c)
    {
        var level = StandardAtmosphere.At(c.In("geometric_altitude_m"));
        c.Check("temperature_k", level.Temperature, 1e-9);
        c.Check("pressure_pa", level.Pressure);
        c.Check("density_kg_m3", level.Density);
        c.Check("sound_m_s", level.SpeedOfSound);
        c.Check("viscosity_pa_s", level.DynamicViscosity, 1e-9);
    }

    /// <summary>Above the tropopause: pressures at the layer bases of the U.S. Standard Atmosphere 1976 as given to seven figures in public libraries (fluids 1.0.22, atmosphere.py, among them). The book's own table was not opened.</summary>
    [Theory]
    [InlineData(20_000, 5474.889)]
    [InlineData(32_000, 868.0187)]
    [InlineData(47_000, 110.9063)]
    [InlineData(51_000, 66.93887)]
    [InlineData(71_000, 3.956420)]
    public void Each_layer_ends_at_its_tabulated_pressure(double geopotential, double pressure)
    {
        const double earth = 6_356_766;
        Assert.Equal(pressure, StandardAtmosphere.At(earth * geopotential / (earth - geopotential)).Pressure, pressure * 3e-7);
    }

    /// <summary>The altimeter relation and the atmosphere it is made from are one thing when the altimeter setting is 101325 Pa.</summary>
    [Theory, MemberData(nameof(Cases))]
    public void A_sea_level_report_of_standard_pressure_gives_the_standard_atmosphere(PublishedCase c)
    {
        var altitude = c.In("geometric_altitude_m");
        if (altitude > 9000) return; // past the range a bench can stand in
        c.Check("pressure_pa", StationPressure.FromSeaLevel(101_325, altitude));
    }
}
