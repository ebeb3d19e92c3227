using Portwright.Cli.Terminal;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Cli.Layout;

/// <summary>A table at 80 columns: what does not fit beside goes under it as a further table with the same first column, never away.</summary>
internal static class TerminalTable
{
    private const int Indent = 2, Gap = 2, LeastFirst = 14;

    public static void Write(Page page, Table table, UnitSystem units)
    {
        page.Paragraph(table.Caption.In(units), Indent);
        var heads = table.Columns.Select(c => Head(c, units)).ToArray();
        var cells = table.Rows.Select(r => r.Select((c, i) => table.Columns[i].CellIn(c, units)).ToArray()).ToArray();
        var widths = heads.Select((h, c) => cells.Select(r => r[c].Length).Append(Longest(h)).Max()).ToArray();
        var room = Page.Width - Indent;
        // The first column may give way, wrapped, so that the others stand beside it.
        var first = Math.Clamp(room - widths.Skip(1).Sum(w => Gap + w), Math.Min(LeastFirst, widths[0]), Math.Min(widths[0], Math.Max(LeastFirst, room / 2)));
        for (var next = 1; next < heads.Length || next == 1;)
        {
            var chosen = new List<int> { 0 };
            var taken = first;
            while (next < heads.Length && (chosen.Count == 1 || taken + Gap + widths[next] <= room))
            {
                chosen.Add(next);
                taken += Gap + widths[next];
                next++;
            }

            // What is too wide even alone is wrapped.
            var shown = chosen.ToDictionary(c => c, c => widths[c]);
            shown[0] = first;
            if (taken > room) shown[chosen[^1]] -= taken - room;
            Row(page, chosen, shown, c => heads[c]);
            foreach (var row in cells) Row(page, chosen, shown, c => row[c]);
            if (heads.Length == 1) break;
        }

        if (!table.Note.IsEmpty) page.Paragraph(table.Note.In(units), Indent);
    }

    private static string Head(Column column, UnitSystem units) =>
        column.UnitIn(units) is { Length: > 0 } unit ? $"{column.Head.In(units)}, {unit}" : column.Head.In(units);

    private static int Longest(string head) => head.Split(' ').Max(w => w.Length);

    private static void Row(Page page, List<int> columns, Dictionary<int, int> widths, Func<int, string> text)
    {
        var lines = columns.ToDictionary(c => c, c => Page.Wrap(text(c), widths[c]));
        for (var line = 0; line < lines.Values.Max(l => l.Count); line++)
        {
            page.Line(new string(' ', Indent) + string.Join(new string(' ', Gap), columns.Select(c => (line < lines[c].Count ? lines[c][line] : "").PadRight(widths[c]))));
        }
    }
}
