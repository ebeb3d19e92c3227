using BenchmarkDotNet.Attributes;
using Portwright.Shop.Record;
using Portwright.Shop.Sheets;
using Portwright.Store.Demo;

namespace Portwright.Bench;

/// <summary>The port sheet of a port with a hundred sweeps: four cuts of twenty-five set-ups, six lifts, three readings each.</summary>
[MemoryDiagnoser]
[ShortRunJob]
public class SheetBench
{
    private Ledger _ledger = Ledger.Empty;

    [GlobalSetup]
    public void SetUp()
    {
        var demo = DemoShop.Entries();
        var ledger = Ledger.Of(demo);
        var pattern = ledger.All<Sweep>().First(s => ledger.Get<Cut>(s.Fact.Cut).Fact.Port == DemoShop.Featured && ledger.ReadingsOf(s.Id).Count == 18);
        var readings = ledger.ReadingsOf(pattern.Id);
        var more = new List<Entry>();
        foreach (var cut in ledger.CutsOf(DemoShop.Featured))
        {
            for (var n = ledger.SweepsOf(cut.Id).Count; n < 25; n++)
            {
                var at = pattern.Entry.At.AddHours(n);
                var sweep = Guid.NewGuid();
                more.Add(Entry.About(sweep, DemoShop.Job, pattern.Fact with { Cut = cut.Id }, at));
                more.AddRange(readings.Select(r => Entry.About(Guid.NewGuid(), DemoShop.Job, r.Fact with { Sweep = sweep }, at)));
            }
        }

        _ledger = ledger.With(more);
        var sheet = PortSheet.Of(_ledger, DemoShop.Featured);
        var sweeps = sheet.Flow!.Sweeps.Count + sheet.Earlier.Sum(e => e.Sweeps.Count);
        if (sweeps != 100)
        {
            throw new InvalidOperationException($"{sweeps} sweeps, not 100.");
        }
    }

    [Benchmark]
    public int Sheet_with_100_sweeps() => PortSheet.Of(_ledger, DemoShop.Featured).Windows.Count;

    [Benchmark]
    public int Board_of_the_same_job() => JobBoard.Of(_ledger, DemoShop.Job).Heads.Count;
}
