using System.Globalization;
using System.Text;
using CsvHelper;

namespace Portwright.Store.Export;

/// <summary>Writes a table as CSV: UTF-8 with a byte-order mark, commas, CR LF, decimal point (RFC 4180).</summary>
public static class CsvFile
{
    /// <summary>The file's bytes. Text is made harmless by <see cref="HarmlessText"/>; numbers are written to 15 figures.</summary>
    public static byte[] Write(SheetTable table)
    {
        ArgumentNullException.ThrowIfNull(table);
        var text = new StringWriter(CultureInfo.InvariantCulture);
        using (var csv = CsvWriter.Create(text, new CsvWriterOptions { HasHeader = false, NewLine = "\r\n", ValidateFieldCount = false }, true))
        {
            foreach (var note in table.Notes) csv.WriteRecord([HarmlessText.Write(note)]);
            csv.WriteRecord([.. table.Headings.Select(HarmlessText.Write)]);
            foreach (var row in table.Rows) csv.WriteRecord([.. row.Select(Written)]);
            csv.Flush();
        }
        return [.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(text.ToString())];
    }

    private static string Written(SheetCell cell) =>
        cell.Text is { } text ? HarmlessText.Write(text) : cell.Number?.ToString("G15", CultureInfo.InvariantCulture) ?? "";
}
