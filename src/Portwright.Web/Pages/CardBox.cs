using Portwright.Shop.Entering;
using Portwright.Shop.Record;
using Portwright.Shop.Units;
using Portwright.Web.Forms;

namespace Portwright.Web.Pages;

/// <summary>One box of the bench card: where its number stands and how it is printed.</summary>
/// <param name="Difference">True for a doubt of a temperature or a pressure: a difference, that knows no zero point.</param>
internal sealed record CardBox(string Group, string Name, string Label, Dimension Dimension, double? Value, string? Hint = null, bool Difference = false)
{
    private const string AirHumidity = "air-humidity";

    public static IReadOnlyList<CardBox> Of(BenchCard card)
    {
        var d = card.Doubt;
        return
        [
            new("shop", "elevation", "Height above the sea", Dimension.Elevation, card.Elevation, "Only needed for a weather report's barometer."),
            new("shop", "restated", "Flow is restated at", Dimension.Pressure, card.RestatedAt),
            new("air", "air-pressure", "Pressure", Dimension.Barometer, card.StandardAir.Pressure),
            new("air", "air-temperature", "Temperature", Dimension.Temperature, card.StandardAir.Temperature),
            new("air", AirHumidity, "Relative humidity", Dimension.Fraction, card.StandardAir.RelativeHumidity),
            new("doubt", "set-up", "Set-up to set-up", Dimension.Fraction, d.SetUpScatter, "Of the flow; better found by a study of set-ups."),
            new("doubt", "repeat", "Reading to reading", Dimension.Fraction, d.RepeatScatter, "Of the flow."),
            new("doubt", "drift", "Day to day", Dimension.Fraction, d.Drift, "Of the flow."),
            new("doubt", "leak", "Of the leak itself", Dimension.Fraction, d.Leak),
            new("doubt", "humidity", "Humidity", Dimension.Fraction, d.Humidity),
            new("doubt", "lift", "Setting of the lift", Dimension.Length, d.Lift),
            new("doubt", "calliper", "Measured lengths", Dimension.Length, d.Calliper, "Of valve and seat."),
            new("doubt", "pressure", "Test pressure", Dimension.Pressure, d.TestPressure),
            new("doubt", "barometer", "Barometer", Dimension.Pressure, d.Barometer, Difference: true),
            new("doubt", "temperature", "Temperature", Dimension.Temperature, d.Temperature, Difference: true),
        ];
    }

    public static BenchCard Put(BenchCard card, Dictionary<string, double?> v) => card with
    {
        Elevation = v["elevation"],
        RestatedAt = v["restated"] ?? card.RestatedAt,
        StandardAir = new AirCard(v["air-pressure"] ?? card.StandardAir.Pressure, v["air-temperature"] ?? card.StandardAir.Temperature, v[AirHumidity] ?? 0),
        Doubt = card.Doubt with
        {
            SetUpScatter = v["set-up"] ?? 0,
            RepeatScatter = v["repeat"] ?? 0,
            Drift = v["drift"] ?? 0,
            Leak = v["leak"] ?? 0,
            Humidity = v["humidity"] ?? 0,
            Lift = v["lift"] ?? 0,
            Calliper = v["calliper"] ?? 0,
            TestPressure = v["pressure"] ?? 0,
            Barometer = v["barometer"] ?? 0,
            Temperature = v["temperature"] ?? 0,
        },
    };

    public string UnitName(UnitSystem units) => Difference && Dimension == Dimension.Temperature
        ? units == UnitSystem.UsCustomary ? "°F apart" : "°C apart"
        : Print.UnitName(Dimension, units);

    public string? Shown(UnitSystem units) => Value is not { } si ? null
        : Difference && Dimension == Dimension.Temperature ? Print.Bare(Unit.Default(Dimension, units) is var unit ? si / unit.Factor : si, Dimension.Ratio, units, 2)
        : Print.Bare(si, Dimension, units, Dimension == Dimension.Length ? 4 : Dimension == Dimension.Fraction ? 2 : null);

    /// <summary>The number in the box; one left as it was printed keeps what stood behind it, for printing rounds.</summary>
    public double? Read(Typing typed, UnitSystem units)
    {
        if (typed.Raw(Name) == Shown(units))
        {
            return Value;
        }

        return Difference && Dimension == Dimension.Temperature
            ? typed.Number(Name, Label, Dimension.Ratio)?.Value * Unit.Default(Dimension, units).Factor
            : Name == AirHumidity ? typed.Number(Name, EnteredRoom.StandardHumidity, Surroundings.None)?.Si(Dimension)
            : typed.Si(Name, Label, Dimension);
    }
}
