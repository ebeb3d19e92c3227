using Portwright.Physics.Uncertainty;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;

namespace Portwright.Shop.Reduction;

/// <summary>What the numbers of a cut would be if its readout showed one thing or the other: by that a porter knows his own bench again.</summary>
public static class ReadoutChoice
{
    /// <summary>Flow at the highest lift with that answer, m3/s; null where the cut has no reading.</summary>
    public static Estimate? Flow(Ledger ledger, Kept<BenchCard> bench, string range, ReadoutMeaning meaning, Kept<Cut> cut)
    {
        ArgumentNullException.ThrowIfNull(ledger);
        ArgumentNullException.ThrowIfNull(bench);
        var answered = Entry.About(bench.Id, bench.Entry.Job, StandInBench.Answered(bench.Fact, range, meaning), bench.Entry.At);
        return new Reductions(ledger.With([answered])).Of(cut)?.Curve.Points[^1].Flow;
    }
}
