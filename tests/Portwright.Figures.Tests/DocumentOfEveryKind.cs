using Portwright.Figures.Tests.Ports;
using Portwright.Shop.Ports;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Figures.Tests;

/// <summary>A port with everything there is to draw, and a document with every kind of block and of figure.</summary>
internal static class DocumentOfEveryKind
{
    private static readonly Lazy<PortAtCut> Made = new(() =>
    {
        var port = InventedPorts.FaultyAtCut();
        return port with { Engine = port.Engine with { Answer = InventedEngine.Answer() } };
    });

    public static PortAtCut Port => Made.Value;

    public static Document Document { get; } = new(
        $"Every kind, cut 7", $"invented job, invented customer",
        [
            new Part("one", $"First heading",
            [
                new Paragraph("paragraph", $"A paragraph with a lift of {Quantity.Lift(0.00889)} in it."),
                new Caution("caution", $"Mind the {Term.Aluminum} under {Quantity.Length(0.0024)}."),
                new Values("values", [new("a", $"flow named", $"{new Quantity(0.11, Dimension.VolumeFlow, 0.0006)}"), new("b", $"against before", $"+2.0, real gain", VerdictShape.Gain)]),
                .. Enum.GetValues<FindingKind>().Select((k, i) => new FindingSaid(
                    $"finding-{k}", k, $"A title of a {k.ToString()} finding", 0.935 - 0.1 * i, $"It says {Quantity.Speed(81 + i)}.", [$"Then the first of {k.ToString()}.", $"Then the second, {Quantity.Area(0.0012 + 0.0001 * i)}."])),
                new Table(
                    "table", $"A caption of a table", [new("lift", $"lift column", Dimension.Lift), new("flow", $"flow column", Dimension.VolumeFlow, Strong: true), new("words", $"verdict column"), new("empty", $"column nobody filled", Dimension.Area)],
                    [.. Enum.GetValues<VerdictShape>().Select((s, i) => (IReadOnlyList<Cell>)[new($"{Quantity.Lift(0.001 * (i + 1))}"), new($"{new Quantity(0.02 * (i + 1), Dimension.VolumeFlow, 0.0003)}"), new($"shape {s.ToString()}", s), Cell.Empty])],
                    $"A note under the table."),
                .. Enum.GetValues<FigureKind>().Where(k => k != FigureKind.Section).Select(Figure),
            ]),
            new Part("two", $"Sections heading", [.. Port.Survey.Stations.Select(s => new Figure($"section-{s.Letter}", FigureKind.Section, $"The caption of section {s.Letter}.", s.Station.Id))]),
            new Part("three", $"Behind the fold", [new Paragraph("last", $"The engineer's sentence.")], Reader.Engineer),
        ],
        [new("job", $"job", $"invented job"), new("customer", $"customer", Sentence.Empty), new("port", $"port", $"intake 9")]);

    /// <summary>Every text a layout of it shows in those units: a cell under a head with a unit without its own.</summary>
    public static IEnumerable<string> Texts(Document document, UnitSystem units) =>
    [
        .. document.Sentences.Except(document.Blocks.OfType<Table>().SelectMany(t => t.Rows.SelectMany(r => r.Select(c => c.Text)))).Select(s => s.In(units)),
        .. document.Blocks.OfType<Table>().SelectMany(t => t.Rows.SelectMany(r => r.Select((c, i) => t.Columns[i].Dimension is null ? c.Text.In(units) : c.Text.BareIn(units)))),
        .. document.Blocks.OfType<Table>().SelectMany(t => t.Columns).Select(c => c.Dimension is { } of ? Quantity.UnitName(of, units) : ""),
    ];

    private static Figure Figure(FigureKind kind) => new($"figure-{kind}", kind, $"The caption of {kind.ToString()}.");
}
