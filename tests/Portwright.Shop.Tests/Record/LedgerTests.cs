using System.Text.Json;
using Portwright.Shop.Record;
using Portwright.Shop.Tests.Findings;
using Portwright.Shop.Units;

namespace Portwright.Shop.Tests.Record;

public sealed class LedgerTests
{
    private static readonly DateTimeOffset At = SimulatedBench.Morning;

    [Fact]
    public void A_correction_is_a_later_entry_that_points_at_the_one_it_replaces()
    {
        var (bench, reading) = OneReading();
        var standing = bench.Ledger.Get<FlowReading>(reading);
        bench.Put(Amend.Correct(standing, standing.Fact with { Reading = Typed.Of(5, "inH2O") }, At.AddHours(1), "RB", "fluid was off zero"));
        var ledger = bench.Ledger;

        Assert.Equal(5, ledger.Get<FlowReading>(reading).Fact.Reading.Value);
        var history = ledger.History(reading);
        Assert.Equal(2, history.Count);
        Assert.Equal(history[0].Number, history[1].Replaces);
        Assert.Equal("fluid was off zero", history[1].Reason);
    }

    [Fact]
    public void A_reading_is_not_corrected_without_a_reason()
    {
        var (bench, reading) = OneReading();
        var standing = bench.Ledger.Get<FlowReading>(reading);
        var refused = Assert.Throws<ArgumentException>(() => Amend.Correct(standing, standing.Fact, At, "RB", " "));
        Assert.Contains("only with a reason", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_hidden_comes_back_as_it_last_stood()
    {
        var (bench, reading) = OneReading();
        var standing = bench.Ledger.Get<FlowReading>(reading);
        bench.Put(Amend.Hide(standing, At.AddHours(1), "RB", "taken back"));
        Assert.Empty(bench.Ledger.All<FlowReading>());
        Assert.True(bench.Ledger.IsHidden(reading));

        bench.Put(Amend.Show(standing, At.AddHours(2), "RB", "it was right"));
        Assert.Equal(standing.Fact, bench.Ledger.All<FlowReading>().Single().Fact);
    }

    [Fact]
    public void A_corrected_reading_keeps_its_place_in_the_order_taken()
    {
        var (bench, first) = OneReading();
        var sweep = bench.Ledger.Get<FlowReading>(first).Fact.Sweep;
        bench.Read(sweep, 0.007, 0.001);
        var standing = bench.Ledger.Get<FlowReading>(first);
        bench.Put(Amend.Correct(standing, standing.Fact with { Sound = "whistles" }, At.AddHours(1), "", "noted late"));
        Assert.Equal(first, bench.Ledger.ReadingsOf(sweep)[0].Id);
    }

    [Fact]
    public void Every_kind_of_fact_is_written_as_json_and_read_back_the_same()
    {
        var (bench, reading) = OneReading();
        bench.Add(new Calibration(bench.BenchId, "plate", new DateOnly(2025, 3, 1), [bench.ReadPlate("one", 0.001)], bench.Air()));
        bench.Add(new MorningCheck(bench.BenchId, new DateOnly(2025, 3, 3), bench.Air(), bench.ReadPlate("", 0.00001), [bench.ReadPlate("one", 0.001)], MoreLeaks: [bench.ReadPlate("", 0.00002)]));
        bench.Add(new UsualRun("up, and once more low", [new RunStep(Typed.Of(.3, "in")), new RunStep(Typed.Of(.3, "in"), 2, Typed.Of(15, "inH2O"))]), null);
        bench.Add(new SetUpStudy(bench.BenchId, new DateOnly(2025, 3, 1), "head A", [[Typed.Of(100, "cfm"), Typed.Of(101, "cfm")], [Typed.Of(102, "cfm")]]));
        bench.Add(new Photo(bench.PortId, new string('a', 64), "image/png", "the bowl"));
        bench.ReadLeak(bench.Ledger.Get<FlowReading>(reading).Fact.Sweep);
        bench.Put(Amend.Hide(bench.Ledger.Get<FlowReading>(reading), At, "", "a try"));
        bench.Put(Amend.Show(bench.Ledger.Get<FlowReading>(reading), At, "", "kept"));
        foreach (var range in Ranges.OfEachKind)
        {
            bench.Add(bench.Card with { Ranges = [range] }, null);
        }

        foreach (var entry in new MadePort(1).Bench(out _, out _).Entries)
        {
            bench.Put(entry);
        }

        bench.Add(new Advice(Guid.NewGuid(), "thin-metal", null, 6, $"leave it", Decision.Refused, "no metal", 0.001, 0.0005, 0.002, 0.012));
        bench.Add(new BallCalibration(
            bench.BenchId, new DateOnly(2025, 3, 1), Typed.Of(0.5, "in"), Typed.Of(2, "in"), "plate", Typed.Of(28, "inH2O"), [Typed.Of(9, "inH2O")], [Typed.Of(8.6, "inH2O")], bench.Air()));
        bench.Add(new Confirmed(Guid.NewGuid(), "Valve head", "202", "Valve head: 2.02?"));
        var kinds = typeof(Fact).Assembly.GetTypes().Where(t => t.IsSubclassOf(typeof(Fact)) && !t.IsAbstract);
        Assert.Empty(kinds.Except(bench.Entries.Select(e => e.Fact.GetType())));
        foreach (var entry in bench.Entries)
        {
            var json = JsonSerializer.Serialize(entry, RecordJson.Default.Entry);
            var back = JsonSerializer.Deserialize(json, RecordJson.Default.Entry)!;
            Assert.Equal(entry.Fact.GetType(), back.Fact.GetType());
            Assert.Equal(json, JsonSerializer.Serialize(back, RecordJson.Default.Entry));
        }
    }

    private static (SimulatedBench Bench, Guid Reading) OneReading()
    {
        var bench = new SimulatedBench(Ranges.OfEachKind[1]);
        return (bench, bench.Read(bench.Sweep(bench.Cut(0)), 0.005, 0.0009));
    }
}
