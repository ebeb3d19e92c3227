using Portwright.Physics.Metering;
using Portwright.Physics.TestPiece;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Shop.Units;
using Portwright.Web.Forms;

namespace Portwright.Web.Pages;

/// <summary>A box of the range form.</summary>
/// <param name="MayMiss">May stay empty: the usual is assumed, marked so, and stands in the doubt.</param>
internal sealed record RangeField(string Name, string Label, Dimension Dimension, Func<MeterCard, double?> Of, string? Hint = null, bool MayMiss = false);

/// <summary>The five kinds of meter as a form: which boxes each has, and how they make a range.</summary>
internal static class RangeForm
{
    public static IReadOnlyList<(string Kind, string Words)> Kinds { get; } =
    [
        ("percent", "percent of a range"),
        ("direct", "flow on a display"),
        ("plate", "hole between two plenums"),
        ("orifice", "orifice plate in a pipe"),
        ("laminar", "laminar element"),
    ];

    public static string KindOf(MeterCard meter) => meter switch
    {
        PercentCard => "percent",
        DirectCard => "direct",
        PlenumPlateCard => "plate",
        OrificeCard => "orifice",
        _ => "laminar",
    };

    public static IReadOnlyList<RangeField> FieldsOf(string kind) => kind switch
    {
        "percent" =>
        [
            new("full", "Flow at the full mark", Dimension.VolumeFlow, m => (m as PercentCard)?.FullScaleFlow),
            new("at", "Test pressure it was set at", Dimension.Pressure, m => m is PercentCard { PressureAssumed: false } p ? p.CalibrationPressure : null, "It moves every flow read on the range: set at 10 in place of 28 inH2O, about 2 percent. Empty where nobody knows: 28 inH2O is assumed, and its doubt stands in every result.", true),
            new("differential", "Differential at the full mark", Dimension.Pressure, m => m is PercentCard { DifferentialAssumed: false } p ? p.FullScaleDifferential : null, "Across the range's hole; on few cards. Empty where nobody knows: 6 inH2O is assumed, and its doubt stands in every result.", true),
            new("air-pressure", "Barometer when it was set", Dimension.Barometer, m => (m as PercentCard)?.CalibrationAir?.Pressure, "Empty where nobody knows: standard air is assumed, and its doubt stands in every result.", true),
            new("air-temperature", "Air temperature when it was set", Dimension.Temperature, m => (m as PercentCard)?.CalibrationAir?.Temperature, "With the barometer, or empty.", true),
        ],
        "plate" =>
        [
            new("diameter", "Diameter of the hole", Dimension.Length, m => (m as PlenumPlateCard)?.Diameter),
            new("coefficient", "Discharge coefficient", Dimension.Ratio, m => (m as PlenumPlateCard)?.DischargeCoefficient),
        ],
        "orifice" =>
        [
            new("pipe", "Inside of the pipe", Dimension.Length, m => (m as OrificeCard)?.PipeDiameter),
            new("bore", "Bore of the plate", Dimension.Length, m => (m as OrificeCard)?.Bore),
        ],
        "laminar" =>
        [
            new("full", "Flow at the reference differential", Dimension.VolumeFlow, m => (m as LaminarCard)?.FlowAtReference),
            new("differential", "Reference differential", Dimension.Pressure, m => (m as LaminarCard)?.ReferenceDifferential),
            new("temperature", "Temperature it was calibrated at", Dimension.Temperature, m => (m as LaminarCard)?.ReferenceTemperature),
        ],
        _ => [],
    };

    public static string? Shown(RangeField field, RangeCard? range, UnitSystem units) =>
        range is not null && field.Of(range.Meter) is { } value ? Print.Whole(value, field.Dimension, units) : null;

    public static string? Tube(RangeCard? range, Func<TubeCard, double> of, Dimension dimension, UnitSystem units) =>
        TubeOf(range?.Meter) is { } tube ? Print.Whole(of(tube), dimension, units) : null;

    public static string UnitOf(string kind, bool tube, UnitSystem units) => kind switch
    {
        "percent" => "%",
        "direct" => Print.UnitName(Dimension.VolumeFlow, units),
        _ when tube => Print.UnitName(Dimension.Length, units),
        _ => Print.UnitName(Dimension.Pressure, units),
    };

    public static string Resolution(string kind) => kind is "percent" ? "0.5" : "0.1";

    /// <summary>Where the meter takes its air while the bench draws.</summary>
    public static IReadOnlyList<(string Value, string Words)> DrawInlets { get; } =
    [
        (nameof(MeterInlet.Plenum), "behind the port, out of the plenum"),
        (nameof(MeterInlet.Room), "from the room"),
    ];

    /// <summary>The same while it blows.</summary>
    public static IReadOnlyList<(string Value, string Words)> BlowInlets { get; } =
    [
        (nameof(MeterInlet.PlenumPlusDifferential), "between blower and plenum"),
        (nameof(MeterInlet.Room), "from the room, before the blower"),
        (nameof(MeterInlet.Plenum), "out of the plenum"),
    ];

    /// <summary>What a readout may show; first what is asked later.</summary>
    public static IReadOnlyList<(string Value, string Words)> Bases { get; } =
        [(NotSaid, "not known yet: it is asked with the first numbers"), .. Enum.GetValues<ReadoutBasis>().Select(b => (b.ToString(), MeterWords.Basis(b)))];

    public static string BasisOf(RangeCard? range) => range?.Meter is DirectCard { BasisAssumed: false } direct ? direct.Basis.ToString() : NotSaid;

    private const string NotSaid = "not-said";

    /// <summary>The range as typed; null where a box could not be taken.</summary>
    /// <param name="restatedAt">Of the bench card, Pa.</param>
    public static RangeCard? Read(Typing typed, string kind, string name, RangeCard? old, UnitSystem units, double restatedAt)
    {
        var values = FieldsOf(kind).ToDictionary(
            f => f.Name,
            f => old is not null && typed.Raw(f.Name) == Shown(f, old, units) && f.Of(old.Meter) is { } stood ? stood
                : f.MayMiss ? typed.Si(f.Name, f.Label, f.Dimension) : (double?)typed.NeededSi(f.Name, f.Label, f.Dimension));
        TubeCard? tube = null;
        if (typed.Si("fluid", "Density of the fluid", Dimension.Density) is { } density)
        {
            tube = new TubeCard(density, typed.Si("angle", "Angle of the tube", Dimension.Angle) ?? Math.PI / 2, TubeOf(old?.Meter)?.WellAreaRatio ?? 0);
        }

        // A range that is on the card keeps the unit it is read in: its resolution is stated in it.
        var kept = old is not null && KindOf(old.Meter) == kind && TubeOf(old.Meter) is null == tube is null;
        var unit = kept ? old!.Unit : UnitOf(kind, tube is not null, units);
        var resolution = typed.Needed("resolution", "Read to", Dimension.Ratio)?.Value ?? double.NaN;
        var accuracy = typed.NeededSi("accuracy", "Accuracy", Dimension.Fraction);
        if (kind == "percent" && values["air-pressure"] is null != values["air-temperature"] is null)
        {
            typed.Refuse(values["air-pressure"] is null ? "air-pressure" : "air-temperature", "Of the air it was set in one number is missing: type barometer and temperature, or leave both empty.");
        }

        if (!typed.IsGood)
        {
            return null;
        }

        double Of(string box) => values[box] ?? double.NaN;
        MeterCard meter = kind switch
        {
            "percent" => Percent(values, typed.Choice("scale", RangeScale.SquareRoot), old?.Meter as PercentCard),
            "plate" => new PlenumPlateCard(Of("diameter"), Of("coefficient"), tube),
            "orifice" => new OrificeCard(Of("pipe"), Of("bore"), typed.Choice("taps", OrificeTaps.Corner), tube),
            "laminar" => new LaminarCard(Of("full"), Of("differential"), Of("temperature"), tube),
            _ => Direct(typed.Raw("basis") ?? BasisOf(old), old?.Meter as DirectCard, restatedAt),
        };
        var range = new RangeCard(name, meter, unit, resolution, accuracy, typed.Choice("draw-inlet", old?.DrawInlet ?? MeterInlet.Plenum), typed.Choice("blow-inlet", old?.BlowInlet ?? MeterInlet.PlenumPlusDifferential), typed.Text("instrument", "Instrument"));
        try
        {
            // The physics says whether such a meter can be.
            MeterOf.Range(range);
            return range;
        }
        catch (ArgumentException wrong)
        {
            typed.Refuse(FieldsOf(kind).FirstOrDefault()?.Name ?? "name", $"Such a meter cannot be: {wrong.Message.Split(" (Parameter", 2)[0]}");
            return null;
        }
    }

    private static DirectCard Direct(string basis, DirectCard? old, double restatedAt) => !Enum.TryParse<ReadoutBasis>(basis, out var said)
        ? StandInBench.Readout(ReadoutMeaning.Unsaid)
        : new DirectCard(said, old?.Air ?? new AirCard(), said == ReadoutBasis.Restated ? old?.RestatedAt ?? restatedAt : null);

    /// <summary>What is not typed is assumed, and marked so.</summary>
    private static PercentCard Percent(Dictionary<string, double?> values, RangeScale scale, PercentCard? old) => new(
        values["full"] ?? double.NaN,
        values["at"] ?? AssumedScale.TestPressure,
        scale,
        values["differential"] ?? AssumedScale.Differential,
        values["air-pressure"] is { } pressure && values["air-temperature"] is { } temperature ? new AirCard(pressure, temperature, old?.CalibrationAir?.RelativeHumidity ?? 0) : null,
        old?.Tube,
        values["at"] is null,
        values["differential"] is null);

    private static TubeCard? TubeOf(MeterCard? meter) => meter switch
    {
        OrificeCard o => o.Tube,
        PlenumPlateCard p => p.Tube,
        LaminarCard l => l.Tube,
        _ => null,
    };
}
