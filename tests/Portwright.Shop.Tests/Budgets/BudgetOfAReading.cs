using Portwright.Physics.Air;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Budgets;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Units;

namespace Portwright.Shop.Tests.Budgets;

/// <summary>The budget of one flow against the record itself: what each cause would do is tried by moving the raw numbers it stands for and reducing all anew.</summary>
public sealed class BudgetOfAReading
{
    private const double Lift = 0.008;
    private static readonly BenchDoubt Doubt = new(
        SetUpScatter: 0.004, SetUpDegrees: 5, RepeatScatter: 0.002, RepeatDegrees: 6, Drift: 0.0015, Barometer: 120, Temperature: 0.6, Humidity: 0.05, TestPressure: 20, Lift: 0.00002, Leak: 0.2);

    private readonly IReadOnlyList<Entry> _entries;
    private readonly Guid _sweep;
    private readonly Budget _budget;

    public BudgetOfAReading()
    {
        // A direct readout that takes one density for granted, calibrated in other air and at another test pressure: weather and gauge, which
        // plate and port share, cancel for the most part and not whole.
        var range = Ranges.OfEachKind.Single(r => r.Name == "direct, assumed density");
        var bench = new SimulatedBench(range, Doubt, [new CheckPlate("one", 0.0006, 0.0000018)])
        {
            TrueFactor = 1.02,
            LeakArea = 0.000012,
            Room = AirState.FromRelativeHumidity(91_000, 281, 0.8),
        };
        bench.Add(new Calibration(bench.BenchId, range.Name, new DateOnly(2025, 3, 1), [bench.ReadPlate("one", 0.0006, 18)], bench.Air(), Leak: bench.ReadPlate("", 0, 18)));
        bench.Room = AirState.FromRelativeHumidity(101_500, 301, 0.4);
        _sweep = bench.Sweep(bench.Cut(0));
        bench.ReadLeak(_sweep);
        foreach (var (lift, area) in new[] { (0.004, 0.0005), (Lift, 0.0009), (0.010, 0.00105) }) bench.Read(_sweep, lift, area);
        _entries = bench.Entries;
        _budget = Budget.For(Flow(_entries), Dimension.VolumeFlow, new SourceWords(bench.Ledger, bench.PortId));
    }

    /// <summary>Each cause in words, how big one step of it is, and the raw numbers that step moves.</summary>
    public static TheoryData<string> Moved => [.. Moves.Keys];

    private static readonly Dictionary<string, Func<Fact, double, Fact>> Moves = new()
    {
        ["barometer of the bench"] = (f, n) => Air(f, a => a with { Barometer = More(a.Barometer, n * Doubt.Barometer, Dimension.Barometer) }, w => w with { Barometer = More(w.Barometer, n * Doubt.Barometer, Dimension.Barometer) }),
        ["thermometer in the room"] = (f, n) => Air(f, a => a with { Temperature = More(a.Temperature, n * Doubt.Temperature, Dimension.Temperature) }, w => w with { Temperature = More(w.Temperature, n * Doubt.Temperature, Dimension.Temperature) }),
        ["hygrometer of the bench"] = (f, n) => Air(f, a => a with { RelativeHumidity = More(a.RelativeHumidity!, n * Doubt.Humidity, Dimension.Fraction) }, w => w with { Humidity = More(w.Humidity!, n * Doubt.Humidity, Dimension.Fraction) }),
        ["test pressure, set and read"] = (f, n) => Pressures(f, p => More(p, n * Doubt.TestPressure, Dimension.Pressure)),
        ["certificate of plate one"] = (f, n) => f is BenchCard card ? card with { Plates = [card.Plates[0] with { EffectiveArea = card.Plates[0].EffectiveArea + n * card.Plates[0].StandardUncertainty }] } : f,
        ["last digit of the reading"] = (f, n) => f is FlowReading r && r.Lift.Si(Dimension.Lift) == Lift ? r with { Reading = Digit(r.Reading, n) } : f,
        ["last digit of the leak"] = (f, n) => f is LeakReading r ? r with { Reading = Digit(r.Reading, n) } : f,
        ["last digit of the plate"] = (f, n) => f is Calibration c ? c with { Readings = [c.Readings[0] with { Reading = Digit(c.Readings[0].Reading, n) }] } : f,
        ["last digit of the plate's leak"] = (f, n) => f is Calibration c ? c with { Leak = c.Leak! with { Reading = Digit(c.Leak.Reading, n) } } : f,
    };

    [Theory]
    [MemberData(nameof(Moved))]
    public void The_amount_of_a_cause_is_what_the_result_does_when_the_raw_numbers_move_by_it(string cause)
    {
        double With(double steps) => Flow([.. _entries.Select(e => e with { Fact = Moves[cause](e.Fact, steps) })]).Value;
        var told = Told(cause);
        var change = (With(1) - With(-1)) / 2;
        Assert.NotEqual(0, change);
        Assert.Equal(change, told.Of.Amount, 0.01 * Math.Abs(change));
        // Its own step times the sensitivity is the same amount.
        Assert.Equal(told.Of.Amount, told.Source!.Step!.Si * told.Sensitivity!.Value, 1e-12);
    }

    [Fact]
    public void What_is_a_share_of_the_flow_moves_it_by_that_share()
    {
        var flow = _budget.Of.Value;
        Assert.Equal(flow * Doubt.SetUpScatter, Told("set-up of").Of.Amount, 1e-9 * flow);
        Assert.Equal(flow * Doubt.Drift, Told("shift of the bench").Of.Amount, 1e-9 * flow);
        // The meter sees port and leak together, and scatters with both.
        Assert.Equal(flow * (0.0009 + 0.000012) / 0.0009 * Doubt.RepeatScatter, Told("repeats at").Of.Amount, 0.001 * flow * Doubt.RepeatScatter);
        Assert.Equal(-flow * 0.000012 / 0.0009 * Doubt.Leak, Told("leak, cut 0").Of.Amount, 0.02 * flow * 0.000012 / 0.0009 * Doubt.Leak);
    }

    [Fact]
    public void Every_cause_is_named_and_the_shares_make_the_whole()
    {
        Assert.All(_budget.Causes, c => Assert.NotNull(c.Source));
        Assert.Equal(1, _budget.Causes.Sum(c => c.Share), 1e-12);
        Assert.Equal(_budget.Of.Variance, _budget.Causes.Sum(c => c.Of.Amount * c.Of.Amount), 1e-9 * _budget.Of.Variance);
        Assert.Equal(_budget.Causes.OrderByDescending(c => c.Share), _budget.Causes);
        Assert.Equal(_budget.Of.Contributions.Length, _budget.Causes.Count);
    }

    [Fact]
    public void How_each_size_is_known_is_told()
    {
        string Known(string cause) => Told(cause).Distribution.In(UnitSystem.UsCustomary);
        Assert.Equal("rectangular", Known("last digit of the reading"));
        Assert.Equal("normal", Known("certificate of plate"));
        Assert.Equal("Student, 5", Known("set-up of"));
        Assert.Equal("Student, 6", Known("repeats at"));
    }

    [Fact]
    public void What_was_typed_stands_behind_it_letter_for_letter_with_its_lift()
    {
        var ledger = Ledger.Of(_entries);
        var typed = new SourceWords(ledger, Guid.Empty).Raw(_budget.Of).Select(r => r.Reading).ToList();
        var reading = ledger.ReadingsOf(_sweep).Single(r => r.Fact.Lift.Si(Dimension.Lift) == Lift).Fact;
        var shown = Assert.Single(typed, t => t.Lift == reading.Lift.Text);
        Assert.StartsWith(reading.Reading.Text, shown.Typed, StringComparison.Ordinal);
        Assert.Equal(reading.TestPressure!.Text, shown.Pressure);
        var weather = ledger.WeatherOf(_sweep).Single().Fact;
        Assert.Contains(typed, t => t.Typed == string.Join(", ", weather.Barometer.Text, weather.Temperature.Text, weather.Humidity!.Text));
        Assert.Contains(typed, t => t.What.In(UnitSystem.UsCustomary).StartsWith("plate one", StringComparison.Ordinal));
        Assert.DoesNotContain(typed, t => t.Lift.Length > 0 && t != shown);
    }

    private static Estimate Flow(IReadOnlyList<Entry> entries)
    {
        var ledger = Ledger.Of(entries);
        return SweepReduction.Reduce(ledger, ledger.All<Sweep>().Single()).Curve.PointAt(Lift)!.Flow;
    }

    private BudgetCause Told(string cause)
    {
        var begins = cause switch
        {
            "last digit of the reading" => ReadingText(ledger => ledger.ReadingsOf(_sweep)[1].Fact.Reading),
            "last digit of the leak" => ReadingText(ledger => ledger.LeaksOf(_sweep)[0].Fact.Reading),
            "last digit of the plate" => ReadingText(ledger => ledger.All<Calibration>()[0].Fact.Readings[0].Reading),
            "last digit of the plate's leak" => ReadingText(ledger => ledger.All<Calibration>()[0].Fact.Leak!.Reading),
            _ => cause,
        };
        // The two leak tests read the same number.
        return Assert.Single(_budget.Causes, c => c.Words.In(UnitSystem.UsCustomary) is var words && words.StartsWith(begins, StringComparison.Ordinal)
            && (!cause.StartsWith("last digit", StringComparison.Ordinal) || words.Contains("calibration", StringComparison.Ordinal) == cause.Contains("plate", StringComparison.Ordinal)));

        string ReadingText(Func<Ledger, Typed> of) => $"last digit of {of(Ledger.Of(_entries)).Text}";
    }

    private static Typed More(Typed typed, double si, Dimension dimension) => typed with { Value = Unit.Find(typed.Unit, dimension)!.FromSi(typed.Si(dimension) + si) };

    private static Typed Digit(Typed typed, double steps) => typed with { Value = typed.Value + steps * 0.1 / Math.Sqrt(12) };

    private static Fact Air(Fact fact, Func<RoomAir, RoomAir> air, Func<WeatherReading, WeatherReading> weather) => fact switch
    {
        WeatherReading w => weather(w),
        Calibration c => c with { Air = air(c.Air) },
        _ => fact,
    };

    private static Fact Pressures(Fact fact, Func<Typed, Typed> more) => fact switch
    {
        FlowReading r => r with { TestPressure = more(r.TestPressure!) },
        LeakReading l => l with { TestPressure = more(l.TestPressure) },
        Calibration c => c with { Readings = [c.Readings[0] with { TestPressure = more(c.Readings[0].TestPressure) }], Leak = c.Leak! with { TestPressure = more(c.Leak.TestPressure) } },
        _ => fact,
    };
}
