using CsCheck;
using Portwright.Physics.Air;
using Portwright.Physics.Tests.TestPiece;

namespace Portwright.Physics.Tests.Air;

public sealed class AirStateTests
{
    [Fact]
    public void A_dew_point_at_the_airs_temperature_is_saturated_air() =>
        Gen.Select(Gen.Double[70_000, 106_000], Gen.Double[276, 311]).Sample((p, t) =>
            Assert.Equal(1, AirState.FromDewPoint(p, t, t).RelativeHumidity, 1e-12));

    [Fact]
    public void A_wet_bulb_at_the_airs_temperature_is_saturated_air() =>
        Gen.Select(Gen.Double[70_000, 106_000], Gen.Double[276, 311]).Sample((p, t) =>
            Assert.Equal(1, AirState.FromWetBulb(p, t, t).RelativeHumidity, 1e-12));

    [Fact]
    public void Humidity_comes_back_as_it_was_given() =>
        Gen.Select(Gen.Double[70_000, 106_000], Gen.Double[276, 311], Gen.Double[0, 1]).Sample((p, t, rh) =>
            Assert.Equal(rh, AirState.FromRelativeHumidity(p, t, rh).RelativeHumidity, 1e-12));

    [Fact]
    public void Damp_air_is_lighter_than_dry_air_of_the_same_pressure_and_temperature() => Weather.Any.Sample(air =>
        Assert.True(air.Density <= AirState.Dry(air.Pressure, air.Temperature).Density));

    /// <summary>The ideal gas law with the molar masses 28.965 and 18.015 g/mol lies within a tenth of a percent.</summary>
    [Fact]
    public void Density_lies_near_the_ideal_gas_law() => Weather.Any.Sample(air =>
    {
        var molar = 0.028965 + (0.018015 - 0.028965) * air.VapourMoleFraction;
        var ideal = air.Pressure * molar / (8.314463 * air.Temperature);
        Assert.Equal(ideal, air.Density, ideal * 1e-3);
    });

    [Fact]
    public void Air_brought_nowhere_is_the_same_air() => Weather.Any.Sample(air => Assert.Equal(air, air.At(air.Pressure, air.Temperature)));

    [Fact]
    public void Heat_capacity_ratio_of_room_air_is_about_one_point_four_and_falls_with_water()
    {
        Assert.Equal(1.400, AirState.Dry(101_325, 293.15).HeatCapacityRatio, 0.0007);
        Assert.True(AirState.FromRelativeHumidity(101_325, 303.15, 1).HeatCapacityRatio < AirState.Dry(101_325, 303.15).HeatCapacityRatio);
    }

    [Fact]
    public void The_range_of_the_density_formula_is_known()
    {
        Assert.True(AirState.Dry(101_325, 293.15).InCipmRange);
        Assert.False(AirState.Dry(101_325, 301).InCipmRange);
        Assert.False(AirState.Dry(111_000, 293.15).InCipmRange);
    }

    [Theory]
    [InlineData(0, 293.15, "pressure")]
    [InlineData(double.NaN, 293.15, "pressure")]
    [InlineData(101_325, 20, "temperature")]
    public void A_state_that_is_no_air_is_refused_by_name(double p, double t, string argument) =>
        Assert.Throws<ArgumentOutOfRangeException>(argument, () => AirState.Dry(p, t));

    [Fact]
    public void Percent_given_for_a_fraction_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>("relativeHumidity", () => AirState.FromRelativeHumidity(101_325, 293.15, 50));

    [Fact]
    public void A_sea_level_report_and_its_station_pressure_turn_into_each_other() =>
        Gen.Select(Gen.Double[95_000, 105_000], Gen.Double[-300, 4000]).Sample((q, h) =>
            Assert.Equal(q, StationPressure.ToSeaLevel(StationPressure.FromSeaLevel(q, h), h), q * 1e-12));

    [Fact]
    public void At_sea_level_the_report_is_the_station_pressure() => Assert.Equal(99_000, StationPressure.FromSeaLevel(99_000, 0), 1e-8);

    [Fact]
    public void Standard_air_is_dry_at_twenty_degrees_and_one_atmosphere()
    {
        Assert.Equal((101_325, 293.15, 0), (StandardAir.Default.Pressure, StandardAir.Default.Temperature, StandardAir.Default.RelativeHumidity));
        Assert.Equal(1.2046, StandardAir.Default.Density, 0.0001);
    }
}
