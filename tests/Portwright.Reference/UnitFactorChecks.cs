using Portwright.Shop.Units;

namespace Portwright.Reference;

/// <summary>NIST SP 811 (2008), Appendix B: the factors as the edge of the program uses them.</summary>
public sealed class UnitFactorChecks
{
    [Theory]
    [InlineData("inH2O_4C_pa", "inH2O", Dimension.Pressure)]
    [InlineData("inH2O_60F_pa", "inH2O60F", Dimension.Pressure)]
    [InlineData("inHg_0C_pa", "inHg", Dimension.Barometer)]
    [InlineData("cfm_m3_s", "cfm", Dimension.VolumeFlow)]
    [InlineData("psi_pa", "psi", Dimension.Pressure)]
    [InlineData("ft_s", "ft/s", Dimension.Speed)]
    [InlineData("in_m", "in", Dimension.Length)]
    [InlineData("cc_m3", "cc", Dimension.Volume)]
    [InlineData("hp_w", "hp", Dimension.Power)]
    [InlineData("lbft_nm", "lb-ft", Dimension.Torque)]
    public void A_unit_is_as_large_as_published(string key, string unit, Dimension dimension) =>
        PublishedCases.Read("air-and-metering", "units").Single().Check(key, new Typed(1, unit, "1").Si(dimension));

    [Fact]
    public void Every_published_factor_is_checked() => Assert.Equal(
        PublishedCases.Read("air-and-metering", "units").Single().Expected.Count,
        typeof(UnitFactorChecks).GetMethod(nameof(A_unit_is_as_large_as_published))!.GetCustomAttributes(typeof(InlineDataAttribute), false).Length);
}
