using Portwright.Engine.Runs;
using Portwright.Shop.Reduction;
using Portwright.Shop.Words;

namespace Portwright.Shop.Ports;

/// <summary>All of a job that is handed over: its first page, then the sheet of every port that was tested, each at its latest tested cut.</summary>
public sealed record JobSheets(Document First, IReadOnlyList<(PortAtCut Port, Document Document)> Sheets)
{
    /// <param name="full">With what is for the engineer.</param>
    /// <exception cref="KeyNotFoundException">No such job.</exception>
    public static JobSheets Of(Reductions reductions, Guid job, IKeptPoints kept, DateOnly? printed, bool full)
    {
        ArgumentNullException.ThrowIfNull(reductions);
        var ledger = reductions.Ledger;
        List<PortAtCut> ports = [];
        foreach (var port in ledger.HeadsOf(job).SelectMany(h => ledger.PortsOf(h.Id)))
        {
            if (ledger.CutsOf(port.Id).LastOrDefault(c => reductions.Of(c) is not null) is { } cut) ports.Add(PortAtCut.Of(reductions, port.Id, cut.Id, kept));
        }

        return new(
            JobPageDocument.Of(ledger, job, ports, printed),
            [.. ports.Select(p => (p, full ? PortDocument.Of(p, printed) : PortDocument.ForThePorter(p, printed)))]);
    }
}
