using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;
using Portwright.Physics.TestPiece;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Shop.Units;
using Portwright.Store.Demo;

namespace Portwright.Bench;

/// <summary>A million readings of a percent-of-range bench to effective areas, each with its full budget of doubt.</summary>
[MemoryDiagnoser]
[SimpleJob(RunStrategy.Monitoring, launchCount: 1, warmupCount: 1, iterationCount: 5)]
public class ReductionBench
{
    public const int Readings = 1_000_000;

    private ReadingInputs _inputs = null!;
    private Typed[] _readings = [];
    private string[] _names = [];
    private Typed _pressure = null!;

    [GlobalSetup]
    public void SetUp()
    {
        var ledger = Ledger.Of(DemoShop.Entries());
        var bench = ledger.Get<BenchCard>(DemoShop.Bench);
        var range = bench.Fact.RangeNamed("large")!;
        var factor = MeterFactor.At(BenchMoment.EndOf(new DateOnly(2026, 4, 7)), bench, range, ledger);
        _inputs = new ReadingInputs(bench, range, new RoomState(98_800, 293, 0.45, []), factor.Factor, Estimate.Exact(1e-6));
        _readings = [.. Enumerable.Range(0, 1000).Select(i => Typed.Of(20 + i * 0.07, "%"))];
        _names = [.. Enumerable.Range(0, 1000).Select(i => $"reading {i}")];
        _pressure = Typed.Of(28, "inH2O");
    }

    [Benchmark(OperationsPerInvoke = Readings)]
    public double Million_readings_with_full_doubt()
    {
        var sum = 0.0;
        for (var i = 0; i < Readings; i++)
        {
            sum += _inputs.Reduce(_readings[i % 1000], _pressure, FlowDirection.Draw, null, null, _names[i % 1000]).EffectiveArea.StandardUncertainty;
        }

        return sum;
    }
}
