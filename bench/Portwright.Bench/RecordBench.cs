using System.Globalization;
using System.Text;
using BenchmarkDotNet.Attributes;
using Portwright.Shop.Record;
using Portwright.Shop.Units;
using Portwright.Store;
using Portwright.Store.Demo;
using Portwright.Store.Import;

namespace Portwright.Bench;

/// <summary>Saving, opening and importing. Each saved entry is on the disk before the call returns.</summary>
[MemoryDiagnoser]
[ShortRunJob]
public class RecordBench
{
    private string _folder = "";
    private Journal _journal = null!;
    private Guid _sweep;
    private byte[] _csv = [];

    [GlobalSetup]
    public void SetUp()
    {
        _folder = Directory.CreateTempSubdirectory("portwright-bench-").FullName;
        _journal = Journal.Open(_folder);
        DemoShop.Load(_journal);
        _sweep = Ledger.Of(_journal.ReadAll()).All<Sweep>()[0].Id;
        var text = new StringBuilder("lift,run 1 (%),run 2 (%),run 3 (%)\n");
        for (var i = 0; i < 3000; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $".{100 + i % 600},{30 + i % 60}.2,{30 + i % 60}.4,{30 + i % 60}.0\n");
        }

        _csv = Encoding.UTF8.GetBytes(text.ToString());
    }

    [GlobalCleanup]
    public void CleanUp()
    {
        _journal.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    [Benchmark]
    public bool Save_one_reading() => _journal.Append(Reading());

    [Benchmark(OperationsPerInvoke = 1000)]
    public int Save_a_thousand_readings_at_once() => _journal.Append([.. Enumerable.Range(0, 1000).Select(_ => Reading())]);

    [Benchmark]
    public int Read_the_demo_shop_from_its_files() => DemoShop.Entries().Count;

    [Benchmark(OperationsPerInvoke = 9000)]
    public int Preview_a_file_of_9000_readings() =>
        TableFile.TryRead(_csv, "sweeps.csv", null, out var table, out var problem)
            ? SweepTable.Guess(table, UnitSystem.UsCustomary).Readings.Count
            : throw new InvalidOperationException(problem);

    private Entry Reading() => Entry.About(
        Guid.NewGuid(), DemoShop.Job, new FlowReading(_sweep, Typed.Of(0.3, "in"), Typed.Of(58.2, "%")), DateTimeOffset.UtcNow);
}
