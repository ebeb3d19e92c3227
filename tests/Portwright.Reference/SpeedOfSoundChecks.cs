using Portwright.Physics.Air;

namespace Portwright.Reference;

/// <summary>Speed of sound and humidity of air.</summary>
public sealed class SpeedOfSoundChecks
{
    /// <summary>G. S. K. Wong, J. Acoust. Soc. Am. 79 (1986) 1359-1366: 331.29 m/s in dry air at 0 degC and one atmosphere, as reported in Science News, 21 June 1986. The real-gas
    /// equation of Lemmon, Jacobsen, Penoncello and Friend (2000) in the library iapws 1.5.3 gives 331.44: the two lie 4.5e-4 apart, and the program between them.</summary>
    [Theory]
    [InlineData(331.29)]
    [InlineData(331.441)]
    public void Sound_in_dry_air_at_freezing_is_as_fast_as_published(double speed) =>
        Assert.Equal(speed, AirState.Dry(101_325, 273.15).SpeedOfSound, speed * 5e-4);

    /// <summary>Psychrometric tables as commonly printed: 20 degC dry, 15 degC wet, one atmosphere, about 59 percent; from memory.</summary>
    [Fact]
    public void A_wet_bulb_of_15_in_air_of_20_degrees_is_59_percent() =>
        Assert.Equal(0.59, AirState.FromWetBulb(101_325, 293.15, 288.15).RelativeHumidity, 0.01);
}
