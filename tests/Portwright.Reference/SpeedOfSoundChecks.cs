using Portwright.Physics.Air;

namespace Portwright.Reference;

/// <summary>Speed of sound and humidity of air against figures quoted from memory.</summary>
public sealed class SpeedOfSoundChecks
{
    /// <summary>G. S. K. Wong, J. Acoust. Soc. Am. 79 (1986) 1359-1366: 331.29 m/s in dry air at 0 degC and one atmosphere; from memory.</summary>
    [Fact]
    public void Sound_in_dry_air_at_freezing_is_as_fast_as_published() =>
        Assert.Equal(331.29, AirState.Dry(101_325, 273.15).SpeedOfSound, 331.29 * 3e-4);

    /// <summary>Psychrometric tables as commonly printed: 20 degC dry, 15 degC wet, one atmosphere, about 59 percent; from memory.</summary>
    [Fact]
    public void A_wet_bulb_of_15_in_air_of_20_degrees_is_59_percent() =>
        Assert.Equal(0.59, AirState.FromWetBulb(101_325, 293.15, 288.15).RelativeHumidity, 0.01);
}
