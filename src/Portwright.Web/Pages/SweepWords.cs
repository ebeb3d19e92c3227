using Portwright.Physics.TestPiece;
using Portwright.Shop.Record;
using Portwright.Shop.Units;
using Portwright.Web.Shell;

namespace Portwright.Web.Pages;

/// <summary>The sentence over a port and its sweeps; each word can be touched and changed.</summary>
internal static class SweepWords
{
    /// <summary>Job, head, port and cut.</summary>
    public static List<Word> Of(Ledger ledger, Kept<Job> job, Kept<Head> head, Kept<Port> port, Kept<Cut> cut) =>
    [
        new(job.Fact.Name, $"/job/{job.Id}", After: "job"),
        new(head.Fact.Name, $"/job/{job.Id}")
        {
            Choices = [.. ledger.HeadsOf(job.Id).Select(h => new Choice(
                h.Fact.Name,
                ledger.PortsOf(h.Id).FirstOrDefault(p => p.Fact.Kind == port.Fact.Kind && p.Fact.Cylinder == port.Fact.Cylinder) is { } same ? $"/port/{same.Id}" : $"/job/{job.Id}",
                h.Id == head.Id))],
        },
        new(port.Fact.Name, $"/port/{port.Id}")
        {
            Choices = [.. ledger.PortsOf(head.Id).Select(p => new Choice(p.Fact.Name, $"/port/{p.Id}", p.Id == port.Id))],
        },
        new($"cut {cut.Fact.Number}", $"/port/{port.Id}/cut/{cut.Fact.Number}")
        {
            Choices = [.. ledger.CutsOf(port.Id).Select(c => new Choice($"cut {c.Fact.Number}: {c.Fact.Done}", $"/port/{port.Id}/cut/{c.Fact.Number}", c.Id == cut.Id))],
        },
    ];

    /// <summary>And how it is tested.</summary>
    public static List<Word> Of(Ledger ledger, Kept<Job> job, Kept<Head> head, Kept<Port> port, Kept<Cut> cut, Kept<Sweep> sweep, UnitSystem units)
    {
        var words = Of(ledger, job, head, port, cut);
        words.Add(new Word(
            Print.Number(sweep.Fact.TestPressure.Si(Dimension.Pressure), Dimension.Pressure, units, 1),
            $"/sweep/{sweep.Id}/set-up",
            Before: sweep.Fact.Direction == FlowDirection.Draw ? "drawing at" : "blowing at",
            Last: true));
        return words;
    }
}
