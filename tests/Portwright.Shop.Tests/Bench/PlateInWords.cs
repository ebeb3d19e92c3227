using Portwright.Physics.Statistics;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;

namespace Portwright.Shop.Tests.Bench;

/// <summary>A plate off its certificate is told by how much and which way; past three standard deviations it is a stop.</summary>
public sealed class PlateInWords
{
    private const double PlateArea = 0.001;

    [Theory]
    [InlineData(1.03, "over")]
    [InlineData(0.97, "under")]
    public void A_plate_off_says_which_way(double share, string way)
    {
        var morning = Morning(share, out _);
        Assert.Equal(ChartAnswer.Stop, morning.Answer);
        Assert.Contains(morning.Words, w => w.Contains($"reads 3.0 percent {way} its certificate", StringComparison.Ordinal));
    }

    /// <summary>Its doubt is a standard uncertainty u: past 1.96 u (95 in 100) it asks for a look, past 3 u (99.73 in 100) it is a stop.</summary>
    [Theory]
    [InlineData(1.9, false, false)]
    [InlineData(2.1, true, false)]
    [InlineData(2.9, true, false)]
    [InlineData(3.2, true, true)]
    [InlineData(-2.1, true, false)]
    public void A_plate_past_its_doubt_is_looked_at_and_past_three_deviations_a_stop(double deviations, bool looked, bool stop)
    {
        Morning(1, out var doubt);
        var words = Morning(1 + deviations * doubt, out _).Words;
        Assert.Equal(looked, words.Any(w => w.Contains("more than their doubt allows", StringComparison.Ordinal)));
        Assert.Equal(stop, words.Any(w => w.Contains("Look for a wrong plate", StringComparison.Ordinal)));
    }

    /// <summary>A calibration made after the check says what the same reading would have been.</summary>
    [Theory]
    [InlineData(1.03, "under")] // The plate is taken for what it reads: with the later factor the check read less.
    [InlineData(0.97, "over")]
    public void What_is_known_since_is_told_beside_it(double since, string way)
    {
        var bench = Bench();
        Calibrate(bench, new DateOnly(2025, 3, 3), 1);
        bench.NextDay();
        bench.Add(new MorningCheck(bench.BenchId, new DateOnly(2025, 3, 4), bench.Air(), bench.ReadPlate("", 0), [bench.ReadPlate("number one", PlateArea)]));
        bench.NextDay();
        Calibrate(bench, new DateOnly(2025, 3, 5), since);
        Assert.Contains(BenchMorning.Of(bench.Ledger, bench.BenchId, new DateOnly(2025, 3, 5))!.Words, w => w.Contains($"percent {way} its certificate", StringComparison.Ordinal));
    }

    private static SimulatedBench Bench() => new(
        Ranges.OfEachKind[7] with { Resolution = 0.001 }, BenchDoubt.Unknown with { Drift = 0.002, RepeatScatter = 0.001 }, [new CheckPlate("number one", PlateArea, PlateArea * 0.002, "certificate 12, invented")])
    { LeakArea = 0.001 * PlateArea };

    private static void Calibrate(SimulatedBench bench, DateOnly date, double share) => bench.Add(new Calibration(
        bench.BenchId, bench.Range.Name, date, [.. Enumerable.Repeat(bench.ReadPlate("number one", share * PlateArea), 3)], bench.Air(), Leak: bench.ReadPlate("", 0)));

    private static BenchMorning Morning(double share, out double doubt)
    {
        var bench = Bench();
        Calibrate(bench, new DateOnly(2025, 3, 3), 1);
        bench.NextDay();
        bench.Add(new MorningCheck(bench.BenchId, new DateOnly(2025, 3, 4), bench.Air(), bench.ReadPlate("", 0), [bench.ReadPlate("number one", share * PlateArea)]));
        var morning = BenchMorning.Of(bench.Ledger, bench.BenchId, new DateOnly(2025, 3, 4))!;
        doubt = morning.Mornings[^1].PlateRatio[0].Ratio.StandardUncertainty;
        return morning;
    }
}
