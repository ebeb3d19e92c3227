using Portwright.Physics.Uncertainty;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Shop.Tests.Bench;

/// <summary>A check with several leak tests: those on the range that shows the smallest leak count.</summary>
public sealed class SeveralLeaks
{
    private static readonly RangeCard Coarse = Ranges.OfEachKind[8] with { Name = "coarse", Resolution = 5 };
    private static readonly RangeCard Fine = Ranges.OfEachKind[8] with { Name = "fine", Resolution = 0.02 };

    [Fact]
    public void The_finest_range_says_the_leak_and_its_readings_are_one_mean()
    {
        var leak = Of(Read("coarse", 0), Read("fine", 0.8), Read("fine", 1.0), Read("coarse", 5)).LeakArea!;
        Assert.Equal(Of(Read("fine", 0.9)).LeakArea!.Value, leak.Value, 1e-9);
        Assert.True(leak.Value > 0);
    }

    [Fact]
    public void Its_own_doubt_is_a_share_of_the_mean()
    {
        var (one, two) = (Of(Read("fine", 0.8)).LeakArea!, Of(Read("fine", 0.8), Read("fine", 1.2)).LeakArea!);
        foreach (var leak in new[] { one, two })
        {
            Assert.Equal(leak.Value * BenchDoubt.Unknown.Leak, Assert.Single(leak.Contributions, c => c.Kind == ContributionKind.Leak).Amount, 1e-12);
        }
    }

    [Fact]
    public void One_that_cannot_be_is_left_out_with_a_remark()
    {
        var morning = Of(Read("fine", 0.9), Read("nowhere", 1));
        Assert.Equal(Of(Read("fine", 0.9)).LeakArea!.Value, morning.LeakArea!.Value, 1e-12);
        Assert.Contains("nowhere", Assert.Single(morning.Remarks), StringComparison.Ordinal);
    }

    private static PlateReading Read(string range, double cfm) => new("", range, Typed.Of(cfm, "cfm"), Typed.Of(28, "inH2O"));

    private static Morning Of(params PlateReading[] leaks)
    {
        var bench = new SimulatedBench(Fine);
        var id = bench.Add(new MorningCheck(bench.BenchId, bench.Today, bench.Air(), leaks[0], [], MoreLeaks: leaks[1..]));
        var card = bench.Ledger.Get<BenchCard>(bench.BenchId);
        card = card with { Fact = card.Fact with { Ranges = [Coarse, Fine] } };
        var check = bench.Ledger.Get<MorningCheck>(id);
        Assert.Equal(leaks, check.Fact.Leaks);
        return Morning.Measure(check, card, bench.Ledger);
    }
}
