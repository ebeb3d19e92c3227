using Portwright.Physics.Pitot;

namespace Portwright.Reference;

/// <summary>Pitot-static speed: NACA Report 1135 (1953) equation 44, from total temperature; ISO 3966 and its scope.</summary>
public sealed class PitotChecks
{
    private const double InchOfWater = 249.08891, Foot = 0.3048, K = 1.4, R = 287.05;

    public static TheoryData<PublishedCase> Cases => [.. PublishedCases.Read("air-and-metering", "pitot-")];

    [Theory, MemberData(nameof(Cases))]
    public void Speed_from_total_temperature_is_as_published(PublishedCase c)
    {
        double dp = c.In("dp_inH2O_4C") * InchOfWater, p = c.In("static_pressure_pa"), t0 = c.In("total_temperature_k");
        c.Check("mach", PitotSpeed.Mach(dp, p, K));
        var speed = PitotSpeed.FromTotalTemperature(dp, p, t0, K, R);
        c.Check("speed_m_s", speed);
        c.Check("speed_ft_s", speed / Foot);
    }

    /// <summary>Inside its scope ISO 3966's series is the isentropic speed to 5e-5; past it the two part.</summary>
    [Theory, MemberData(nameof(Cases))]
    public void Iso_3966_expansion_agrees_with_isentropic_speed_inside_its_scope(PublishedCase c)
    {
        double dp = c.In("dp_inH2O_4C") * InchOfWater, p = c.In("static_pressure_pa");
        var mach = PitotSpeed.Mach(dp, p, K);
        var t = c.In("total_temperature_k") / (1 + 0.2 * mach * mach);
        var series = PitotSpeed.ExpansionFactor(dp, p, K) * PitotSpeed.Incompressible(dp, p / (R * t));
        var off = Math.Abs(series / PitotSpeed.FromStaticTemperature(dp, p, t, K, R) - 1);
        Assert.True(off < (mach <= 0.25 ? 5e-5 : 1e-3), $"{c.Id}: Mach {mach}, off by {off:E2}");
    }
}
