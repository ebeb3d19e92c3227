using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Cli.Tests.Layout;

/// <summary>What of a document is missing in the terminal's text. A table that is wider than 80 columns goes on under itself, and long words in it are wrapped.</summary>
internal static class TerminalWords
{
    public static List<string> Missing(string text, Document document, UnitSystem units)
    {
        var (words, at, missing) = (new LaidWords(text), 0, new List<string>());
        (Table Of, int From)? open = null;
        foreach (var (line, table) in Lines(document, units))
        {
            if (words.Find(line, at) is not { } found)
            {
                missing.Add(line);
                continue;
            }

            Shut(found.From);
            at = found.To;
            if (table is not null) open = (table, at);
        }

        Shut(words.Count);
        return missing;

        void Shut(int to)
        {
            if (open is { } table) missing.AddRange(Missing(words, table.Of, table.From, to, units));
            open = null;
        }
    }

    /// <summary>The lines in order; of a table its caption, behind which its rows stand, and its note.</summary>
    private static IEnumerable<(string Line, Table? Table)> Lines(Document document, UnitSystem units)
    {
        yield return (document.Title.In(units), null);
        yield return (document.Place.In(units), null);
        foreach (var part in document.Parts)
        {
            yield return (part.Heading.In(units).ToUpperInvariant(), null);
            foreach (var block in part.Blocks)
            {
                if (block is Table table)
                {
                    yield return (table.Caption.In(units), table);
                    if (!table.Note.IsEmpty) yield return (table.Note.In(units), null);
                    continue;
                }

                foreach (var line in SaidWords.Of(block, units)) yield return (line, null);
            }
        }

        foreach (var field in document.TitleBlock) yield return (SaidWords.Of(field, units), null);
    }

    /// <summary>A number stands whole on one line, with its doubt; words are there as often as the table has them.</summary>
    private static IEnumerable<string> Missing(LaidWords words, Table table, int from, int to, UnitSystem units)
    {
        var cells = table.Rows.SelectMany(r => r.Select((c, i) => (Text: SaidWords.Cell(c, table.Columns[i], units), IsNumber: table.Columns[i].Dimension is not null))).Where(c => c.Text.Length > 0).ToList();
        var numbers = cells.Where(c => c.IsNumber).CountBy(c => c.Text).Where(c => words.Times(c.Key, from, to, onOneLine: true) < c.Value);
        var single = cells.Select(c => c.Text).Concat(SaidWords.Heads(table, units)).SelectMany(LaidWords.Split).CountBy(w => w).Where(w => words.Times(w.Key, from, to) < w.Value);
        return numbers.Concat(single).Select(m => $"{m.Key}, {m.Value} times under \"{table.Caption.In(units)}\"");
    }
}
