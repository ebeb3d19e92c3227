using Portwright.Physics.Air;

namespace Portwright.Reference;

/// <summary>Moist air by CIPM-2007: Picard, Davis, Gläser, Fujii, Metrologia 45 (2008) 149-155, equations 1 to 5.</summary>
public sealed class CipmChecks
{
    public static TheoryData<PublishedCase> Cases => [.. PublishedCases.Read("air-and-metering", "cipm-")];

    [Theory, MemberData(nameof(Cases))]
    public void Moist_air_is_as_dense_as_published(PublishedCase c)
    {
        double p = c.In("pressure_pa"), t = c.In("temperature_c") + 273.15;
        var air = AirState.FromRelativeHumidity(p, t, c.In("relative_humidity"));
        c.Check("density_kg_m3", air.Density);
        c.Check("compressibility", Cipm2007.Compressibility(p, t, air.VapourMoleFraction));
        c.Check("vapour_mole_fraction", air.VapourMoleFraction);
        c.Check("saturation_pressure_pa", Cipm2007.SaturationVapourPressure(t));
        c.Check("enhancement_factor", Cipm2007.EnhancementFactor(p, t));
    }
}
