using Portwright.Shop.Record;
using Portwright.Shop.Reduction;

namespace Portwright.Shop.Survey;

/// <summary>The ports that should be like one: of its kind, in its job, as far on.</summary>
internal static class SisterPorts
{
    public static IReadOnlyList<PortSurvey> Of(Reductions reductions, Guid portId, Guid? cutId)
    {
        var ledger = reductions.Ledger;
        var port = ledger.Get<Port>(portId);
        var cuts = ledger.CutsOf(portId);
        if ((cutId is { } id ? cuts.FirstOrDefault(c => c.Id == id) : cuts.LastOrDefault()) is not { } cut || ledger.Get<Head>(port.Fact.Head).Entry.Job is not { } job)
        {
            return [];
        }

        return [.. ledger.HeadsOf(job).SelectMany(h => ledger.PortsOf(h.Id))
            .Where(p => p.Id != portId && p.Fact.Kind == port.Fact.Kind)
            .Select(p => (Port: p.Id, Cut: LikeIt(reductions, p, cut.Fact.Number == 0)))
            .Where(p => p.Cut is not null)
            .Select(p => PortSurvey.Of(reductions, p.Port, p.Cut!.Id))];
    }

    private static Kept<Cut>? LikeIt(Reductions reductions, Kept<Port> sister, bool received)
    {
        var cuts = reductions.Ledger.CutsOf(sister.Id);
        return received
            ? cuts.FirstOrDefault(c => c.Fact.Number == 0)
            : cuts.LastOrDefault(c => c.Fact.Number > 0 && reductions.Of(c) is not null);
    }
}
