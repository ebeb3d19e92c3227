using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;

namespace Portwright.Shop.Reduction;

/// <summary>What a port flows at one cut with one fitting: all sweeps alike together.</summary>
/// <param name="Fitting">Which way the air went and what was fitted.</param>
/// <param name="Curve">At each lift the mean of the sweeps that have it; sweeps in set-ups of their own bring their own scatter, so that
/// a second set-up really does make the result surer.</param>
/// <param name="Apart">Sweeps of this cut with another fitting: they measured something else and are not in this curve.</param>
public sealed record CutFlow(Kept<Cut> Cut, Fitting Fitting, IReadOnlyList<ReducedSweep> Sweeps, FlowCurve Curve, IReadOnlyList<ReducedSweep> Apart)
{
    /// <summary>Reduces every sweep of the cut and gives those alike to the latest; null where it has no reading yet.</summary>
    public static CutFlow? Of(Ledger ledger, Kept<Cut> cut) => new Reductions(ledger).Of(cut);

    /// <summary>The sweeps with that fitting; null where there are none.</summary>
    internal static CutFlow? Of(Kept<Cut> cut, IReadOnlyList<ReducedSweep> sweeps, Fitting fitting)
    {
        var alike = sweeps.Where(s => s.Sweep.Fact.Fitting == fitting).ToList();
        return alike.Count == 0 ? null : new CutFlow(
            cut, fitting, alike, alike.Count == 1 ? alike[0].Curve : Together(alike), [.. sweeps.Where(s => s.Sweep.Fact.Fitting != fitting)]);
    }

    private static FlowCurve Together(List<ReducedSweep> sweeps)
    {
        var last = sweeps[^1].Curve;
        var points = LiftGroups.Of(sweeps.SelectMany(s => s.Curve.Points), p => p.Lift)
            .Select(g => LiftPoint.Of(
                g.Lift,
                [.. g.Items.SelectMany(p => p.Readings)],
                Estimate.Mean([.. g.Items.Select(p => p.EffectiveArea)]),
                last.Direction,
                last.RestatedAt,
                last.Air));
        return new FlowCurve(points, last.Direction, last.RestatedAt, last.Air);
    }
}
