using Portwright.Shop.Bench;
using Portwright.Shop.Record;

namespace Portwright.Shop.Tests.Bench;

/// <summary>A leak that always came and went is not one that changed: it must leave what the checks before scatter by, with 95 in 100.</summary>
public sealed class LeakThatChanged
{
    private const double PlateArea = 0.001;

    /// <summary>
    /// Three checks at 0.5, 2.0 and 3.5 percent of the plate scatter by 1.5. Student's factor for two degrees is 4.303: a fourth lies within 4.303 x 1.5 x
    /// the root of 4/3, 7.45 percent of their mean.
    /// </summary>
    [Theory]
    [InlineData(9.40, false)]
    [InlineData(9.50, true)]
    public void A_leak_past_what_it_always_did_changed(double percent, bool changed) => Assert.Equal(changed, Changed(percent, 0.5, 2.0, 3.5));

    /// <summary>A change under half a percent of the plate is none worth a look, however sure.</summary>
    [Theory]
    [InlineData(0.79, 0.3, false)]
    [InlineData(0.81, 0.3, true)]
    [InlineData(0.31, 0.8, false)]
    [InlineData(0.29, 0.8, true)]
    public void A_change_under_half_a_percent_of_the_plate_is_let_be(double percent, double before, bool changed) => Assert.Equal(changed, Changed(percent, before, before, before));

    [Fact]
    public void The_first_leak_changed_from_nothing() => Assert.False(Changed(5));

    private static bool Changed(double percent, params double[] before)
    {
        var fine = Ranges.OfEachKind[7] with { Resolution = 0.001 };
        var bench = new SimulatedBench(fine, BenchDoubt.Unknown with { Drift = 0.0001, RepeatScatter = 0.0001 }, [new CheckPlate("number one", PlateArea, PlateArea * 0.0005, "certificate 12, invented")]) { LeakArea = 0.02 * PlateArea };
        bench.Add(new Calibration(bench.BenchId, bench.Range.Name, new DateOnly(2025, 3, 3), [.. Enumerable.Repeat(bench.ReadPlate("number one", PlateArea), 3)], bench.Air(), Leak: bench.ReadPlate("", 0)));
        var day = new DateOnly(2025, 3, 4);
        foreach (var leak in (double[])[.. before, percent])
        {
            bench.LeakArea = leak / 100 * PlateArea;
            bench.Add(new MorningCheck(bench.BenchId, day, bench.Air(), bench.ReadPlate("", 0), [bench.ReadPlate("number one", PlateArea)]));
            day = day.AddDays(1);
        }

        return BenchMorning.Of(bench.Ledger, bench.BenchId, day)!.Words.Any(w => w.Contains("it changed", StringComparison.Ordinal));
    }
}
