using System.Globalization;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Budgets;

/// <summary>What the whole bench has in doubt, and what a plate proved of it.</summary>
public sealed partial class SourceWords
{
    private ILookup<(Guid Bench, DateOnly Day), Kept<Sweep>>? _days;
    private ILookup<Guid, Kept<FlowReading>>? _readings;

    private NamedSource? OfBench(SourceName name, Guid of)
    {
        if (ledger.Find<BenchCard>(of) is not { Fact: { Doubt: var doubt } card }) return null;
        Sentence every = $"every reading of the bench";
        return name.Head switch
        {
            "barometer" => new($"barometer of the bench", Step(doubt.Barometer, Dimension.Barometer), every, [of]),
            "thermometer" => new(
                name.Rest.Length == 0 ? (Sentence)$"thermometer in the room" : $"thermometer {(name.Rest == "meter" ? "at the meter" : "in the plenum")}",
                Step(doubt.Temperature, Dimension.Temperature), every, [of]),
            "hygrometer" => new($"hygrometer of the bench", Share(doubt.Humidity), every, [of]),
            "test pressure gauge" => new($"test pressure, set and read", Step(doubt.TestPressure, Dimension.Pressure), every, [of]),
            "probe" => new($"factor of the probe", Share(Rings.ReducedRing.ProbeFactorDoubt), $"every ring of the bench", [of]),
            "day" => Day(of, doubt, DateOnly.ParseExact(name.Rest, "yyyy-MM-dd", CultureInfo.InvariantCulture)),
            "plate" => Plate(of, card, name.Rest),
            "warmth of the blower" => new($"warmth of the blower's air, nobody read it", null, every, [of]),
            "air between plenum and meter" => new($"air between plenum and meter: one thermometer speaks for both", null, every, [of]),
            _ when Sources.IsAssumed(name.Head) => new(name.Head == Sources.AssumedHead(Bench.AssumedScale.Meaning) ? (Sentence)$"whether the readout is already at 28 or shows what passes the meter, which nobody has said" : $"{name.Head[..name.Head.LastIndexOf(" of scale", StringComparison.Ordinal)]} of range {name.Rest.ToLowerInvariant()}, which the bench card does not state", null, $"every reading on range {name.Rest.ToLowerInvariant()}", [of]),
            "meter" => new($"accuracy of range {name.Rest} by the bench card", card.RangeNamed(name.Rest) is { } range ? Share(range.Accuracy) : null, $"every reading on range {name.Rest}", [of]),
            _ => null,
        };
    }

    private NamedSource Day(Guid bench, BenchDoubt doubt, DateOnly day)
    {
        var count = Days[(bench, day)].Count();
        return new($"shift of the bench on {day}", Share(doubt.Drift), count > 1 ? (Sentence)$"all {count} sweeps of that day" : $"the whole sweep", [bench]);
    }

    private NamedSource Plate(Guid bench, BenchCard card, string name)
    {
        var plate = card.Plates.FirstOrDefault(p => p.Name.Equals(name, StringComparison.OrdinalIgnoreCase));
        string[] ranges = [.. Calibrations(bench).Where(c => c.Fact.Readings.Any(r => r.Plate.Equals(name, StringComparison.OrdinalIgnoreCase))).Select(c => c.Fact.Range).Distinct(StringComparer.OrdinalIgnoreCase)];
        return new(
            $"certificate of plate {name}", plate is null ? null : Step(plate.StandardUncertainty, Dimension.Area),
            ranges.Length == 0 ? Sentence.Empty : $"every reading on range {string.Join(" and ", ranges)}", [bench]);
    }

    private NamedSource? OfCalibration(SourceName name, Guid of)
    {
        if (ledger.Find<Calibration>(of) is not { Fact: var fact }) return OfBallCalibration(name, of) ?? OfMorning(name, of);
        Sentence on = Words(fact), shared = $"every reading on range {fact.Range}";
        if (name.Head == "calibration")
        {
            return name.Rest.Length == 0 ? new($"repeats of the {on}", null, shared, [of])
                : new($"leak not tested, {on}", Share(Bench.MeterFactor.LeakNotTested / Math.Sqrt(3)), shared, [of]);
        }

        if (name.Head != "resolution of calibration") return null;
        if (PlateRead(name, fact) is not { } read) return null;
        Sentence what = name.Rest == "leak" ? (Sentence)$"its leak" : $"plate {read.Plate}";
        return new($"last digit of {AsTyped.Of(read.Reading, read.Range)}, {what}, {on}", LastDigit(fact.Bench, read.Range), shared, [of]);
    }

    private NamedSource? OfBallCalibration(SourceName name, Guid of)
    {
        if (ledger.Find<BallCalibration>(of) is not { Fact: var fact }) return null;
        Sentence on = $"ball in the pipe, {fact.Date}", shared = $"every ball of that size";
        var typed = name.Rest.Split(' ') is [var what, var n] && int.TryParse(n, out var i) && (what == "with" ? fact.With : fact.Without) is { } list && i < list.Count ? list[i] : null;
        return name.Head switch
        {
            "resolution of calibration" when typed is not null => new($"last digit of {AsTyped.Of(typed, fact.Range)}, {on}", LastDigit(fact.Bench, fact.Range), shared, [of]),
            "repeat of calibration" when typed is not null => new($"scatter of {AsTyped.Of(typed, fact.Range)}, {on}", ledger.Find<BenchCard>(fact.Bench) is { } b ? Share(b.Fact.Doubt.RepeatScatter) : null, shared, [of]),
            "calibration" => new($"{on}: {name.Rest}", null, shared, [of]),
            _ => null,
        };
    }

    private NamedSource? OfMorning(SourceName name, Guid of)
    {
        if (ledger.Find<MorningCheck>(of) is not { Fact: var fact }) return null;
        Sentence on = $"morning check of {fact.Date}";
        if (name.Head == "repeat") return new($"repeats of the {on}", null, Sentence.Empty, [of]);
        if (name.Head == "leak") return new($"leak of the {on}", null, $"every plate of that check", [of]);
        var read = name.Head == "resolution of leak of check" ? fact.Leak
            : name.Head.Split(' ') is ["resolution", "of", "plate", var n, ..] && int.TryParse(n, out var i) && i < fact.Plates.Count ? fact.Plates[i] : null;
        return read is null ? null : new($"last digit of {AsTyped.Of(read.Reading, read.Range)}, {on}", LastDigit(fact.Bench, read.Range), Sentence.Empty, [of]);
    }

    private IEnumerable<Kept<Calibration>> Calibrations(Guid bench) => ledger.All<Calibration>().Where(c => c.Fact.Bench == bench);

    /// <summary>Sweeps by the day they share, gathered once.</summary>
    private ILookup<(Guid Bench, DateOnly Day), Kept<Sweep>> Days => _days ??= ledger.All<Sweep>().ToLookup(s => (s.Fact.Bench, DayOf(s)));

    private ILookup<Guid, Kept<FlowReading>> Readings => _readings ??= ledger.All<FlowReading>().ToLookup(r => r.Fact.Sweep);

    private DateOnly DayOf(Kept<Sweep> sweep) => SweepReduction.WhenOf(ledger, sweep, [.. Readings[sweep.Id].Take(1)]).Day;

    /// <summary>One step of the range's scale, lying evenly (JCGM 100:2008, F.2.2.1).</summary>
    private Quantity? LastDigit(Guid bench, string range)
    {
        if (ledger.Find<BenchCard>(bench)?.Fact.RangeNamed(range) is not { } card) return null;
        var dimension = Bench.MeterOf.ReadingDimension(card);
        return Step(new Typed(card.Resolution, card.Unit, "").Si(dimension) / Math.Sqrt(12), dimension);
    }
}
