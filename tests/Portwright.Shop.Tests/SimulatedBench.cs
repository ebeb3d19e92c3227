using Portwright.Physics.Air;
using Portwright.Physics.Metering;
using Portwright.Physics.TestPiece;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Shop.Tests;

/// <summary>
/// A bench whose truth is known: it shows the readings a port of given effective area would give, and writes them into a ledger as a
/// porter would.
/// </summary>
internal sealed class SimulatedBench
{
    public static readonly DateTimeOffset Morning = new(2025, 3, 3, 8, 0, 0, TimeSpan.Zero);

    private readonly List<Entry> _entries = [];
    private DateTimeOffset _now = Morning;

    public SimulatedBench(RangeCard range, BenchDoubt? doubt = null, IReadOnlyList<CheckPlate>? plates = null)
    {
        Range = range;
        BenchId = Guid.CreateVersion7();
        JobId = Guid.CreateVersion7();
        Card = new BenchCard("shop bench", [range], plates ?? [], new AirCard(), 28 * UnitFactors.InchOfWater, doubt ?? BenchDoubt.Unknown);
        Add(BenchId, null, Card);
        Add(JobId, JobId, new Job("a job", "", new EnginePlan(Cylinders: 4, IntakeCam: new CamLift(0.0085, 1.5, 0.0002))));
        HeadId = Add(new Head("head A"));
        PortId = Add(new Port(HeadId, PortKind.Intake, 1, false, new ValveData(0.050, Math.PI / 4, 0.0015, 0.044, 0.008)));
    }

    public RangeCard Range { get; }

    public BenchCard Card { get; }

    public Guid BenchId { get; }

    public Guid JobId { get; }

    public Guid HeadId { get; }

    public Guid PortId { get; }

    public Ledger Ledger => Ledger.Of(_entries);

    public IReadOnlyList<Entry> Entries => _entries;

    /// <summary>What the air really is.</summary>
    public AirState Room { get; set; } = AirState.FromRelativeHumidity(99_500, 294.5, 0.45);

    /// <summary>What the instruments on the wall show, where that is not the truth.</summary>
    public (double Pressure, double Temperature, double Humidity)? Shown { get; set; }

    /// <summary>How warm the air really is in the plenum and at the meter, K; null: as the room.</summary>
    public (double? Plenum, double? Meter) Warmth { get; set; }

    /// <summary>What the meter's flow must really be multiplied by.</summary>
    public double TrueFactor { get; set; } = 1;

    public double LeakArea { get; set; }

    public void NextDay() => _now = _now.AddDays(1);

    /// <summary>The clock on the wall, of the day it is.</summary>
    public void At(int hour, int minute = 0) => _now = new DateTimeOffset(_now.Date.AddHours(hour).AddMinutes(minute), TimeSpan.Zero);

    public DateOnly Today => DateOnly.FromDateTime(_now.Date);

    public Guid Cut(int number)
    {
        return Add(new Cut(PortId, number, "", DateOnly.FromDateTime(_now.Date)));
    }

    public Guid Sweep(Guid cut, FlowDirection direction = FlowDirection.Draw, double testPressure = 28, string setUp = "")
    {
        var sweep = Add(new Sweep(cut, BenchId, direction, Range.Name, Typed.Of(testPressure, "inH2O"), [], SetUp: setUp));
        var (pressure, temperature, humidity) = Shown ?? (Room.Pressure, Room.Temperature, Room.RelativeHumidity);
        Add(new WeatherReading(
            sweep, Typed.Of(pressure, "Pa"), PressureKind.Station, null, Typed.Of(temperature, "K"), Typed.Of(humidity * 100, "%")));
        return sweep;
    }

    /// <summary>Reads the port at a lift (m). The reading is exact unless <paramref name="misread"/> changes it.</summary>
    /// <param name="truePressure">Test pressure that really stood, Pa; the shown one where null.</param>
    public Guid Read(
        Guid sweep, double lift, double effectiveArea, Func<double, double>? misread = null, double? truePressure = null, double testPressure = 28)
    {
        var direction = Ledger.Get<Sweep>(sweep).Fact.Direction;
        var conditions = Conditions(direction, truePressure ?? testPressure * UnitFactors.InchOfWater);
        var reading = TestPieceReduction.ReadingFor(MeterOf.Range(Range), effectiveArea, TrueFactor, conditions, LeakArea);
        reading = misread?.Invoke(reading) ?? reading;
        return Add(new FlowReading(sweep, Typed.Of(lift, "m"), InUnit(reading), "", Typed.Of(testPressure, "inH2O")));
    }

    public Guid ReadLeak(Guid sweep, double testPressure = 28)
    {
        var direction = Ledger.Get<Sweep>(sweep).Fact.Direction;
        var conditions = Conditions(direction, testPressure * UnitFactors.InchOfWater);
        var reading = TestPieceReduction.ReadingFor(MeterOf.Range(Range), LeakArea, TrueFactor, conditions);
        return Add(new LeakReading(sweep, Range.Name, InUnit(reading), Typed.Of(testPressure, "inH2O")));
    }

    public PlateReading ReadPlate(string plate, double effectiveArea, double testPressure = 28)
    {
        var conditions = Conditions(FlowDirection.Draw, testPressure * UnitFactors.InchOfWater);
        var reading = TestPieceReduction.ReadingFor(MeterOf.Range(Range), effectiveArea, TrueFactor, conditions, LeakArea);
        return new PlateReading(plate, Range.Name, InUnit(reading), Typed.Of(testPressure, "inH2O"));
    }

    /// <summary>What the meter shows while the port passes an effective area (m2).</summary>
    public Typed Shows(double effectiveArea, FlowDirection direction, double testPressure = 28) => InUnit(TestPieceReduction.ReadingFor(
        MeterOf.Range(Range), effectiveArea, TrueFactor, Conditions(direction, testPressure * UnitFactors.InchOfWater), LeakArea));

    public RoomAir Air() => new(Typed.Of(Room.Pressure, "Pa"), Typed.Of(Room.Temperature, "K"), Typed.Of(Room.RelativeHumidity * 100, "%"));

    public Guid Add(Fact fact, Guid? job)
    {
        var id = Guid.CreateVersion7(_now);
        Add(id, job, fact);
        return id;
    }

    public Guid Add(Fact fact) => Add(fact, fact is Calibration or MorningCheck or SetUpStudy or BallCalibration ? null : JobId);

    public void Put(Entry entry) => _entries.Add(entry);

    private void Add(Guid id, Guid? job, Fact fact)
    {
        _now = _now.AddSeconds(20);
        _entries.Add(Entry.About(id, job, fact, _now));
    }

    private TestConditions Conditions(FlowDirection direction, double testPressure) =>
        new(Room, testPressure, direction, Warmth.Plenum ?? Room.Temperature, Warmth.Meter ?? Room.Temperature, direction == FlowDirection.Draw ? Range.DrawInlet : Range.BlowInlet);

    private Typed InUnit(double si) => Typed.Of(si / Typed.Of(1, Range.Unit).Si(MeterOf.ReadingDimension(Range)), Range.Unit);
}

internal static class UnitFactors
{
    /// <summary>Pa in an inch of water at 4 degC (NIST SP 811).</summary>
    public const double InchOfWater = 249.08891;
}

/// <summary>One bench range of each kind of meter.</summary>
internal static class Ranges
{
    public static IReadOnlyList<RangeCard> OfEachKind { get; } =
    [
        new("orifice", new OrificeCard(0.1016, 0.060, OrificeTaps.Flange), "inH2O", 0.02, 0.006),
        new("plate", new PlenumPlateCard(0.060, 0.605), "inH2O", 0.02, 0.006),
        new("tube", new PlenumPlateCard(0.060, 0.605, new TubeCard(826, 0.35)), "in", 0.02, 0.006),
        new("percent", new PercentCard(0.16, 28 * UnitFactors.InchOfWater, RangeScale.SquareRoot, 2000, new AirCard()), "%", 0.1, 0.006),
        new("percent of pressure", new PercentCard(0.16, 28 * UnitFactors.InchOfWater, RangeScale.Linear, 2000, new AirCard()), "%", 0.1, 0.006),
        new("percent on a tube", new PercentCard(0.16, 28 * UnitFactors.InchOfWater, RangeScale.SquareRoot, 2000, new AirCard(), new TubeCard(826, 0.35)), "in", 0.02, 0.006),
        new("laminar", new LaminarCard(0.15, 1500, 293.15), "inH2O", 0.01, 0.006),
        new("direct, actual", new DirectCard(ReadoutBasis.ActualAtMeter, new AirCard()), "cfm", 0.1, 0.006),
        new("direct, corrected", new DirectCard(ReadoutBasis.StandardAirCorrected, new AirCard()), "cfm", 0.1, 0.006),
        new("direct, restated", new DirectCard(ReadoutBasis.Restated, new AirCard(), 28 * UnitFactors.InchOfWater), "cfm", 0.1, 0.006),
        new("direct, assumed density", new DirectCard(ReadoutBasis.AssumedDensity, new AirCard()), "cfm", 0.1, 0.006),
    ];
}
