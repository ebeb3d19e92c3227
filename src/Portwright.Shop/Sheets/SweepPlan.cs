using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Units;

namespace Portwright.Shop.Sheets;

/// <summary>A sweep's lifts: which are read, which are left, which is asked for next.</summary>
/// <param name="Left">Lifts without a reading, in the order asked.</param>
/// <param name="Readings">All readings that stand, in the order taken.</param>
public sealed record SweepPlan(Kept<Sweep> Sweep, IReadOnlyList<Typed> Left, IReadOnlyList<Kept<FlowReading>> Readings)
{
    /// <summary>The lift to set now; null when the plan is done.</summary>
    public Typed? Next => Left.Count > 0 ? Left[0] : null;

    public static SweepPlan Of(Ledger ledger, Kept<Sweep> sweep)
    {
        var readings = ledger.ReadingsOf(sweep.Id);
        var read = readings.Select(r => r.Fact.Lift.Si(Dimension.Lift)).ToList();
        var left = sweep.Fact.Lifts.Where(l => !read.Any(r => LiftGroups.Same(r, l.Si(Dimension.Lift)))).ToList();
        return new SweepPlan(sweep, left, readings);
    }
}
