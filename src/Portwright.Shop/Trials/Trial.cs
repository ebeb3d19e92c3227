using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Rings;
using Portwright.Shop.Sections;

namespace Portwright.Shop.Trials;

/// <summary>Tries an entry before it is saved, while the porter still stands before the gauge.</summary>
public static class Trial
{
    /// <summary>The sentence that says why the entry cannot be an air flow or the air of a room; null where it can be reduced.</summary>
    /// <param name="ledger">The record without the entry.</param>
    public static string? Refuses(Ledger ledger, Entry entry)
    {
        try
        {
            return entry.Fact switch
            {
                Sweep sweep when ledger.Find<BenchCard>(sweep.Bench) is { } bench =>
                    ChokedPressure.Words(sweep.TestPressure, sweep.Direction, bench.Fact.StandardAir.Air().State),
                FlowReading reading when ledger.Find<Sweep>(reading.Sweep) is { } sweep =>
                    Refuses(new Reductions(ledger.With([entry])).Of(sweep), entry.Subject),
                LeakReading leak when ledger.Find<Sweep>(leak.Of) is { } sweep => Leak(ledger, leak, sweep),
                WeatherReading weather when BenchOf(ledger, weather.Of) is { } bench => Air(RoomState.Of(weather, bench)),
                MorningCheck check when ledger.Find<BenchCard>(check.Bench) is { } bench =>
                    Morning.Measure(Of(entry, check), bench, ledger).Remarks is [var first, ..] ? first : null,
                Calibration calibration when ledger.Find<BenchCard>(calibration.Bench) is { } bench => Fit(Of(entry, calibration), bench),
                SetUpStudy study when ledger.Find<BenchCard>(study.Bench) is { } bench => Study(study, bench),
                Section section => SectionShape.Of(section, out var problem) is null ? problem : null,
                BallReading ball when ledger.Find<BallCheck>(ball.Check) is { Fact: var check } =>
                    Held(ledger, check.Cut, check.Setting, check.Air, ball.Reading),
                VolumeReading { Volume: var volume } when volume.Si(Units.Dimension.Volume) <= 0 => $"A volume of {volume.Text} is none. Type the burette's number in cc.",
                BallCheck check => Stands(ledger, check.Cut, check.Setting, check.Air),
                Ring { BenchReading: null } ring => Stands(ledger, ring.Cut, ring.Setting, ring.Air),
                Ring { BenchReading: { } read } ring => Held(ledger, ring.Cut, ring.Setting, ring.Air, read),
                ProbeReading probe when ledger.Find<Ring>(probe.Ring) is { } ring => RingReduction.Refuses(new Reductions(ledger), ring, Of(entry, probe)),
                WallPoint { Thickness: var thick } when thick.Si(Units.Dimension.Length) is <= 0 or > 0.05 =>
                    $"The thickness {thick.Text} cannot be a wall: type it with its unit, such as .180 in.",
                _ => null,
            };
        }
        catch (ArgumentException trouble)
        {
            return Refusal.Sentence(trouble);
        }
    }

    /// <summary>The same for a reading whose sweep is already reduced with it.</summary>
    public static string? Refuses(ReducedSweep with, Guid reading) => with.Refused.FirstOrDefault(r => r.Reading.Id == reading)?.Why;

    private static string? Stands(Ledger ledger, Guid cut, BenchSetting setting, RoomAir? air)
    {
        _ = new HeldReading(new Reductions(ledger), cut, setting, air, BenchMoment.Last);
        return null;
    }

    private static string? Held(Ledger ledger, Guid cut, BenchSetting setting, RoomAir? air, Units.Typed reading)
    {
        var area = new HeldReading(new Reductions(ledger), cut, setting, air, BenchMoment.Last).EffectiveArea(reading, "trial");
        return area.Value > 0 && double.IsFinite(area.Value)
            ? null
            : $"{reading.Text} is no flow through the port: it is not above the leak. Look at the range, the unit and the number.";
    }

    private static string? Leak(Ledger ledger, LeakReading leak, Kept<Sweep> sweep)
    {
        var bench = ledger.Get<BenchCard>(sweep.Fact.Bench);
        var inputs = new SweepInputs(ledger, sweep, bench, BenchMoment.Last);
        _ = inputs.For(leak.Range, int.MaxValue, null).Reduce(leak.Reading, leak.TestPressure, sweep.Fact.Direction, null, null, "leak");
        return null;
    }

    // Asking for the speed of sound makes the air say whether it can be air.
    private static string? Air(RoomState room) =>
        double.IsFinite(Physics.Air.AirState.FromRelativeHumidity(room.Pressure, room.Temperature, room.RelativeHumidity).Density)
            ? null
            : "No density can be worked out from this air. Look at barometer, temperature and humidity, and their units.";

    private static string? Fit(Kept<Calibration> calibration, Kept<BenchCard> bench)
    {
        var factor = MeterFactor.Fit(calibration, bench).Factor;
        return double.IsFinite(factor.Value) && factor.Value > 0
            ? null
            : "No meter factor can be worked out from these readings: the plate must read more than the leak. Look at the range and the units.";
    }

    private static string? Study(SetUpStudy study, Kept<BenchCard> bench) => SetUpScatter.Of(study, bench) is { } scatter
        ? scatter.Remarks.FirstOrDefault(_ => study.Range.Length > 0)
        : "Fewer than two set-ups of the study hold a reading that can be an air flow. Look at the range and the unit, and type a line for each set-up.";

    private static Kept<BenchCard>? BenchOf(Ledger ledger, Guid of) =>
        ledger.Find<Sweep>(of) is { } sweep ? ledger.Find<BenchCard>(sweep.Fact.Bench) : null;

    private static Kept<T> Of<T>(Entry entry, T fact)
        where T : Fact => new(entry.Subject, fact, entry, int.MaxValue);
}
