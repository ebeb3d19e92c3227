using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Shop.Sheets;
using Portwright.Shop.Tests.Words;

namespace Portwright.Shop.Tests.Bench;

/// <summary>One tube behind several holes: what it is off, all ranges are off.</summary>
public sealed class OneInstrument
{
    private const double Area = 0.00100;

    private static readonly RangeCard Swept = Ranges.OfEachKind[1] with { Resolution = 0.0005, Accuracy = 0.015 };

    [Fact]
    public void A_range_never_calibrated_takes_the_factor_of_one_on_the_same_instrument_with_more_doubt()
    {
        var (alone, shared) = (Factor("", 0.015), Factor("slant tube", 0.015));
        Assert.Equal((1, 0.015), (alone.Factor.Value, alone.Factor.StandardUncertainty));
        Assert.Equal(1.03, shared.Factor.Value, 1e-6);
        Assert.Contains("Range plate was never calibrated. It is read on the same instrument as range other", Assert.Single(shared.Remarks), StringComparison.Ordinal);
        // A hole known better than that costs what it is known to.
        var better = Factor("slant tube", 0.004);
        Assert.Equal(1.03 * 1.03 * (0.01 * 0.01 - 0.004 * 0.004), shared.Factor.Variance - better.Factor.Variance, 1e-8);
        Assert.Equal(1.03 * 0.01, shared.Factor.Contributions.Single(c => c.Source.StartsWith("meter", StringComparison.Ordinal)).Amount, 1e-6);
    }

    [Fact]
    public void A_range_with_a_calibration_of_its_own_keeps_it()
    {
        var bench = Bench("slant tube", 0.015);
        bench.TrueFactor = 1.01;
        bench.Add(new Calibration(bench.BenchId, bench.Range.Name, bench.Today, [bench.ReadPlate("number one", Area)], bench.Air(), Leak: bench.ReadPlate("", 0)));
        Assert.Equal(1.01, MeterFactor.At(BenchMoment.Last, bench.Ledger.Get<BenchCard>(bench.BenchId), bench.Range, bench.Ledger).Factor.Value, 1e-6);
    }

    [Fact]
    public void The_plate_of_one_range_speaks_for_a_sweep_on_another_only_where_they_share_the_instrument()
    {
        SweepBench At(string instrument)
        {
            var bench = Bench(instrument, 0.015);
            bench.Add(new MorningCheck(bench.BenchId, bench.Today, bench.Air(), bench.ReadPlate("", 0), [bench.ReadPlate("number one", Area) with { Range = "other" }]));
            var sweep = bench.Sweep(bench.Cut(0));
            bench.ReadLeak(sweep);
            bench.Read(sweep, 0.006, 0.0009);
            return Assert.Single(PortSheet.Of(bench.Ledger, bench.PortId).Benches);
        }

        Assert.Single(At("slant tube").Plates);
        var alone = At("");
        Assert.Empty(alone.Plates);
        Assert.Contains(alone.Remarks, r => r.Us().Contains("No check plate was read that day on range plate", StringComparison.Ordinal));
    }

    private static MeterFactor Factor(string instrument, double accuracy)
    {
        var bench = Bench(instrument, accuracy);
        var card = bench.Ledger.Get<BenchCard>(bench.BenchId);
        return MeterFactor.At(BenchMoment.Last, card, card.Fact.RangeNamed("plate")!, bench.Ledger);
    }

    /// <summary>Two ranges; only the other was calibrated, on a tube that shows three percent too little.</summary>
    private static SimulatedBench Bench(string instrument, double accuracy)
    {
        var swept = Swept with { Instrument = instrument, Accuracy = accuracy };
        var bench = new SimulatedBench(swept, BenchDoubt.Unknown with { RepeatScatter = 0.001, RepeatDegrees = 50 }, [new CheckPlate("number one", Area, Area * 0.002)]) { TrueFactor = 1.03 };
        bench.Put(Entry.About(bench.BenchId, null, bench.Card with { Ranges = [swept, swept with { Name = "other" }] }, SimulatedBench.Morning));
        bench.Add(new Calibration(
            bench.BenchId, "other", bench.Today, [.. Enumerable.Repeat(bench.ReadPlate("number one", Area) with { Range = "other" }, 5)], bench.Air(), Leak: bench.ReadPlate("", 0) with { Range = "other" }));
        return bench;
    }
}
