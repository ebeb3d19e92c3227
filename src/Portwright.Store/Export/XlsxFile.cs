using SpreadCheetah;
using SpreadCheetah.Styling;

namespace Portwright.Store.Export;

/// <summary>
/// Writes tables as a workbook, one sheet a table. Text goes into text cells, formatted as text, letter for letter:
/// there it is never worked out, also not after it was edited. Nothing in the workbook is a formula or a link.
/// </summary>
public static class XlsxFile
{
    /// <summary>The workbook's bytes.</summary>
    /// <exception cref="ArgumentException">No table, or two of one name.</exception>
    public static async Task<byte[]> WriteAsync(IReadOnlyList<SheetTable> tables, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(tables);
        var names = tables.Select(t => SheetName(t.Name)).ToList();
        if (names.Count == 0 || names.Distinct(StringComparer.OrdinalIgnoreCase).Count() != names.Count)
            throw new ArgumentException("At least one table, each with a name of its own.", nameof(tables));
        using var bytes = new MemoryStream();
        await using (var book = await Spreadsheet.CreateNewAsync(bytes, cancellationToken: cancel).ConfigureAwait(false))
        {
            var text = book.AddStyle(new Style { Format = NumberFormat.Standard(StandardNumberFormat.Text) });
            var head = book.AddStyle(new Style { Format = NumberFormat.Standard(StandardNumberFormat.Text), Font = { Bold = true } });
            for (var i = 0; i < tables.Count; i++)
            {
                await book.StartWorksheetAsync(names[i], token: cancel).ConfigureAwait(false);
                foreach (var note in tables[i].Notes) await book.AddRowAsync([new Cell(Fit(note), text)], cancel).ConfigureAwait(false);
                await book.AddRowAsync(tables[i].Headings.Select(h => new Cell(Fit(h), head)).ToArray(), cancel).ConfigureAwait(false);
                foreach (var row in tables[i].Rows)
                    await book.AddRowAsync(row.Select(c => c.Text is { } t ? new Cell(Fit(t), text) : new Cell(c.Number)).ToArray(), cancel).ConfigureAwait(false);
            }
            await book.FinishAsync(cancel).ConfigureAwait(false);
        }
        return bytes.ToArray();
    }

    // ECMA-376: at most 31 characters, none of []:*?/\, no apostrophe at either end.
    private static string SheetName(string name)
    {
        var clean = new string([.. name.Select(c => c is '[' or ']' or ':' or '*' or '?' or '/' or '\\' || char.IsControl(c) || char.IsSurrogate(c) ? ' ' : c)]).Trim(' ', '\'');
        if (clean.Length > 31) clean = clean[..31].Trim(' ', '\'');
        return clean.Length == 0 ? "Sheet" : clean;
    }

    // A cell holds 32,767 characters, and XML knows no control characters but tab and line breaks.
    private static string Fit(string text)
    {
        if (text.Length > 32_767) text = text[..32_767];
        return text.Any(c => char.IsControl(c) && c is not ('\t' or '\n' or '\r') || c is '\uFFFE' or '\uFFFF') ? new string([.. text.Select(c => char.IsControl(c) && c is not ('\t' or '\n' or '\r') || c is '\uFFFE' or '\uFFFF' ? '\uFFFD' : c)]) : text;
    }
}
