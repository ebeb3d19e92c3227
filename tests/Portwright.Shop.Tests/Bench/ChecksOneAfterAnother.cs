using Portwright.Shop.Diagnosis;
using Portwright.Shop.Record;
using Portwright.Shop.Sheets;
using Portwright.Shop.Survey;
using Portwright.Shop.Tests.Words;

namespace Portwright.Shop.Tests.Bench;

/// <summary>
/// Checks of a bench whose scale shows pressure: a leak under three percent of the plate does not move it, and what flowed through plate and leak together does.
/// </summary>
public sealed class ChecksOneAfterAnother(ITestOutputHelper output)
{
    private const double Area = 0.00100;

    /// <summary>One percent over on the second of two checks of a day.</summary>
    private static readonly double[] Little = [0, 0.01];

    /// <summary>
    /// Two checks of a day, the plate passing so much more at the second, the leak test at nought on both. Chances by quadrature outside this program over
    /// 700 x 700 leaks up to 15 percent of the plate: repeats of 0.2 percent, a scale of 0.1 percent read at 41.64 (0.035 percent of the flow), a leak of up to
    /// 3.47 percent under its first half step, matters 0.566 percent.
    /// </summary>
    [Theory]
    [InlineData(0.010, 0.1996, 0.3534)]
    [InlineData(0.012, 0.3440, 0.5934)]
    [InlineData(0.020, 0.3854, 0.6146)]
    [InlineData(0.040, 0.7640, 0.2360)]
    [InlineData(-0.012, 0.7810, 0.1084)]
    [InlineData(-0.015, 0.9310, 0.0675)]
    public void What_the_leak_test_cannot_show_is_shared_between_meter_and_leak(double off, double meter, double leak)
    {
        var change = Last(new Days().Checks(0, off))!.Change;
        output.WriteLine($"meter {change.PlatesChance:F4}, leak {change.LeakChance:F4}");
        Assert.Equal(meter, change.PlatesChance, 0.004);
        Assert.Equal(leak, change.LeakChance, 0.004);
    }

    /// <summary>By the same quadrature the meter is nine times as likely as the leak at 4.72 percent.</summary>
    [Theory]
    [InlineData(0.020, "the meter or the leak changed, which of the two the leak tests do not tell: the same plate reads +2")]
    [InlineData(0.046, "the meter or the leak changed")]
    [InlineData(0.049, "the meter changed: the same plate reads +4.9")]
    public void Where_one_is_nine_times_as_likely_it_alone_is_named(double off, string said) =>
        Assert.Contains(said, Said(new Days().Checks(0, off)), StringComparison.Ordinal);

    [Fact]
    public void A_leak_that_the_test_shows_is_named_with_how_much_it_is()
    {
        var days = new Days().Checks(0);
        days.Bench.LeakArea = 0.08 * Area;
        Assert.Contains("the leak changed by +8", Said(days.Checks(0)), StringComparison.Ordinal);
    }

    /// <summary>What two checks do not tell, the days before them do: a change is in everything after it and in nothing before.</summary>
    [Fact]
    public void A_small_change_is_told_by_the_checks_before_it_too()
    {
        var (two, eight) = (Chance(new Days().Checks(Little)), Chance(new Days().Checks([0, 0, 0, 0, 0, 0, .. Little])));
        output.WriteLine($"two {two:F3}, eight {eight:F3}");
        Assert.InRange(two, 0.5, 0.7);
        Assert.InRange(eight, 0.75, 1);
    }

    [Fact]
    public void Ten_checks_to_a_side_are_read_and_older_ones_are_of_another_bench()
    {
        double With(int before) => Chance(new Days().Checks([.. Enumerable.Repeat(0.0, before), .. Little]));
        Assert.NotEqual(With(9), With(10), 1e-6);
        Assert.Equal(With(10), With(11), 1e-12);
        double After(int after) => Chance(new Days().Checks([.. Little, .. Enumerable.Repeat(0.01, after)]), 1);
        Assert.NotEqual(After(9), After(10), 1e-6);
        Assert.Equal(After(10), After(11), 1e-12);
    }

    /// <summary>By the quadrature two checks alone say 0.39 of a fall of 1 percent and 0.89 of one of 1.2; half lies at 1.05.</summary>
    [Theory]
    [InlineData(0.0100, false)]
    [InlineData(0.0110, true)]
    public void What_two_checks_tell_of_cuts_the_history_there(double fell, bool cut)
    {
        double[] after = [0, 0.01];
        var (whole, alone) = (Chance(new Days().Checks([fell, .. after])), Chance(new Days().Checks(after)));
        output.WriteLine($"whole {whole:F4}, alone {alone:F4}");
        Assert.Equal(cut, Math.Abs(whole - alone) < 1e-9);
    }

    [Fact]
    public void A_bench_that_moved_and_was_put_right_is_told_both_times_and_is_fit_again()
    {
        var days = new Days().Checks(0, 0, 0.03, 0.03, 0, 0);
        Assert.Equal([false, true, false, true, false], Enumerable.Range(1, 5).Select(c => Chance(days, c) >= 0.9));
        Assert.Equal([false, false, true, true, false, false], Enumerable.Range(0, 6).Select(c => Fit(days, c) >= 0.9));
    }

    [Fact]
    public void A_plate_off_by_a_little_is_surer_where_the_mornings_before_read_right()
    {
        var (alone, after) = (Fit(new Days { OneADay = true }.Checks(0.013), 0), Fit(new Days { OneADay = true }.Checks(0, 0, 0, 0, 0, 0, 0.013), 6));
        output.WriteLine($"alone {alone:F3}, after six {after:F3}");
        Assert.InRange(alone, 0.1, 0.75);
        Assert.InRange(after, alone + 0.15, 1);
    }

    private static double Chance(Days days, int? check = null) => (check is { } c ? At(days, c) : Last(days))?.Change.Chance ?? 0;

    private static ChangeAround? Last(Days days) => At(days, days.Cuts.Count - 1);

    /// <summary>The change between a check and the one before it, by the sheet of what was swept between; null where it is hardly one.</summary>
    private static ChangeAround? At(Days days, int check) =>
        PortSurvey.Of(days.Bench.Ledger, days.Bench.PortId, days.Cuts[check - 1]).Sheet.Changes.SingleOrDefault();

    private static string Said(Days days) => PortFindings.Of(PortSurvey.Of(days.Bench.Ledger, days.Bench.PortId, days.Cuts[^2])).Single(f => f.Rule.Key == "bench-changed").Sentence.Us();

    private static double Fit(Days days, int check) => PortSurvey.Of(days.Bench.Ledger, days.Bench.PortId, days.Cuts[check]).Sheet.Benches.Single().Off!.Chance;

    /// <summary>A bench calibrated the day before; each check is followed by a sweep of a cut of its own.</summary>
    private sealed class Days
    {
        public Days()
        {
            Bench = new SimulatedBench(
                Ranges.OfEachKind[4], BenchDoubt.Unknown with { Drift = 0.002, RepeatScatter = 0.002, RepeatDegrees = null }, [new CheckPlate("number one", Area, Area * 0.001)]);
            Bench.Add(new Calibration(
                Bench.BenchId, Bench.Range.Name, Bench.Today, [.. Enumerable.Repeat(Bench.ReadPlate("number one", Area), 5)], Bench.Air(), Leak: Bench.ReadPlate("", 0)));
            Bench.NextDay();
        }

        public SimulatedBench Bench { get; }

        public List<Guid> Cuts { get; } = [];

        public bool OneADay { get; init; }

        /// <param name="off">What the plate reads over its certificate, as a share, check after check.</param>
        public Days Checks(params ReadOnlySpan<double> off)
        {
            foreach (var o in off)
            {
                Bench.Add(new MorningCheck(Bench.BenchId, Bench.Today, Bench.Air(), Bench.ReadPlate("", 0), [Bench.ReadPlate("number one", Area * (1 + o))]));
                Cuts.Add(Bench.Cut(Cuts.Count));
                var sweep = Bench.Sweep(Cuts[^1]);
                Bench.Read(sweep, 0.006, 0.0009);
                if (OneADay)
                {
                    Bench.NextDay();
                }
            }

            return this;
        }
    }
}
