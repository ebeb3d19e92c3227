using Portwright.Shop.Cutting;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Tests.Findings;
using Portwright.Shop.Words;

namespace Portwright.Shop.Tests.Cutting;

/// <summary>Advice is judged by half of what it promised: surely more than that, surely less, or nobody can tell. Surely is nine chances in ten.</summary>
public sealed class PromiseKept
{
    [Theory]
    [InlineData(0.91, true)]
    [InlineData(0.89, null)]
    [InlineData(0.5, null)]
    [InlineData(0.11, null)]
    [InlineData(0.09, false)]
    public void More_than_half_of_it_nine_times_in_ten_keeps_it(double chance, bool? met)
    {
        var got = Score(1)!.Got!;
        // The promise of which the measured gain is more than half with just this chance.
        double low = got.Value - 20 * got.StandardUncertainty, high = got.Value + 20 * got.StandardUncertainty;
        for (var step = 0; step < 60; step++)
        {
            var half = (low + high) / 2;
            (low, high) = Confidence.Above(got, half) > chance ? (half, high) : (low, half);
        }

        Assert.Equal(met, Score(low + high)!.Met);
    }

    private static AdviceScore? Score(double promised)
    {
        var made = new MadePort(63) { Range = Ranges.OfEachKind[3], RingsAt = [], Places = [], ExhaustShare = null, Repeats = 1 };
        var bench = made.Bench(out var port, out var cut);
        bench.Add(new Advice(cut, "busy-roof", null, 12, $"Raise the roof.", Decision.Accepted, "", promised, 10, 0.005, 0.0125));
        made.FlowFactor = _ => 1.03;
        made.NextCut(bench, port, 1);
        return NextCuts.Score(new Reductions(bench.Ledger), port).Single();
    }
}
