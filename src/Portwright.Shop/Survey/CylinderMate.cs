using Portwright.Shop.Record;
using Portwright.Shop.Reduction;

namespace Portwright.Shop.Survey;

/// <summary>Another port of the same cylinder of the same head, at its latest cut.</summary>
/// <param name="Flow">Null where that cut has no reading yet.</param>
/// <param name="CamLift">Net lift of its own cam by the engine plan, m; null where the plan does not say.</param>
public sealed record CylinderMate(Kept<Port> Port, CutFlow? Flow, double? CamLift)
{
    internal static IReadOnlyList<CylinderMate> Of(Reductions reductions, Kept<Port> port, EnginePlan plan) =>
        [.. reductions.Ledger.PortsOf(port.Fact.Head)
            .Where(p => p.Id != port.Id && p.Fact.Cylinder == port.Fact.Cylinder)
            .Select(p => new CylinderMate(
                p,
                reductions.Ledger.CutsOf(p.Id) is [.., var latest] ? reductions.Of(latest) : null,
                plan.LiftOf(p.Fact.Kind)))];
}
