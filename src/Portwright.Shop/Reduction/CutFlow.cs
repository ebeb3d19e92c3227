using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;

namespace Portwright.Shop.Reduction;

/// <summary>What a port flows at one cut: all its sweeps together.</summary>
/// <param name="Curve">At each lift the mean of the sweeps that have it; sweeps in set-ups of their own bring their own scatter, so that
/// a second set-up really does make the result surer.</param>
public sealed record CutFlow(Kept<Cut> Cut, IReadOnlyList<ReducedSweep> Sweeps, FlowCurve Curve)
{
    /// <summary>Reduces every sweep of the cut; null where it has no reading yet.</summary>
    public static CutFlow? Of(Ledger ledger, Kept<Cut> cut)
    {
        var sweeps = ledger.SweepsOf(cut.Id).Select(s => SweepReduction.Reduce(ledger, s)).Where(s => !s.Curve.IsEmpty).ToList();
        if (sweeps.Count == 0)
        {
            return null;
        }

        // Sweeps drawn and blown through the same port answer different questions; the latest direction is the one shown.
        var direction = sweeps[^1].Curve.Direction;
        sweeps = [.. sweeps.Where(s => s.Curve.Direction == direction)];
        return new CutFlow(cut, sweeps, sweeps.Count == 1 ? sweeps[0].Curve : Together(sweeps));
    }

    private static FlowCurve Together(List<ReducedSweep> sweeps)
    {
        var points = LiftGroups.Of(sweeps.SelectMany(s => s.Curve.Points), p => p.Lift)
            .Select(g => new LiftPoint(
                g.Lift,
                [.. g.Items.SelectMany(p => p.Readings)],
                Estimate.Mean([.. g.Items.Select(p => p.EffectiveArea)]),
                Estimate.Mean([.. g.Items.Select(p => p.Flow)]),
                g.Items.Average(p => p.PlainRuleFlow)));
        return new FlowCurve(points, sweeps[^1].Curve.Direction, sweeps[^1].Curve.RestatedAt, sweeps[^1].Curve.Air);
    }
}
