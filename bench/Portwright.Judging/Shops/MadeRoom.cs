using Portwright.Judging.Chance;
using Portwright.Physics.Air;
using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Judging.Shops;

/// <summary>The air of the room, and what the instruments on its wall show of it.</summary>
public sealed class MadeRoom
{
    private readonly Draw _draw;
    private readonly Pencil _pencil;
    private readonly (double Pressure, double Temperature, double Humidity) _off;
    private readonly double _usual;

    /// <param name="doubt">The bench's true doubts: instruments are off by so much, the same every day.</param>
    public MadeRoom(BenchDoubt doubt, Pencil pencil, Draw draw)
    {
        (_draw, _pencil) = (draw, pencil);
        _off = (draw.Normal(doubt.Barometer), draw.Normal(doubt.Temperature), draw.Normal(doubt.Humidity));
        _usual = draw.Between(92_000, 101_500);
        HasHygrometer = draw.Chance(0.8);
        NextDay();
    }

    public bool HasHygrometer { get; }

    public AirState Air { get; private set; }

    public void NextDay() => Air = AirState.FromRelativeHumidity(_usual + _draw.Normal(700), _draw.Between(289, 301), _draw.Between(0.25, 0.75));

    /// <summary>The room warms while the bench runs.</summary>
    public void Later() => Air = AirState.FromRelativeHumidity(
        Air.Pressure + _draw.Normal(30), Air.Temperature + _draw.Between(-0.1, 0.5), Math.Clamp(Air.RelativeHumidity + _draw.Normal(0.01), 0.15, 0.9));

    /// <summary>As typed with a check, a ring or a ball.</summary>
    public RoomAir Typed() => new(Barometer, Temperature, Humidity);

    /// <summary>As typed for a sweep.</summary>
    public WeatherReading Weather(Guid sweep) => new(sweep, Barometer, PressureKind.Station, null, Temperature, Humidity);

    private Typed Barometer => _pencil.Barometer(Air.Pressure + _off.Pressure);

    private Typed Temperature => _pencil.Temperature(Air.Temperature + _off.Temperature);

    private Typed? Humidity => HasHygrometer ? Pencil.Rounded(Math.Clamp(Air.RelativeHumidity + _off.Humidity, 0.05, 0.98) * 100, 1, "%") : null;
}
