using Portwright.Shop.Diagnosis;
using Portwright.Shop.Findings;
using Portwright.Shop.Record;
using Portwright.Shop.Survey;
using Portwright.Shop.Tests.Words;
using Portwright.Shop.Words;

namespace Portwright.Shop.Tests.Findings;

/// <summary>A day with a check in the morning, at noon and in the evening, and a bench that moves between two of them, or does not.</summary>
public sealed class BenchChangedBetweenChecks(ITestOutputHelper output)
{
    private const double Area = 0.00100;
    private const double Repeat = 0.002;

    [Fact]
    public void What_moved_between_noon_and_evening_puts_the_afternoons_sweep_in_doubt_and_lets_the_mornings_stand()
    {
        var day = new Day(1);
        var morning = day.CheckThenSweep(7, 50);
        var afternoon = day.CheckThenSweep(12, 40);
        day.Bench.TrueFactor = 1.02;
        day.Check(18);
        day.Sweep();

        Assert.Empty(Of(day, morning));
        var found = Assert.Single(Of(day, afternoon));
        output.WriteLine($"{found.Confidence:F4} {found.Sentence.Us()}");
        Assert.Equal(FindingKind.Measurement, found.Kind);
        var said = found.Sentence.Us();
        Assert.Contains("Between 4 Mar 2025 at 12:40 and 4 Mar 2025 at 18:00 the meter changed", said, StringComparison.Ordinal);
        Assert.Matches(@"Before it, and standing: .*cut 0 \(4 Mar 2025 at 07:5\d\)\. Between, in doubt: .*cut 1 \(4 Mar 2025 at 12:4\d\)\. After it: .*cut 2 \(4 Mar 2025 at 18:0\d\)\.", said);
        Assert.Contains(day.Bench.Ledger.SweepsOf(afternoon)[0].Id, found.Behind);
        Assert.DoesNotContain(day.Bench.Ledger.SweepsOf(morning)[0].Id, found.Behind);
    }

    [Fact]
    public void A_leak_that_grew_between_two_checks_is_told_though_each_was_taken_off()
    {
        var day = new Day(2);
        var cut = day.CheckThenSweep(7, 50);
        day.Bench.LeakArea = 0.02 * Area;
        day.Check(12);
        Assert.Contains("the leak changed", Assert.Single(Of(day, cut)).Sentence.Us(), StringComparison.Ordinal);
    }

    /// <summary>Read on a scale that shows a leak to a thousandth of the plate, over and over.</summary>
    [Fact]
    public void A_leak_that_grew_is_told_after_many_checks_that_read_it_alike()
    {
        var day = new Day(7);
        for (var hour = 6; hour < 18; hour++)
        {
            day.Check(hour);
        }

        var cut = day.CheckThenSweep(18, 30);
        day.Bench.LeakArea = 0.03 * Area;
        day.Check(20);
        Assert.Contains("the leak changed by", Assert.Single(Of(day, cut)).Sentence.Us(), StringComparison.Ordinal);
    }

    [Fact]
    public void What_moved_between_a_mornings_check_and_the_next_mornings_is_told_on_the_sweeps_of_the_day_between()
    {
        var day = new Day(3);
        var cut = day.CheckThenSweep(7, 50);
        day.Bench.NextDay();
        day.Bench.TrueFactor = 0.975;
        day.Check(7, 50);
        Assert.Contains("Between 4 Mar 2025 at 07:50 and 5 Mar 2025 at 07:50", Assert.Single(Of(day, cut)).Sentence.Us(), StringComparison.Ordinal);
    }

    [Fact]
    public void From_one_day_to_another_a_bench_may_drift_by_its_card_and_within_a_day_it_may_not()
    {
        double Moved(bool overnight)
        {
            var day = new Day(4, scatters: false);
            var cut = day.CheckThenSweep(7, 50);
            if (overnight)
            {
                day.Bench.NextDay();
            }

            day.Bench.TrueFactor = 1.0135;
            day.Check(18);
            return PortSurvey.Of(day.Bench.Ledger, day.Bench.PortId, cut).Sheet.Changes is [var change] ? change.Change.Chance : 0;
        }

        var (within, between) = (Moved(false), Moved(true));
        output.WriteLine($"within {within:F3}, between {between:F3}");
        Assert.True(within > 0.9 && between < 0.9);
    }

    [Fact]
    public void A_calibration_between_the_two_explains_the_meter_it_found()
    {
        var day = new Day(5);
        var cut = day.CheckThenSweep(7, 50);
        day.Bench.TrueFactor = 1.03;
        day.Calibrate();
        day.Check(18);
        Assert.Empty(Of(day, cut));
        // And one that was made wrong, on a meter that stayed what it was, is the calibration's, not the bench's.
        var wrong = new Day(6);
        var swept = wrong.CheckThenSweep(7, 50);
        wrong.Calibrate(hole: Area * 1.04);
        wrong.Check(18);
        Assert.Empty(Of(wrong, swept));
    }

    [Fact]
    public void Of_sound_days_hardly_one_is_found_changed_and_of_days_that_moved_two_percent_nearly_all()
    {
        int Found(double factor) => Enumerable.Range(0, 200).Count(seed =>
        {
            var day = new Day(seed + 100);
            var cut = day.CheckThenSweep(7, 50);
            day.Bench.TrueFactor = factor;
            day.Check(12);
            return PortSurvey.Of(day.Bench.Ledger, day.Bench.PortId, cut).Sheet.Changes.Any(c => c.Change.Chance >= 0.9);
        });

        var (sound, moved) = (Found(1), Found(1.02));
        output.WriteLine($"sound {sound} of 200, moved {moved} of 200");
        Assert.InRange(sound, 0, 1);
        Assert.InRange(moved, 190, 200);
    }

    private static List<Finding> Of(Day day, Guid cut) =>
        [.. PortFindings.Of(PortSurvey.Of(day.Bench.Ledger, day.Bench.PortId, cut)).Where(f => f.Rule.Key == "bench-changed")];

    /// <summary>The fourth of March, on a bench calibrated the day before.</summary>
    private sealed class Day
    {
        private readonly Random? _random;
        private int _cuts;

        public Day(int seed, bool scatters = true)
        {
            _random = scatters ? new Random(seed) : null;
            Bench = new SimulatedBench(
                Ranges.OfEachKind[7],
                BenchDoubt.Unknown with { Drift = 0.003, RepeatScatter = Repeat, RepeatDegrees = 60 },
                [new CheckPlate("number one", Area, Area * 0.002)])
            {
                LeakArea = 0.003 * Area,
            };
            Calibrate();
            Bench.NextDay();
        }

        public SimulatedBench Bench { get; }

        public void Calibrate(double hole = Area) => Bench.Add(new Calibration(
            Bench.BenchId, Bench.Range.Name, Bench.Today, [.. Enumerable.Range(0, 5).Select(_ => Plate(hole))], Bench.Air(), Leak: Bench.ReadPlate("", 0)));

        public void Check(int hour, int minute = 0)
        {
            Bench.At(hour, minute);
            Bench.Add(new MorningCheck(Bench.BenchId, Bench.Today, Bench.Air(), Bench.ReadPlate("", 0), [Plate(Area)]));
        }

        public Guid Sweep()
        {
            var cut = Bench.Cut(_cuts++);
            var sweep = Bench.Sweep(cut);
            Bench.ReadLeak(sweep);
            Bench.Read(sweep, 0.006, 0.0009);
            return cut;
        }

        public Guid CheckThenSweep(int hour, int minute)
        {
            Check(hour, minute);
            return Sweep();
        }

        private PlateReading Plate(double hole)
        {
            var reading = Bench.ReadPlate("number one", hole);
            return reading with { Reading = reading.Reading with { Value = reading.Reading.Value * (1 + Repeat * Normal()) } };
        }

        private double Normal() => _random is null ? 0 : Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble());
    }
}
