using Portwright.Judging.Chance;
using Portwright.Physics.TestPiece;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Judging.Shops;

/// <summary>A plate with the hole it truly has.</summary>
public sealed record MadePlate(CheckPlate Card, double Area);

/// <summary>A bench with its true scatters, and a card that states them about right.</summary>
public sealed class MadeBench
{
    private readonly Draw _draw;
    private readonly double _gauge;
    private double _day;

    private MadeBench(BenchCard card, BenchDoubt truth, IReadOnlyList<MadeRange> ranges, IReadOnlyList<MadePlate> plates, Typed pressure, MadeRoom room, Draw draw)
    {
        (_draw, Card, Truth, Ranges, Plates, TestPressure, Room) = (draw, card, truth, ranges, plates, pressure, room);
        _gauge = draw.Normal(truth.TestPressure);
        Leak = plates.Min(p => p.Area) * draw.Between(0.0005, 0.0035);
        NextDay();
    }

    public Guid Id { get; set; }

    public BenchCard Card { get; }

    /// <summary>The scatters as they are.</summary>
    public BenchDoubt Truth { get; }

    public IReadOnlyList<MadeRange> Ranges { get; }

    public IReadOnlyList<MadePlate> Plates { get; }

    public Typed TestPressure { get; }

    public MadeRoom Room { get; }

    /// <summary>Effective area that leaks, m2.</summary>
    public double Leak { get; set; }

    /// <summary>What the meter shows over what it showed when it was calibrated: 1 in a bench nobody bumped.</summary>
    public double Moved { get; set; } = 1;

    public static MadeBench Drawn(double most, Pencil pencil, Draw draw)
    {
        var inches = draw.Of(28.0, 28.0, 28.0, 25.0, 20.0);
        var pressure = pencil.Metric ? draw.Of(Pencil.Rounded(7, 0.1, "kPa"), Pencil.Rounded(700, 1, "mmH2O")) : Pencil.Rounded(inches, 0.1, "inH2O");
        var pascal = pressure.Si(Dimension.Pressure);
        var truth = TrueDoubt(draw);
        var kind = draw.Whole(0, 8);
        var accuracy = draw.Between(0.004, 0.010);
        var ranges = new List<MadeRange> { MadeRange.Drawn(kind, "high", most * 1.1, pascal, pencil, accuracy, draw) };
        // A second, smaller range where a wide one reads low lifts badly.
        if (kind <= 4 && draw.Chance(0.6)) ranges.Insert(0, MadeRange.Drawn(kind, "low", most * draw.Between(0.35, 0.5), pascal, pencil, accuracy, draw));
        var plates = Enumerable.Range(0, draw.Whole(1, 3)).Select(i =>
        {
            var area = Math.Round(most * (i == 0 ? draw.Between(0.75, 1.0) : draw.Between(0.3, 1.0)), 7);
            var doubt = area * draw.Between(0.001, 0.003);
            return new MadePlate(new CheckPlate($"plate {i + 1}", area, doubt, "certificate"), area + draw.Normal(doubt));
        }).ToList();
        var card = new BenchCard(
            "shop bench", [.. ranges.Select(r => r.Card)], [.. plates.Select(p => p.Card)], new AirCard(), 28 * 249.08891, Stated(truth, draw));
        return new MadeBench(card, truth, ranges, plates, pressure, new MadeRoom(truth, pencil, draw), draw);
    }

    /// <summary>The smallest range that a test piece of that area (m2) does not drive off its scale.</summary>
    public MadeRange RangeFor(double area) => Ranges.FirstOrDefault(r => area <= r.Most) ?? Ranges[^1];

    public void NextDay()
    {
        _day = _draw.Factor(Truth.Drift);
        Room.NextDay();
    }

    /// <summary>What stands on the meter with a test piece of that effective area (m2), rounded to its scale: the day's drift, the gauge's error and the scatter of one reading in it.</summary>
    /// <param name="unsteady">How many times the bench's own scatter this reading scatters.</param>
    public Typed Shows(MadeRange range, double area, FlowDirection direction, double unsteady = 1)
    {
        var card = range.Card;
        var conditions = Conditions(range, direction);
        // What the meter shows moves with the bench; the air itself does not.
        var shown = (area + Leak) * _day * Moved * (1 + _draw.Normal(Truth.RepeatScatter * unsteady));
        var reading = TestPieceReduction.ReadingFor(MeterOf.Range(card), shown, range.Factor, conditions);
        return Pencil.Rounded(reading / Typed.Of(1, card.Unit).Si(MeterOf.ReadingDimension(card)), card.Resolution, card.Unit);
    }

    /// <summary>The test piece (m2) a reading is of, by one who knows what meter, day, leak and gauge truly are: what is left of it is scatter and the scale's step.</summary>
    public double AreaOf(MadeRange range, Typed shown, FlowDirection direction) =>
        Passed(range, shown.Si(MeterOf.ReadingDimension(range.Card)), Conditions(range, direction)) / (_day * Moved) - Leak;

    /// <summary>Standard deviation of the mean of so many readings at a test piece of that area (m2), as a share of it: the scale's step is the same in all of them.</summary>
    public double ScatterOf(MadeRange range, double area, FlowDirection direction, int readings)
    {
        var (card, conditions, passed) = (range.Card, Conditions(range, direction), (area + Leak) * _day * Moved);
        var shown = TestPieceReduction.ReadingFor(MeterOf.Range(card), passed, range.Factor, conditions);
        var step = Typed.Of(card.Resolution, card.Unit).Si(MeterOf.ReadingDimension(card));
        var scale = (Passed(range, shown + step / 2, conditions) - Passed(range, shown - step / 2, conditions)) / Math.Sqrt(12);
        return Math.Sqrt(passed * passed * Truth.RepeatScatter * Truth.RepeatScatter / readings + scale * scale) / (area * _day * Moved);
    }

    private static double Passed(MadeRange range, double shown, in TestConditions conditions) =>
        TestPieceReduction.EffectiveArea(MeterOf.Range(range.Card), shown, range.Factor, conditions).EffectiveArea;

    /// <summary>What truly drives the meter.</summary>
    private TestConditions Conditions(MadeRange range, FlowDirection direction) => new(
        Room.Air, TestPressure.Si(Dimension.Pressure) + _gauge, direction, null, null, direction == FlowDirection.Draw ? range.Card.DrawInlet : range.Card.BlowInlet);

    /// <summary>A plate in the port's place.</summary>
    public PlateReading ReadPlate(MadePlate plate, MadeRange? range = null)
    {
        range ??= RangeFor(plate.Area);
        return new PlateReading(plate.Card.Name, range.Card.Name, Shows(range, plate.Area, FlowDirection.Draw), TestPressure);
    }

    /// <summary>The opening closed off.</summary>
    public PlateReading ReadLeak() => new("", Ranges[0].Card.Name, Shows(Ranges[0], 0, FlowDirection.Draw), TestPressure);

    /// <summary>Scatters as benches have them (common practice, no source): set-ups 0.3 to 0.8 percent, repeats a third of that, a day 0.1 to 0.3 percent, the dial within a thousandth of an inch.</summary>
    private static BenchDoubt TrueDoubt(Draw draw) => new(
        SetUpScatter: draw.Between(0.003, 0.008),
        SetUpDegrees: null,
        RepeatScatter: draw.Between(0.001, 0.003),
        RepeatDegrees: null,
        Drift: draw.Between(0.001, 0.003),
        Barometer: draw.Between(50, 150),
        Temperature: draw.Between(0.3, 1.0),
        Humidity: draw.Between(0.03, 0.08),
        TestPressure: draw.Between(10, 30),
        Lift: draw.Between(0.000013, 0.000030),
        Leak: 0.2,
        Calliper: 0.00003);

    /// <summary>What the porter wrote on the card: near the truth, one figure in four 30 percent off.</summary>
    private static BenchDoubt Stated(BenchDoubt truth, Draw draw)
    {
        double Near(double x) => x * (draw.Chance(0.25) ? draw.Of(0.7, 1.3) : draw.Factor(0.08));
        return truth with
        {
            SetUpScatter = Near(truth.SetUpScatter),
            SetUpDegrees = draw.Of(4.0, 6.0, 10.0, 20.0),
            RepeatScatter = Near(truth.RepeatScatter),
            RepeatDegrees = draw.Of(6.0, 10.0, 20.0, 40.0),
            Drift = Near(truth.Drift),
            Barometer = Near(truth.Barometer),
            Temperature = Near(truth.Temperature),
            Humidity = Near(truth.Humidity),
            TestPressure = Near(truth.TestPressure),
            Lift = Near(truth.Lift),
        };
    }
}
