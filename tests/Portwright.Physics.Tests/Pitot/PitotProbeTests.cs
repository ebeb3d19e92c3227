using CsCheck;
using Portwright.Physics.Pitot;
using Portwright.Physics.TestPiece;
using Portwright.Physics.Tests.TestPiece;

namespace Portwright.Physics.Tests.Pitot;

public sealed class PitotProbeTests
{
    /// <summary>Air that left the room without loss carries the room's pressure as its total: the speed it must have has a second route by enthalpy.</summary>
    [Fact]
    public void Speed_is_what_the_fall_of_temperature_gives() =>
        Gen.Select(Weather.Any, Gen.Double[1, 30_000]).Sample((room, dp) =>
        {
            double k = room.HeatCapacityRatio, r = room.GasConstant, p = room.Pressure - dp;
            var t = room.Temperature * Math.Pow(p / room.Pressure, (k - 1) / k);
            var cp = k * r / (k - 1);
            var expected = Math.Sqrt(2 * cp * (room.Temperature - t));
            Assert.Equal(expected, new PitotProbe().Speed(dp, p, room), expected * 1e-9);
        });

    /// <summary>Continuity: density times speed of the loss-free stream is the nozzle's mass flux.</summary>
    [Fact]
    public void Density_times_speed_is_the_nozzles_mass_flux() =>
        Gen.Select(Weather.Any, Gen.Double[1, 20_000]).Sample((room, dp) =>
        {
            var reading = new PitotProbe().Read(dp, room.Pressure - dp, room);
            var flux = Nozzle.MassFlux(room, room.Pressure - dp);
            Assert.Equal(flux, reading.Density * reading.Speed, flux * 1e-9);
        });

    [Fact]
    public void The_probe_factor_multiplies_speed()
    {
        var room = Weather.OneDay[0];
        Assert.Equal(0.97 * new PitotProbe().Speed(3000, 99_000, room), new PitotProbe(0.97).Speed(3000, 99_000, room), 1e-12);
    }

    [Fact]
    public void Incompressible_speed_is_the_limit_of_slow_air() => Weather.Any.Sample(room =>
    {
        var slow = new PitotProbe().Read(1, room.Pressure, room);
        Assert.Equal(slow.SpeedIncompressible, slow.Speed, slow.Speed * 1e-5);
        Assert.Equal(slow.SpeedIso3966, slow.Speed, slow.Speed * 1e-9);
    });

    [Fact]
    public void A_negative_differential_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>("differential", () => new PitotProbe().Speed(-1, 99_000, Weather.OneDay[0]));
}
