using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Shop.Tests.Record;

/// <summary>A cut written down by mistake goes with all that hangs on it, and comes back as it was.</summary>
public sealed class CutBackTests
{
    private readonly SimulatedBench _bench = new(Ranges.OfEachKind[1]);
    private readonly Guid _first, _cut, _station, _sweep, _alone;

    public CutBackTests()
    {
        _first = _bench.Cut(0);
        _bench.Read(_bench.Sweep(_first), 0.006, 0.0006);
        _station = _bench.Add(new Station(_bench.PortId, "C", 0.05));
        _cut = _bench.Cut(1);
        _sweep = _bench.Sweep(_cut);
        _bench.Read(_sweep, 0.006, 0.0007);
        _alone = _bench.Read(_sweep, 0.008, 0.0008);
        _bench.Put(Amend.Hide(_bench.Ledger.Get<FlowReading>(_alone), SimulatedBench.Morning, "", "misread"));
        _bench.Add(new LeakReading(_sweep, _bench.Range.Name, Typed.Of(0.5, "%"), Typed.Of(28, "inH2O")));
        var ring = _bench.Add(new Ring(_cut, _station, Setting));
        _bench.Add(new ProbeReading(ring, 12, Typed.Of(5, "mm"), Typed.Of(60, "m/s")));
        var check = _bench.Add(new BallCheck(_cut, Setting, Typed.Of(10, "mm")));
        _bench.Add(new BallReading(check, _station, 6, Typed.Of(50, "%")));
        _bench.Add(new FlagReading(_cut, _station, 6, Typed.Of(8, "mm"), Typed.Of(28, "inH2O"), Steadiness.Swings));
        _bench.Add(new WallPoint(_cut, _station, 12, Typed.Of(3, "mm")));
        _bench.Add(new Section(_cut, _station, SectionForm.Oval, [Typed.Of(30, "mm"), Typed.Of(40, "mm")]));
        _bench.Add(new VolumeReading(_cut, Typed.Of(150, "cc")));
        _bench.Add(new Photo(_sweep, new string('a', 64), "image/png"));
        _bench.Add(new Confirmed(_bench.Ledger.ReadingsOf(_sweep)[0].Id, "Reading", "1952", "1952?"));
    }

    [Fact]
    public void Everything_of_the_cut_is_hidden_nothing_of_another_and_all_of_it_comes_back_but_what_was_out_before()
    {
        var before = Standing();
        var hanging = CutBack.HangingOn(_bench.Ledger, _cut).Select(h => h.Fact.GetType().Name).Order().Distinct();
        Assert.Equal(
            ["BallCheck", "BallReading", "Confirmed", "FlagReading", "FlowReading", "LeakReading", "Photo", "ProbeReading", "Ring", "Section", "Sweep", "VolumeReading", "WallPoint", "WeatherReading"],
            hanging);
        Put(CutBack.Take(_bench.Ledger, _bench.Ledger.Get<Cut>(_cut), SimulatedBench.Morning.AddDays(1), "kd"));
        Assert.Equal([_first], _bench.Ledger.CutsOf(_bench.PortId).Select(c => c.Id));
        Assert.DoesNotContain(_bench.Ledger.All<FlowReading>(), r => r.Fact.Sweep == _sweep);
        Assert.Single(_bench.Ledger.All<FlowReading>());
        Assert.Single(_bench.Ledger.All<Station>());
        Assert.Empty(_bench.Ledger.All<WallPoint>());

        var back = CutBack.Last(_bench.Ledger, _bench.PortId)!;
        Assert.Equal(_cut, back.Id);
        Assert.Equal(SimulatedBench.Morning.AddDays(1), CutBack.TakenAt(_bench.Ledger, back));
        Put(CutBack.Put(_bench.Ledger, back, SimulatedBench.Morning.AddDays(2), "kd"));
        Assert.Equal(before, Standing());
        Assert.True(_bench.Ledger.IsHidden(_alone));
        Assert.Null(CutBack.Last(_bench.Ledger, _bench.PortId));
    }

    [Fact]
    public void Only_the_latest_cut_is_taken_back_and_never_the_port_as_received()
    {
        Assert.Null(CutBack.Refusal(_bench.Ledger, _bench.Ledger.Get<Cut>(_cut)));
        Assert.StartsWith("Cut 0 is the port as it was received", CutBack.Refusal(_bench.Ledger, _bench.Ledger.Get<Cut>(_first)), StringComparison.Ordinal);
        _bench.Cut(2);
        Assert.Equal("Cut 2 was made after it. Take that one back first.", CutBack.Refusal(_bench.Ledger, _bench.Ledger.Get<Cut>(_cut)));
    }

    [Fact]
    public void A_cut_whose_number_was_given_again_is_not_offered_back_and_the_one_before_comes_first()
    {
        var second = _bench.Cut(2);
        Put(CutBack.Take(_bench.Ledger, _bench.Ledger.Get<Cut>(second), SimulatedBench.Morning.AddDays(1), ""));
        Put(CutBack.Take(_bench.Ledger, _bench.Ledger.Get<Cut>(_cut), SimulatedBench.Morning.AddDays(2), ""));
        Assert.Equal(_cut, CutBack.Last(_bench.Ledger, _bench.PortId)!.Id);
        Put(CutBack.Put(_bench.Ledger, _bench.Ledger.Get<Cut>(_cut), SimulatedBench.Morning.AddDays(3), ""));
        Assert.Equal(second, CutBack.Last(_bench.Ledger, _bench.PortId)!.Id);
        _bench.Cut(2);
        Assert.Null(CutBack.Last(_bench.Ledger, _bench.PortId));
    }

    private BenchSetting Setting => new(_bench.BenchId, Physics.TestPiece.FlowDirection.Draw, Typed.Of(6, "mm"), Typed.Of(28, "inH2O"), _bench.Range.Name);

    private List<Guid> Standing() => [.. _bench.Ledger.All<Fact>().Select(f => f.Id).Order()];

    private void Put(IEnumerable<Entry> entries)
    {
        foreach (var entry in entries) _bench.Put(entry);
    }
}
