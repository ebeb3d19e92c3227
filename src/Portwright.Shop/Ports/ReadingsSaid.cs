using Portwright.Physics.TestPiece;
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
                new(Sentence.Plain(AsTyped(r.Reading, r.Sweep))),
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

    /// <summary><c>54.2 % of range middle</c>: what was typed, with the unit where the typing left it out, and the range it belongs to.</summary>
    private static string AsTyped(Reduction.ReducedReading reading, ReducedSweep sweep)
    {
        var typed = reading.Reading.Fact.Reading;
        var text = typed.Text.Trim();
        var range = reading.Reading.Fact.Range.Length > 0 ? reading.Reading.Fact.Range : sweep.Sweep.Fact.Range;
        var number = typed.Unit.Length == 0 || text.EndsWith(typed.Unit, StringComparison.OrdinalIgnoreCase) ? text : $"{text} {typed.Unit}";
        return typed.Unit == "%" ? $"{number} of range {range}" : $"{number} on range {range}";
    }

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
            new($"{Quantity.Lift(p.Lift)}"), new($"{p.Readings.Count}"), new($"{Quantity.Of(p.EffectiveArea, Dimension.Area)}"), new($"{Quantity.Flow(p.Flow)}"), new($"{Quantity.Flow(p.PlainRuleFlow)}"),
        ])],
        $"The effective area is that of a loss-free nozzle which passes as much. The plain square-root rule forgets that air expands: it stands here to compare with other shops' sheets.");
}
