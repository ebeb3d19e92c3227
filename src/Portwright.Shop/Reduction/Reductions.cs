using System.Collections.Concurrent;
using Portwright.Shop.Record;

namespace Portwright.Shop.Reduction;

/// <summary>A ledger's sweeps, each reduced once, when first asked for. May be asked by several at once.</summary>
public sealed class Reductions(Ledger ledger)
{
    private readonly ConcurrentDictionary<Guid, ReducedSweep> _sweeps = [];
    private readonly ConcurrentDictionary<(Type, Guid), object> _resting = [];

    public Ledger Ledger => ledger;

    public ReducedSweep Of(Kept<Sweep> sweep) => _sweeps.GetOrAdd(sweep.Id, (_, s) => SweepReduction.Reduce(ledger, s), sweep);

    /// <summary>What else rests on this record alone, made once, when first asked for: for what is worked out from reduced sweeps and asked for again and again.</summary>
    /// <param name="of">The subject; one value of a type is held of each.</param>
    internal T Once<T>(Guid of, Func<T> make)
        where T : class => (T)_resting.GetOrAdd((typeof(T), of), static (_, make) => make(), make);

    /// <summary>What the port flows at a cut, with the fitting of its latest sweep; null where nothing was read.</summary>
    public CutFlow? Of(Kept<Cut> cut)
    {
        var sweeps = SweepsOf(cut);
        return sweeps.Count == 0 ? null : CutFlow.Of(cut, sweeps, sweeps[^1].Sweep.Fact.Fitting);
    }

    /// <summary>The same with a fitting of one's own choice; null where the cut was not swept so.</summary>
    public CutFlow? Of(Kept<Cut> cut, Fitting fitting) => CutFlow.Of(cut, SweepsOf(cut), fitting);

    /// <summary>The port's earlier cuts that were swept with the same fitting, oldest first.</summary>
    public IReadOnlyList<CutFlow> Before(Kept<Cut> cut, Fitting fitting) =>
        [.. ledger.CutsOf(cut.Fact.Port).Where(c => c.Fact.Number < cut.Fact.Number).Select(c => Of(c, fitting)).OfType<CutFlow>()];

    private List<ReducedSweep> SweepsOf(Kept<Cut> cut) => [.. ledger.SweepsOf(cut.Id).Select(Of).Where(s => !s.Curve.IsEmpty)];
}
