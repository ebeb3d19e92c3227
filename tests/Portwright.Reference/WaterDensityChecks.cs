using Portwright.Geometry.Schedules;

namespace Portwright.Reference;

/// <summary>The density of water by Tanaka et al. (2001) against sources that do not rest on it.</summary>
public sealed class WaterDensityChecks
{
    /// <summary>
    /// Determination of the absolute density of water at 16 degC and 0.101325 MPa (hydrostatic weighing of fused-quartz spheres; figures from its abstract, which was opened; the authors, Masui, Fujii and Takenaka, from memory):
    /// 998.9468 kg/m3 with a standard uncertainty of 0.0006, and a maximum of 999.9756 with 0.0008. Three standard uncertainties.
    /// </summary>
    [Theory]
    [InlineData(16, 998.9468, 0.0006)]
    [InlineData(3.983, 999.9756, 0.0008)]
    public void Weighed_water(double celsius, double density, double doubt) => Assert.Equal(density, WaterDensity.At(celsius), 3 * doubt);

    /// <summary>
    /// H. Bettin, F. Spieweck's refit of G. S. Kell (1975) to the temperature scale of 1990, coefficients as printed in IP Standard Methods 1998, appendix G, with a stated uncertainty of 0.006 kg/m3.
    /// </summary>
    [Fact]
    public void Kell_on_the_scale_of_1990()
    {
        for (var t = 0.0; t <= 40; t += 2.5)
        {
            var kell = (999.83952 + 16.952577 * t - 7.9905127e-3 * t * t - 46.241757e-6 * Math.Pow(t, 3) + 105.84601e-9 * Math.Pow(t, 4) - 281.03006e-12 * Math.Pow(t, 5))
                / (1 + 16.887236e-3 * t);
            Assert.Equal(kell, WaterDensity.At(t), 0.006);
        }
    }

    /// <summary>A gram of water weighed at 20 degC in air at 101.3 kPa fills 1.0029 cm3: the table of Z after ISO 8655-6 as printed in a pipette's manual (Sartorius, Picus, p. 34). The standard itself was not opened.</summary>
    [Fact]
    public void A_gram_on_the_balance_fills_1_0029_cubic_centimetres() =>
        Assert.Equal(1.0029, BuretteVolume.FromMass(0.001, WaterDensity.At(20), 20, 0) * 1e6, 0.00005);
}
