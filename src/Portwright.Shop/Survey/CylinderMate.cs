using Portwright.Shop.Record;
using Portwright.Shop.Reduction;

namespace Portwright.Shop.Survey;

/// <summary>Another port of the same cylinder of the same head, at its latest cut.</summary>
/// <param name="Flow">Null where that cut has no reading yet.</param>
public sealed record CylinderMate(Kept<Port> Port, CutFlow? Flow)
{
    internal static IReadOnlyList<CylinderMate> Of(Reductions reductions, Kept<Port> port) =>
        [.. reductions.Ledger.PortsOf(port.Fact.Head)
            .Where(p => p.Id != port.Id && p.Fact.Cylinder == port.Fact.Cylinder)
            .Select(p => new CylinderMate(
                p,
                reductions.Ledger.CutsOf(p.Id) is [.., var latest] ? reductions.Of(latest) : null))];
}
