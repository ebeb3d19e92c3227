using Portwright.Physics.Air;
using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Shop.Bench;

/// <summary>The room's air: pressure Pa (absolute, at the bench), temperature K, relative humidity as a share of one.</summary>
/// <param name="Remarks">What had to be assumed, in sentences.</param>
public sealed record RoomState(double Pressure, double Temperature, double RelativeHumidity, IReadOnlyList<string> Remarks)
{
    /// <summary>Half-moist air where nobody measured the humidity: it moves density by 0.5 percent at most at 20 degC.</summary>
    private const double AssumedHumidity = 0.5;

    /// <summary>The same as the physics wants it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is no air.</exception>
    public AirState Air => AirState.FromRelativeHumidity(Pressure, Temperature, Math.Clamp(RelativeHumidity, 0, 1));

    /// <summary>From a weather reading.</summary>
    /// <exception cref="ArgumentException">A sea-level pressure without an elevation.</exception>
    public static RoomState Of(WeatherReading weather, Kept<BenchCard> bench)
    {
        var barometer = weather.Barometer.Si(Dimension.Barometer);
        if (weather.Pressure == PressureKind.SeaLevel)
        {
            var elevation = weather.Elevation?.Si(Dimension.Elevation) ?? bench.Fact.Elevation
                ?? throw new ArgumentException(
                    "The barometer figure is reduced to sea level. Give the shop's elevation, or read a barometer in the room.");
            barometer = StationPressure.FromSeaLevel(barometer, elevation);
        }

        var temperature = weather.Temperature.Si(Dimension.Temperature);
        if (weather.Humidity is null)
        {
            return new RoomState(barometer, temperature, AssumedHumidity, ["Humidity was not read: 50 percent assumed."]);
        }

        var humidity = weather.HumidityKind switch
        {
            HumidityKind.Relative => weather.Humidity.Si(Dimension.Fraction),
            HumidityKind.DewPoint => AirState.FromDewPoint(barometer, temperature, weather.Humidity.Si(Dimension.Temperature)).RelativeHumidity,
            HumidityKind.WetBulb => AirState.FromWetBulb(barometer, temperature, weather.Humidity.Si(Dimension.Temperature)).RelativeHumidity,
            _ => throw new ArgumentOutOfRangeException(nameof(weather)),
        };
        return new RoomState(barometer, temperature, humidity, []);
    }

    /// <summary>From the air noted with a check.</summary>
    public static RoomState Of(RoomAir air, Kept<BenchCard> bench) =>
        Of(new WeatherReading(Guid.Empty, air.Barometer, PressureKind.Station, null, air.Temperature, air.RelativeHumidity), bench);

    /// <summary>Where no weather was written down: standard air, said so.</summary>
    public static RoomState Assumed(BenchCard bench) => new(
        bench.StandardAir.Pressure,
        bench.StandardAir.Temperature,
        bench.StandardAir.RelativeHumidity,
        ["No weather was written down for this sweep: standard air assumed. With a meter in series this costs little; with a direct readout read the barometer and thermometer."]);
}
