using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Sections;

namespace Portwright.Shop.Plan;

/// <summary>What the heads of a job say about the engine: the ports of one kind of a cylinder, taken alike.</summary>
/// <param name="Count">Of a cylinder, 1 or more.</param>
/// <param name="ValveDiameter">Head of the valve, m; null where not written down.</param>
/// <param name="FlangeArea">Latest measured section within a tenth of the valve's diameter of the flange, m2; null where none.</param>
public sealed record PortsOfKind(int Count = 1, double? ValveDiameter = null, double? FlangeArea = null);

/// <summary>Both kinds.</summary>
public sealed record EnginePorts(PortsOfKind Intake, PortsOfKind Exhaust)
{
    /// <summary>One of each, nothing known of them.</summary>
    public static EnginePorts Unknown { get; } = new(new PortsOfKind(), new PortsOfKind());

    /// <summary>From the record: the first port of each kind that says more stands for the others.</summary>
    public static EnginePorts Of(Reductions reductions, Guid job)
    {
        ArgumentNullException.ThrowIfNull(reductions);
        var ledger = reductions.Ledger;
        var ports = ledger.HeadsOf(job).SelectMany(h => ledger.PortsOf(h.Id)).ToList();
        return new EnginePorts(Of(ledger, ports, PortKind.Intake), Of(ledger, ports, PortKind.Exhaust));
    }

    private static PortsOfKind Of(Ledger ledger, IEnumerable<Kept<Port>> all, PortKind kind)
    {
        var ports = all.Where(p => p.Fact.Kind == kind).ToList();
        var valve = ports.Select(p => p.Fact.Valve?.HeadDiameter).FirstOrDefault(d => d > 0);
        return new PortsOfKind(
            ports.GroupBy(p => (p.Fact.Head, p.Fact.Cylinder)).Select(g => g.Count()).DefaultIfEmpty(1).Max(),
            valve,
            ports.Select(p => FlangeOf(ledger, p, valve ?? 0.04)).FirstOrDefault(a => a > 0));
    }

    private static double? FlangeOf(Ledger ledger, Kept<Port> port, double valve) =>
        ledger.CutsOf(port.Id) is [.., var cut]
            ? ledger.All<Station>().Where(s => s.Fact.Port == port.Id && s.Fact.Distance <= valve / 10).OrderBy(s => s.Fact.Distance)
                .Select(s => ReducedSection.Latest(ledger, s, cut, out _)?.Area.Value).FirstOrDefault(a => a > 0)
            : null;
}
