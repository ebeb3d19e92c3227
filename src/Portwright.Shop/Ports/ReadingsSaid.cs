using Portwright.Physics.TestPiece;
using Portwright.Shop.Budgets;
using Portwright.Shop.Reduction;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Ports;

/// <summary>Every reading as it was typed, with its range, test pressure and direction.</summary>
internal static class ReadingsSaid
{
    public static Part? Of(PortAtCut port)
    {
        if (port.Sheet.Flow is not { } flow) return null;
        var rows = flow.Sweeps.SelectMany((sweep, i) => sweep.Curve.Points.SelectMany(p => p.Readings.Select(r => (Sweep: sweep, Number: i + 1, Reading: r))))
            .OrderBy(r => r.Number).ThenBy(r => r.Reading.Reading.Sequence)
            .Select(r => (IReadOnlyList<Cell>)
            [
                new($"{r.Number}"),
                new($"{Quantity.Lift(r.Reading.Lift)}"),
                new(Sentence.Plain(AsTyped.Of(r.Reading.Reading.Fact.Reading, r.Reading.Reading.Fact.Range.Length > 0 ? r.Reading.Reading.Fact.Range : r.Sweep.Sweep.Fact.Range) + Temperatures(r.Reading.Reading.Fact))),
                new($"{Quantity.Pressure(r.Reading.TestPressure)}"),
                new(Sentence.Plain(r.Sweep.Sweep.Fact.Direction == FlowDirection.Draw ? "drawn" : "blown")),
            ]);
        return new Part("readings", $"Every reading", [new Table(
            "readings",
            $"As it was read, in the order taken; it never changes",
            [
                new("sweep", $"sweep"), new("lift", $"lift", Dimension.Lift), new("read", $"as typed", Strong: true), new("pressure", $"test pressure", Dimension.Pressure), new("direction", $"air"),
            ],
            [.. rows],
            Sentence.Empty), Restated(flow)], Reader.Engineer);
    }

    /// <summary>Plenum and meter, where they were read: <c>, plenum 31 °C</c>.</summary>
    private static string Temperatures(Record.FlowReading fact) =>
        (fact.PlenumTemperature is { } plenum ? $", plenum {plenum.WithUnit}" : "") + (fact.MeterTemperature is { } meter ? $", meter {meter.WithUnit}" : "");

    /// <summary>What the readings come to, and what the plain rule would make of them.</summary>
    private static Table Restated(CutFlow flow) => new(
        "effective-area",
        $"What they come to",
        [
            new("lift", $"lift", Dimension.Lift), new("readings", $"readings"), new("effective-area", $"effective area", Dimension.Area, Strong: true),
            new("flow", $"flow", Dimension.VolumeFlow), new("plain-rule", $"plain root rule", Dimension.VolumeFlow),
        ],
        [.. flow.Curve.Points.Select(p => (IReadOnlyList<Cell>)
        [
            new($"{Quantity.Lift(p.Lift)}"), new($"{p.Readings.Count}"), new($"{Quantity.Of(p.EffectiveArea, Dimension.Area)}"), new($"{Quantity.Flow(p.Flow).By(PortNumber.FlowKey(p.Lift))}"), new($"{Quantity.Flow(p.PlainRuleFlow)}"),
        ])],
        $"The effective area is that of a loss-free nozzle which passes as much. The plain square-root rule forgets that air expands: it stands here to compare with other shops' sheets.");
}
