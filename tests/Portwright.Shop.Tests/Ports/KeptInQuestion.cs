using Portwright.Engine.Runs;
using Portwright.Shop.Ports;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Units;

namespace Portwright.Shop.Tests.Ports;

/// <summary>What was asked about when it was typed and kept all the same stands on the port's sheet, for as long as it stands in the record.</summary>
public sealed class KeptInQuestion
{
    private readonly SimulatedBench _bench = new(Ranges.OfEachKind[7]);
    private readonly Guid _cut, _sweep, _reading, _section;

    public KeptInQuestion()
    {
        _cut = _bench.Cut(0);
        _sweep = _bench.Sweep(_cut);
        foreach (var lift in new[] { 0.002, 0.004 }) _bench.Read(_sweep, lift, 0.12 * lift);
        _reading = _bench.Read(_sweep, 0.006, 0.0011);
        var station = _bench.Add(new Station(_bench.PortId, "A", 0.03, "pinch"));
        _section = _bench.Add(new Section(_cut, station, SectionForm.Rectangle, [Typed.Of(38, "mm"), Typed.Of(20, "mm"), Typed.Of(4, "mm")]));
    }

    [Fact]
    public void Reading_valve_sweep_air_and_section_are_each_said_in_a_sentence()
    {
        Assert.Empty(Said());
        Keep(_reading, "Reading", "1952");
        Keep(_bench.PortId, "Valve head", "1.97");
        Keep(_sweep, "Test pressure", "28.6");
        Keep(_bench.Ledger.WeatherOf(_sweep)[0].Id, "Barometer", "23.0");
        Keep(_section, "Width", "3.8");
        Assert.Equal(
            [
                "The reading \"1952\" at lift 0.006 m was asked about when it was typed, and kept.",
                "Valve head \"1.97\" was asked about when it was typed, and kept.",
                "Test pressure \"28.6\" was asked about when it was typed, and kept.",
                "Barometer \"23.0\" was asked about when it was typed, and kept.",
                "Width \"3.8\" was asked about when it was typed, and kept.",
            ],
            Said());
    }

    [Fact]
    public void What_was_put_right_since_is_said_no_more()
    {
        Keep(_reading, "Reading", "1952");
        Keep(_section, "Width", "3.8");
        var reading = _bench.Ledger.Get<FlowReading>(_reading);
        _bench.Put(Amend.Correct(reading, reading.Fact with { Reading = Typed.Of(195.2, "cfm") }, SimulatedBench.Morning.AddDays(1), "", "the point"));
        Assert.StartsWith("Width", Assert.Single(Said()), StringComparison.Ordinal);
        _bench.Put(Amend.Hide(_bench.Ledger.Get<Section>(_section), SimulatedBench.Morning.AddDays(1), "", "measured wrong"));
        Assert.Empty(Said());
    }

    /// <summary>A port is written down anew for its notes as well: the measure in question decides.</summary>
    [Fact]
    public void A_valves_measure_is_said_until_that_measure_changes()
    {
        Keep(_bench.PortId, "Valve head", "1.97");
        Correct(p => p with { Notes = "guide replaced" });
        Correct(p => p with { Valve = p.Valve! with { ThroatDiameter = 0.0435 } });
        Assert.Single(Said());
        Correct(p => p with { Valve = p.Valve! with { HeadDiameter = 0.0495 } });
        Assert.Empty(Said());
    }

    [Fact]
    public void Another_ports_and_a_later_cuts_are_not_this_sheets()
    {
        var other = _bench.Add(new Port(_bench.HeadId, PortKind.Intake, 2, false, new ValveData(0.050, Math.PI / 4, 0.0015, 0.044, 0.008)));
        Keep(other, "Valve head", "1.97");
        var later = _bench.Cut(1);
        var station = _bench.Ledger.All<Station>()[0].Id;
        Keep(_bench.Add(new Section(later, station, SectionForm.Rectangle, [Typed.Of(39, "mm"), Typed.Of(20, "mm"), Typed.Of(4, "mm")])), "Width", "3.9");
        var sweep = _bench.Sweep(later);
        Keep(_bench.Read(sweep, 0.006, 0.0012), "Reading", "2152");
        Assert.Empty(Said());
    }

    private void Keep(Guid of, string field, string text) => _bench.Add(new Confirmed(of, field, text, $"{field} \"{text}\"?"));

    private void Correct(Func<Port, Port> to)
    {
        var port = _bench.Ledger.Get<Port>(_bench.PortId);
        _bench.Put(Amend.Correct(port, to(port.Fact), SimulatedBench.Morning.AddDays(1), ""));
    }

    private IReadOnlyList<string> Said() =>
        [.. PortDocument.ForThePorter(PortAtCut.Of(new Reductions(_bench.Ledger), _bench.PortId, _cut, new NothingKept())).Sentences
            .Select(s => s.In(UnitSystem.UsCustomary)).Where(s => s.Contains("was asked about when it was typed", StringComparison.Ordinal))];

    private sealed class NothingKept : IKeptPoints
    {
        public OperatingPoint? Find(string key) => null;

        public void Keep(string key, OperatingPoint point)
        {
        }
    }
}
