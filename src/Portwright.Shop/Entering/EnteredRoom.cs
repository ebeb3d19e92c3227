using Portwright.Physics.Air;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Entering;

/// <summary>The air of the room and where the bench stands.</summary>
public static class EnteredRoom
{
    /// <summary>Of the bench above the sea, m.</summary>
    public static readonly EnteredField Elevation = new("bench.elevation", "Height above the sea", Dimension.Elevation, -450, 6000,
        _ => [new(-50, 3200, $"shops stand up to {new Quantity(3200, Dimension.Elevation)} above the sea")]);

    /// <summary>Ends the text of a report's pressure.</summary>
    public const string AtSeaLevel = " at sea level";

    /// <summary>What weather does to the air of one place, Pa; common practice, no source.</summary>
    private const double Weather = 4500;

    /// <summary>
    /// As it stands on the wall: the standard atmosphere's pressure at the bench's height (ISO 2533:1975) give or take weather; where nobody knows the height, anything from the sea to 1,500 m.
    /// </summary>
    public static readonly EnteredField Barometer = new("room.barometer", "Barometer", Dimension.Barometer, 45e3, 110e3, around =>
        around[Elevation] is { } height && StandardAtmosphere.At(height).Pressure is var there
            ? [new(there - Weather, there + Weather, $"at {new Quantity(height, Dimension.Elevation)} above the sea the air stands at about {new Quantity(there, Dimension.Barometer, Figures: 3)}")]
            : [new(82e3, 106e3, $"up to {new Quantity(1500, Dimension.Elevation)} above the sea it is {new Quantity(82e3, Dimension.Barometer)} to {new Quantity(106e3, Dimension.Barometer)}")])
    {
        // A report's figure is never under 94 kPa nor over 106; low down the two are the same.
        AlsoMeant = (typed, around) => around[Elevation] is { } height and > 50 && typed.Si(Dimension.Barometer) is >= 94e3 and <= 106e3 and var report
            ? [new MeantValue($"{typed.WithUnit}{AtSeaLevel}", StationPressure.FromSeaLevel(report, height), SlipKind.SeaLevel)] : [],
    };

    public static readonly EnteredField Temperature = new("room.temperature", "Temperature", Dimension.Temperature, 230, 340,
        _ => [new(273.15 + 2, 273.15 + 46, $"people work in {new Quantity(275.15, Dimension.Temperature)} to {new Quantity(319.15, Dimension.Temperature)}")]);

    public static readonly EnteredField Humidity = new("room.humidity", "Relative humidity", Dimension.Fraction, 0, 1,
        _ => [new(0.04, 1, $"a room's air holds more than 4 percent")]);

    /// <summary>Of the air flow is restated in, which may be dry.</summary>
    public static readonly EnteredField StandardHumidity = Humidity with { Key = "bench.standard-humidity", Expected = around => [new(0, 0, $"standard air is dry"), .. Humidity.Expected(around)] };

    /// <summary>What the bench is usually set to: its card's, or the last sweep's.</summary>
    public static readonly EnteredField UsualPressure = new("bench.usual-pressure", "Usual test pressure", Dimension.Pressure, 50, 40e3, _ => []);

    public static readonly EnteredField TestPressure = new("sweep.pressure", "Test pressure", Dimension.Pressure, 50, 40e3, around =>
    {
        var ever = new LikelyRange(740, 15.2e3, $"ports are tested at {Quantity.Pressure(740)} to {Quantity.Pressure(15.2e3)}");
        return around[UsualPressure] is { } usual ? [new(0.98 * usual, 1.02 * usual, $"this bench tests at {Quantity.Pressure(usual)}"), ever] : [ever];
    });
}
