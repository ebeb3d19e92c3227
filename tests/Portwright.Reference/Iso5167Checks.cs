using Portwright.Physics.Metering;

namespace Portwright.Reference;

/// <summary>Orifice meters by ISO 5167-2:2003 in three tap arrangements, computed with fluids 1.0.22 (python3-fluids, Debian 12).</summary>
public sealed class Iso5167Checks
{
    public static TheoryData<PublishedCase> Cases => [.. PublishedCases.Read("air-and-metering", "orifice-")];

    [Theory, MemberData(nameof(Cases))]
    public void An_orifice_plate_meters_as_published(PublishedCase c)
    {
        var taps = c.Text("taps") switch
        {
            "corner" => OrificeTaps.Corner,
            "D" => OrificeTaps.DAndHalfD,
            "flange" => OrificeTaps.Flange,
            var other => throw new InvalidOperationException(other),
        };
        var plate = new OrificePlate(c.In("pipe_diameter_m"), c.In("bore_m"), taps);
        var flow = plate.Flow(c.In("differential_pressure_pa"), c.In("upstream_pressure_pa"), c.In("density_kg_m3"),
            c.In("viscosity_pa_s"), c.In("isentropic_exponent"));
        c.Check("discharge_coefficient", flow.DischargeCoefficient);
        c.Check("expansibility", flow.Expansibility);
        c.Check("reynolds_pipe", flow.Reynolds);
        c.Check("mass_flow_kg_s", flow.MassFlow);
    }
}
