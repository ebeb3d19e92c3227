using Portwright.Physics.TestPiece;
using Portwright.Shop.Units;

namespace Portwright.Shop.Record;

/// <summary>Flow readings over a list of lifts on one port at one cut, in one set-up of the head on the bench.</summary>
/// <param name="Bench">The bench card the meter's ranges are taken from.</param>
/// <param name="Range">The range read when a reading does not name another.</param>
/// <param name="TestPressure">The pressure the porter sets; a reading may carry its own.</param>
/// <param name="Fitted">Entry radius, clay or pipe fitted, in words; part of what was measured.</param>
/// <param name="BoreAdapter">Diameter of the bore adapter, m; null where none is used.</param>
/// <param name="SetUp">Names the set-up: two sweeps of one set-up share its scatter. Empty: the sweep is a set-up of its own.</param>
/// <param name="Lifts">Lifts to be asked for, in order; where <paramref name="Steps"/> say more, each of theirs once.</param>
/// <param name="Date">The day it was run, which says which calibration and which day's drift it shares; null: the day its first reading was typed.</param>
/// <param name="Steps">The run, setting by setting; null or empty: <paramref name="Lifts"/> one after another.</param>
public sealed record Sweep(
    Guid Cut,
    Guid Bench,
    FlowDirection Direction,
    string Range,
    Typed TestPressure,
    IReadOnlyList<Typed> Lifts,
    string Fitted = "",
    double? BoreAdapter = null,
    bool PlugSealed = true,
    string Sealing = "",
    string SetUp = "",
    string Notes = "",
    DateOnly? Date = null,
    IReadOnlyList<RunStep>? Steps = null) : Fact
{
    /// <summary>What was fitted and which way the air went: only sweeps alike in this measure the same thing.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public Fitting Fitting => new(Direction, string.Join(' ', Fitted.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).ToLowerInvariant(), BoreAdapter, PlugSealed);
}

/// <summary>What a sweep measured besides the port itself: sweeps of different fittings are never averaged nor compared.</summary>
/// <param name="Fitted">Entry radius, clay or pipe, in small letters; empty for nothing.</param>
/// <param name="BoreAdapter">Diameter, m.</param>
public sealed record Fitting(FlowDirection Direction, string Fitted, double? BoreAdapter, bool PlugSealed)
{
    /// <summary>In words: <c>drawn, clay radius, plug sealed</c>.</summary>
    public string Words
    {
        get
        {
            var words = new List<string> { Direction == FlowDirection.Draw ? "drawn" : "blown", Fitted.Length > 0 ? Fitted : "nothing fitted" };
            if (BoreAdapter is { } bore)
            {
                words.Add(FormattableString.Invariant($"bore adapter {bore * 1000:0.##} mm"));
            }

            words.Add(PlugSealed ? "plug sealed" : "plug open");
            return string.Join(", ", words);
        }
    }
}

/// <summary>One number read off the bench at one lift, as it was read.</summary>
/// <param name="Reading">The meter's number in the range's own unit.</param>
/// <param name="TestPressure">Where it was not the sweep's.</param>
/// <param name="MeterTemperature">Air temperature at the meter, where measured; else the plenum's where the meter takes its air, else the room's.</param>
/// <param name="PlenumTemperature">Air temperature in the plenum, where measured; else the meter's where it takes the plenum's air, else the room's.</param>
/// <param name="Sound">How it sounds: <c>steady</c>, <c>whistles</c>, <c>rattles</c>, or empty.</param>
/// <param name="Pass">The pass of the run it was read in; null where nobody said.</param>
public sealed record FlowReading(
    Guid Sweep,
    Typed Lift,
    Typed Reading,
    string Range = "",
    Typed? TestPressure = null,
    Typed? MeterTemperature = null,
    Typed? PlenumTemperature = null,
    string Sound = "",
    int? Pass = null) : Fact
{
    public override bool IsMeasured => true;
}

/// <summary>What the barometer's figure is.</summary>
public enum PressureKind
{
    // Records hold the name and are read by number too: neither is ever changed.
    /// <summary>Absolute pressure in the room, as a barometer on the wall shows it.</summary>
    Station = 0,

    /// <summary>A weather report's figure, reduced to sea level; the elevation turns it back.</summary>
    SeaLevel = 1,
}

/// <summary>How the moisture of the air was measured.</summary>
public enum HumidityKind
{
    // Records hold the name and are read by number too: neither is ever changed.
    Relative = 0,
    DewPoint = 1,
    WetBulb = 2,
}

/// <summary>Weather in the room, holding from when it was read until the next.</summary>
/// <param name="Of">The sweep or morning check it was taken for.</param>
/// <param name="Elevation">Height of the shop above the sea; required with a sea-level pressure.</param>
public sealed record WeatherReading(
    Guid Of,
    Typed Barometer,
    PressureKind Pressure,
    Typed? Elevation,
    Typed Temperature,
    Typed? Humidity,
    HumidityKind HumidityKind = HumidityKind.Relative) : Fact
{
    public override bool IsMeasured => true;
}

/// <summary>The meter's reading with the port closed off: what leaks past seals and joints.</summary>
/// <param name="Of">The sweep or morning check it was taken for.</param>
public sealed record LeakReading(Guid Of, string Range, Typed Reading, Typed TestPressure) : Fact
{
    public override bool IsMeasured => true;
}
