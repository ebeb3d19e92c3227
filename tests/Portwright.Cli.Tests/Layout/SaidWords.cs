using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Cli.Tests.Layout;

/// <summary>What a document says, line by line as a reader sees it: the expectation every layout is held against.</summary>
internal static class SaidWords
{
    /// <summary>All of it: title and place, parts, title block.</summary>
    public static IEnumerable<string> Of(Document document, UnitSystem units) =>
        Filled([document.Title.In(units), document.Place.In(units), .. OfParts(document.Parts, units), .. document.TitleBlock.Select(f => Of(f, units))]);

    /// <summary>Headings and blocks.</summary>
    public static IEnumerable<string> OfParts(IEnumerable<Part> parts, UnitSystem units) =>
        Filled(parts.SelectMany(p => new[] { p.Heading.In(units) }.Concat(p.Blocks.SelectMany(b => Of(b, units)))));

    /// <summary>A block: a name with its value and a row of a table with its cells are a line each.</summary>
    public static IEnumerable<string> Of(Block block, UnitSystem units) => Filled(block switch
    {
        Values values => values.Rows.Select(r => Of(r, units)),
        Table table => [table.Caption.In(units), .. Heads(table, units), .. table.Rows.Select((_, r) => string.Join(' ', Cells(table, r, units).Where(c => c.Length > 0))), table.Note.In(units)],
        _ => Document.Of(block).Select(s => s.In(units)),
    });

    public static string Of(NamedValue row, UnitSystem units) => $"{row.Name.In(units)} {row.Value.In(units)}".Trim();

    /// <summary>Heads, each with its unit behind it.</summary>
    public static IEnumerable<string> Heads(Table table, UnitSystem units) =>
        Filled(table.Columns.SelectMany(c => new[] { c.Head.In(units), c.Dimension is { } of ? Quantity.UnitName(of, units) : "" }));

    public static IEnumerable<string> Cells(Table table, int row, UnitSystem units) => table.Rows[row].Select((c, i) => Cell(c, table.Columns[i], units));

    public static string Cell(Cell cell, Column column, UnitSystem units) => column.Dimension is null ? cell.Text.In(units) : cell.Text.BareIn(units);

    private static IEnumerable<string> Filled(IEnumerable<string> lines) => lines.Where(l => l.Length > 0);
}
