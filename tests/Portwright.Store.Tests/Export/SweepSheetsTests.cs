using Portwright.Physics.TestPiece;
using Portwright.Shop.Record;
using Portwright.Shop.Units;
using Portwright.Store.Export;

namespace Portwright.Store.Tests.Export;

public sealed class SweepSheetsTests
{
    private static readonly DateTimeOffset Noon = new(2026, 3, 2, 12, 0, 0, TimeSpan.FromHours(1));

    [Fact]
    public void A_port_is_exported_as_read_and_as_reduced()
    {
        var (ledger, port) = Shop();
        var raw = SweepSheets.Raw(ledger, port);
        Assert.Equal(4, raw.Rows.Count);
        Assert.All(raw.Rows, r => Assert.Equal(raw.Headings.Count, r.Count));
        Assert.Equal((".200", 0.2, "128.9 cfm", 128.9, "cfm"), (raw.Rows[2][4].Text, raw.Rows[2][5].Number, raw.Rows[2][7].Text, raw.Rows[2][8].Number, raw.Rows[2][9].Text));

        var reduced = SweepSheets.Reduced(ledger, port, UnitSystem.UsCustomary);
        Assert.Equal("Flow (cfm)", reduced.Headings[5]);
        Assert.All(reduced.Rows, r => Assert.Equal(reduced.Headings.Count, r.Count));
        Assert.Equal([0.1, 0.2], reduced.Rows.Select(r => r[3].Number!.Value));
        Assert.Equal([2.0, 2.0], reduced.Rows.Select(r => r[4].Number!.Value));
        // A direct readout at the restated pressure in standard air needs no correction.
        Assert.Equal(128.8, reduced.Rows[1][5].Number!.Value, 0.2);
        Assert.All(reduced.Rows, r => Assert.InRange(r[6].Number!.Value, 0.1, 20));
        Assert.Contains(reduced.Notes, n => n.Contains("28.00 inH2O", StringComparison.Ordinal));

        var si = SweepSheets.Reduced(ledger, port, UnitSystem.Si);
        Assert.Equal(reduced.Rows[1][5].Number!.Value * 0.4719474432, si.Rows[1][5].Number!.Value, 1e-6);
        Assert.Equal(reduced.Rows[1][6].Number!.Value * 0.4719474432, si.Rows[1][6].Number!.Value, 1e-6);
    }

    private static (Ledger, Guid) Shop()
    {
        var (bench, job, head, port, cut, sweep) = (Guid.NewGuid(), Guid.NewGuid(), Guid.NewGuid(), Guid.NewGuid(), Guid.NewGuid(), Guid.NewGuid());
        var range = new RangeCard("1", new DirectCard(Physics.Metering.ReadoutBasis.StandardAirCorrected, new AirCard()), "cfm", 0.1, 0.005);
        Entry About(Guid subject, Guid? of, Fact fact) => Entry.About(subject, of, fact, Noon);
        Entry Reading(string lift, double at, double cfm) => About(Guid.NewGuid(), job, new FlowReading(sweep, new Typed(at, "in", lift), Typed.Of(cfm, "cfm")));
        return (Ledger.Of(
        [
            About(bench, null, new BenchCard("Bench A", [range], [], new AirCard(), 28 * 249.08891, BenchDoubt.Unknown)),
            About(job, job, new Job("Practice", "", new EnginePlan())),
            About(head, job, new Head("Head 1")),
            About(port, job, new Port(head, PortKind.Intake, 2, false)),
            About(cut, job, new Cut(port, 0, "as received", new DateOnly(2026, 3, 2))),
            About(sweep, job, new Sweep(cut, bench, FlowDirection.Draw, "1", Typed.Of(28, "inH2O"), [])),
            Reading(".100", 0.1, 64.2), Reading(".100", 0.1, 64.4), Reading(".200", 0.2, 128.9), Reading(".200", 0.2, 128.7),
        ]), port);
    }
}
