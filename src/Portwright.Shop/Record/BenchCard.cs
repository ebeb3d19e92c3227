using System.Text.Json.Serialization;
using Portwright.Physics.Air;
using Portwright.Physics.Metering;
using Portwright.Physics.TestPiece;
using Portwright.Shop.Units;

namespace Portwright.Shop.Record;

/// <summary>The bench: its meters, how well each thing on it can be read, and what it has shown of itself.</summary>
/// <param name="StandardAir">The air that flow is restated in.</param>
/// <param name="RestatedAt">The test pressure flow is restated at, Pa.</param>
/// <param name="Doubt">What is not known exactly. An empty card works; it only costs certainty.</param>
/// <param name="Elevation">Height of the shop above the sea, m; null where not known.</param>
public sealed record BenchCard(
    string Name,
    IReadOnlyList<RangeCard> Ranges,
    IReadOnlyList<CheckPlate> Plates,
    AirCard StandardAir,
    double RestatedAt,
    BenchDoubt Doubt,
    double? Elevation = null,
    string Notes = "") : Fact
{
    /// <summary>The range of that name, or null.</summary>
    public RangeCard? RangeNamed(string name) => Ranges.FirstOrDefault(r => r.Name.Equals(name, StringComparison.OrdinalIgnoreCase));

    /// <summary>True where a plate read on one range says how the other stands: they are the same, or share an instrument.</summary>
    public bool SpeaksFor(string range, string other) => range.Equals(other, StringComparison.OrdinalIgnoreCase)
        || (RangeNamed(range) is { } one && RangeNamed(other) is { } two && one.SharesInstrumentWith(two));
}

/// <summary>One range of the bench: a meter and how finely it is read.</summary>
/// <param name="Unit">The unit its scale is read in: <c>%</c>, <c>inH2O</c>, <c>cfm</c>, <c>in</c> (along a tube).</param>
/// <param name="Resolution">The finest step the eye or the display gives, in <see cref="Unit"/>.</param>
/// <param name="Accuracy">Standard uncertainty of the meter's flow as a share, where no calibration says better.</param>
/// <param name="DrawInlet">Where the meter takes its air when drawing.</param>
/// <param name="BlowInlet">Where it does when blowing.</param>
/// <param name="Instrument">The tube or gauge it is read on, by a name that all ranges on it share: the check of one speaks for the others. Empty: its own.</param>
public sealed record RangeCard(
    string Name,
    MeterCard Meter,
    string Unit,
    double Resolution,
    double Accuracy,
    MeterInlet DrawInlet = MeterInlet.Plenum,
    MeterInlet BlowInlet = MeterInlet.PlenumPlusDifferential,
    string Instrument = "")
{
    /// <summary>True where both are read on one instrument that is named.</summary>
    public bool SharesInstrumentWith(RangeCard other) =>
        Instrument.Length > 0 && other is not null && Instrument.Equals(other.Instrument, StringComparison.OrdinalIgnoreCase);
}

/// <summary>A check plate: a hole of certified size to prove the bench with.</summary>
/// <param name="EffectiveArea">Certified effective area, m2.</param>
/// <param name="StandardUncertainty">Of the effective area, m2.</param>
/// <param name="Certificate">Where the figure comes from.</param>
public sealed record CheckPlate(string Name, double EffectiveArea, double StandardUncertainty, string Certificate = "");

/// <summary>
/// Standard uncertainties of the bench, each as one figure. Shares are of the flow (0.004 = 0.4 percent); degrees of freedom say how
/// well a figure is known (null: taken as certain).
/// </summary>
/// <param name="SetUpScatter">Scatter of the flow between set-ups of one head, as a share.</param>
/// <param name="RepeatScatter">Scatter of one reading when repeated without touching anything, as a share.</param>
/// <param name="Drift">Shift of the bench from one day to another, as a share: shared by all sweeps of a day.</param>
/// <param name="Barometer">Pa.</param>
/// <param name="Temperature">K, room, meter and plenum.</param>
/// <param name="Humidity">Relative humidity as a share of one.</param>
/// <param name="TestPressure">Pa: how well the test pressure is set and read.</param>
/// <param name="Lift">m: how well the lift is set.</param>
/// <param name="Calliper">m: how well valve and seat are measured.</param>
/// <param name="Leak">Leak area's own doubt, as a share of the leak.</param>
public sealed record BenchDoubt(
    double SetUpScatter,
    double? SetUpDegrees,
    double RepeatScatter,
    double? RepeatDegrees,
    double Drift,
    double Barometer,
    double Temperature,
    double Humidity,
    double TestPressure,
    double Lift,
    double Leak,
    double Calliper = 0.00003)
{
    /// <summary>
    /// What a bench nobody has looked into yet is taken for: 0.7 percent set-up scatter, 0.3 percent repeat scatter, 0.3 percent drift,
    /// common practice, no source. Wide on purpose.
    /// </summary>
    public static BenchDoubt Unknown { get; } = new(
        SetUpScatter: 0.007,
        SetUpDegrees: 4,
        RepeatScatter: 0.003,
        RepeatDegrees: 4,
        Drift: 0.003,
        Barometer: 100,
        Temperature: 1,
        Humidity: 0.1,
        TestPressure: 25,
        Lift: 0.000025,
        Leak: 0.2);
}

/// <summary>What kind of meter a range is, in the figures a bench card gives (SI).</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "meter")]
[JsonDerivedType(typeof(OrificeCard), "orifice")]
[JsonDerivedType(typeof(PlenumPlateCard), "plenum-plate")]
[JsonDerivedType(typeof(PercentCard), "percent-of-range")]
[JsonDerivedType(typeof(LaminarCard), "laminar")]
[JsonDerivedType(typeof(DirectCard), "direct")]
public abstract record MeterCard;

/// <summary>An orifice plate in a pipe, ISO 5167-2.</summary>
/// <param name="Tube">The manometer tube it is read on as a length; null when read as a pressure.</param>
public sealed record OrificeCard(double PipeDiameter, double Bore, OrificeTaps Taps, TubeCard? Tube = null) : MeterCard;

/// <summary>A thin plate or hole between two plenums.</summary>
public sealed record PlenumPlateCard(double Diameter, double DischargeCoefficient, TubeCard? Tube = null) : MeterCard;

/// <summary>A percent-of-range scale.</summary>
/// <param name="FullScaleFlow">m3/s of calibration air at the full mark.</param>
/// <param name="CalibrationPressure">Test pressure it was calibrated at, Pa.</param>
/// <param name="FullScaleDifferential">Differential at the full mark, Pa.</param>
/// <param name="CalibrationAir">The room's air at its calibration; null: not stated, and standard air is assumed.</param>
/// <param name="Tube">The tube its scale lies along, where a length is read off it instead of percent.</param>
/// <param name="PressureAssumed"><see cref="CalibrationPressure"/> was not stated: the usual one stands in.</param>
/// <param name="DifferentialAssumed"><see cref="FullScaleDifferential"/> was not stated: the usual one stands in.</param>
public sealed record PercentCard(
    double FullScaleFlow,
    double CalibrationPressure,
    RangeScale Scale,
    double FullScaleDifferential,
    AirCard? CalibrationAir = null,
    TubeCard? Tube = null,
    bool PressureAssumed = false,
    bool DifferentialAssumed = false) : MeterCard;

/// <summary>A laminar element.</summary>
/// <param name="FlowAtReference">Volume flow (m3/s) at the reference differential.</param>
/// <param name="ReferenceDifferential">Pa.</param>
/// <param name="ReferenceTemperature">K, of the air it was calibrated in.</param>
public sealed record LaminarCard(double FlowAtReference, double ReferenceDifferential, double ReferenceTemperature, TubeCard? Tube = null) : MeterCard;

/// <summary>A readout that shows volume flow.</summary>
/// <param name="Air">The air the display states or assumes; standard air where it says nothing. Not used when it shows actual volume at the meter.</param>
/// <param name="RestatedAt">The test pressure a display has brought its flow to, Pa; null where it has not.</param>
/// <param name="BasisAssumed">Nobody said what it shows: it is taken as typed, and what it may show otherwise stands in the doubt.</param>
public sealed record DirectCard(ReadoutBasis Basis, AirCard Air, double? RestatedAt = null, bool BasisAssumed = false) : MeterCard;

/// <summary>A state of air on the card: Pa absolute, K, relative humidity as a share of one.</summary>
public sealed record AirCard(double Pressure = 101_325, double Temperature = 293.15, double RelativeHumidity = 0)
{
    /// <summary>As the physics wants it.</summary>
    public StandardAir Air() => new(Pressure, Temperature, RelativeHumidity);
}

/// <summary>A manometer tube: fluid density kg/m3, angle from the horizontal in radians (a vertical tube is pi/2), area of tube over well.</summary>
public sealed record TubeCard(double FluidDensity, double Angle, double WellAreaRatio = 0);

/// <summary>A dated calibration of one range from readings through check plates.</summary>
/// <param name="Leak">The reading with the opening closed off; null when no leak test was made with the calibration.</param>
/// <param name="BeforeWork">Made before the first reading of its day though typed after it; else it counts for what was read after it was typed.</param>
public sealed record Calibration(
    Guid Bench,
    string Range,
    DateOnly Date,
    IReadOnlyList<PlateReading> Readings,
    RoomAir Air,
    string Notes = "",
    PlateReading? Leak = null,
    bool BeforeWork = false) : Fact
{
    public override bool IsMeasured => true;
}

/// <summary>One reading with a check plate in place of the port.</summary>
public sealed record PlateReading(string Plate, string Range, Typed Reading, Typed TestPressure, FlowDirection Direction = FlowDirection.Draw);

/// <summary>The room's air as typed for a check: barometer (station), temperature, relative humidity.</summary>
public sealed record RoomAir(Typed Barometer, Typed Temperature, Typed? RelativeHumidity);

/// <summary>Leak test and check plate: before work, and as often as one likes in the day, each a check of its own.</summary>
/// <param name="Leak">The reading with the opening closed off; null when the leak test was not made.</param>
/// <param name="BeforeWork">Made before the first reading of its day though typed after it; else it was made when it was typed.</param>
/// <param name="MoreLeaks">What was read closed off after <paramref name="Leak"/>: on other ranges, at other pressures, or once more.</param>
public sealed record MorningCheck(
    Guid Bench, DateOnly Date, RoomAir Air, PlateReading? Leak, IReadOnlyList<PlateReading> Plates, string Notes = "", bool BeforeWork = false,
    IReadOnlyList<PlateReading>? MoreLeaks = null) : Fact
{
    /// <summary>All readings with the opening closed off, in the order taken.</summary>
    [JsonIgnore]
    public IEnumerable<PlateReading> Leaks => Leak is null ? MoreLeaks ?? [] : (MoreLeaks ?? []).Prepend(Leak);

    public override bool IsMeasured => true;
}

/// <summary>One head put up again and again: groups of readings, a group a set-up, to tell set-up scatter from repeat scatter.</summary>
/// <param name="Range">The range it was read on; empty in a study written down before it was asked for.</param>
/// <param name="TestPressure">Null: the pressure the bench card restates at.</param>
/// <param name="Air">The room's air; null: standard air.</param>
public sealed record SetUpStudy(
    Guid Bench,
    DateOnly Date,
    string Head,
    IReadOnlyList<IReadOnlyList<Typed>> SetUps,
    string Range = "",
    Typed? TestPressure = null,
    FlowDirection Direction = FlowDirection.Draw,
    RoomAir? Air = null) : Fact
{
    public override bool IsMeasured => true;
}
