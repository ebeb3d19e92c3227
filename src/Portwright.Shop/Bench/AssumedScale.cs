using Portwright.Physics.Metering;
using Portwright.Shop.Record;

namespace Portwright.Shop.Bench;

/// <summary>
/// What a percent scale was set at, or what a readout shows, and nobody stated. The usual is assumed, and how far the result would move with what else is plausible
/// stands in the doubt of everything read on the scale. A check plate read on it feels the same, so that a calibration takes it out again.
/// </summary>
public static class AssumedScale
{
    /// <summary>Test pressure a scale is taken to have been set at, Pa: 28 inH2O; common practice, no source.</summary>
    public const double TestPressure = 28 * InchOfWater;

    /// <summary>Differential at the full mark, Pa: 6 inH2O; common practice, no source.</summary>
    public const double Differential = 6 * InchOfWater;

    /// <summary>Some benches are set at 10 inH2O; common practice, no source.</summary>
    private const double PlausibleTestPressure = 10 * InchOfWater;

    /// <summary>Some columns are twice as long; common practice, no source.</summary>
    private const double PlausibleDifferential = 12 * InchOfWater;

    /// <summary>Names the cause: what a readout shows.</summary>
    internal const string Meaning = "meaning";

    /// <summary>Pa in an inch of water at 4 degC (NIST SP 811).</summary>
    private const double InchOfWater = 249.08891;

    /// <summary>A warm day, 500 m above the sea; our own judgement, no source.</summary>
    private static readonly AirCard PlausibleAir = new(95_500, 303.15, 0.5);

    /// <summary>What was assumed of a range, in words that follow "assumed".</summary>
    public static IReadOnlyList<string> Words(RangeCard range)
    {
        ArgumentNullException.ThrowIfNull(range);
        return range.Meter is DirectCard { BasisAssumed: true } ? ["that its readout is already at 28"] : range.Meter is not PercentCard p ? [] :
        [
            .. p.PressureAssumed ? ["the test pressure it was set at"] : Array.Empty<string>(),
            .. p.DifferentialAssumed ? ["the differential at its full mark"] : Array.Empty<string>(),
            .. p.CalibrationAir is null ? ["the air it was set in"] : Array.Empty<string>(),
        ];
    }

    /// <summary>Of each assumption the name of the cause and the meter as it would be otherwise. Ranges that share an instrument were set alike.</summary>
    internal static IReadOnlyList<(string Source, IMeter Otherwise)> Of(Guid bench, RangeCard range)
    {
        var scale = range.Instrument.Length > 0 ? range.Instrument : range.Name;
        if (range.Meter is not PercentCard p)
        {
            return range.Meter is DirectCard { BasisAssumed: true }
                ? [(Sources.AssumedOf(bench, scale, Meaning), MeterOf.Range(range with { Meter = StandInBench.Readout(ReadoutMeaning.AtMeter) }))]
                : [];
        }

        IMeter With(PercentCard card) => MeterOf.Range(range with { Meter = card });
        var all = new List<(string, IMeter)>(3);
        if (p.PressureAssumed)
        {
            all.Add((Sources.AssumedOf(bench, scale, "test pressure"), With(p with { CalibrationPressure = PlausibleTestPressure })));
        }

        if (p.DifferentialAssumed)
        {
            all.Add((Sources.AssumedOf(bench, scale, "differential"), With(p with { FullScaleDifferential = PlausibleDifferential })));
        }

        if (p.CalibrationAir is null)
        {
            all.Add((Sources.AssumedOf(bench, scale, "air"), With(p with { CalibrationAir = PlausibleAir })));
        }

        return all;
    }
}
