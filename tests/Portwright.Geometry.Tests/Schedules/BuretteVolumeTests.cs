using CsCheck;
using Portwright.Geometry.Schedules;

namespace Portwright.Geometry.Tests.Schedules;

public sealed class BuretteVolumeTests
{
    [Fact]
    public void At_twenty_degrees_the_reading_stands() =>
        Gen.Double[1e-5, 3e-4].Sample(v => Assert.Equal(v, BuretteVolume.FromReading(v, 20, BuretteVolume.Borosilicate, BuretteVolume.CastAluminium)));

    [Fact]
    public void A_warm_aluminium_port_is_smaller_at_twenty_degrees()
    {
        // 200 cc at 30 degC: burette +9.9e-5, metal +6.6e-4: 200 x (1.000099 / 1.00066) = 199.888 cc, by hand.
        Assert.Equal(199.888e-6, BuretteVolume.FromReading(200e-6, 30, BuretteVolume.Borosilicate, BuretteVolume.CastAluminium), 1e-9);
    }

    [Fact]
    public void Weighing_and_reading_agree_where_the_glass_is_true() =>
        Gen.Select(Gen.Double[2e-5, 3e-4], Gen.Double[5, 38]).Sample((v, t) =>
        {
            var really = v * (1 + BuretteVolume.Borosilicate * (t - 20));
            var shown = really * (WaterDensity.At(t) - 1.2) / (1 - 1.2 / 8000);
            Assert.Equal(1, BuretteVolume.FromMass(shown, WaterDensity.At(t), t, BuretteVolume.CastIron)
                / BuretteVolume.FromReading(v, t, BuretteVolume.Borosilicate, BuretteVolume.CastIron), 1e-12);
        });

    [Fact]
    public void Water_is_heaviest_near_four_degrees() =>
        Gen.Double[0, 40].Sample(t => Assert.True(WaterDensity.At(t) <= WaterDensity.At(3.983035)));

    [Fact]
    public void Outside_its_range_nothing_is_given()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => WaterDensity.At(41));
        Assert.Throws<ArgumentOutOfRangeException>(() => BuretteVolume.FromReading(1e-4, 80, 0, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => BuretteVolume.FromMass(0, 998, 20, 0));
    }
}
