using System.Globalization;
using System.Text;
using System.Xml;
using ExcelDataReader;

namespace Portwright.Store.Import;

/// <summary>
/// Reads one sheet of a workbook. Before the workbook reader sees a byte, the archive is unpacked under limits, looked
/// through, and put together again from nothing but the sheets, their texts and their number formats: outside
/// references, macros, pictures and connections never reach it.
/// </summary>
internal static class Workbook
{
    // The reader asks for this code page when it is made, though no workbook of this kind uses it.
    static Workbook() => Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);

    internal static RawTable Read(byte[] bytes, string name, string hash, string? sheet)
    {
        try
        {
            var scans = new Dictionary<string, SheetScan>(StringComparer.OrdinalIgnoreCase);
            using var clean = WorkbookArchive.Clean(bytes, name, (part, stream) => scans[part] = SheetScan.Of(stream, name));
            var paths = WorkbookArchive.SheetPaths(clean);
            clean.Position = 0;
            using var reader = ExcelReaderFactory.CreateOpenXmlReader(clean, new ExcelReaderConfiguration { LeaveOpen = true });
            var names = new List<string>();
            List<IReadOnlyList<RawCell>>? rows = null;
            string? read = null;
            do
            {
                names.Add(reader.Name);
                var scan = paths.TryGetValue(reader.Name, out var path) ? scans.GetValueOrDefault(path) : null;
                if (rows is null && scan is { LastRow: > 0 } && (sheet is null || string.Equals(sheet, reader.Name, StringComparison.Ordinal)))
                {
                    scan.ThrowIfTooLarge(name, reader.Name);
                    (rows, read) = (Rows(reader, scan, name), reader.Name);
                }
            }
            while (reader.NextResult());
            if (rows is null)
                throw new UnreadableFileException(sheet is null ? $"{name} has no sheet with cells in use." : $"{name} has no sheet \"{TableFile.ShownName(sheet)}\" with cells in use. It has {string.Join(", ", names.Take(10))}.");
            return new RawTable(name, hash, rows, DecimalMarks.Of(rows.SelectMany(r => r).Where(c => c.Kind == CellKind.Text).Select(c => c.Text)), read, names, false);
        }
        // The archive, XML and workbook readers throw many kinds on damaged input; all of them mean the same to the person.
        catch (Exception e) when (e is not (UnreadableFileException or OutOfMemoryException))
        {
            throw new UnreadableFileException(e is XmlException && e.Message.Contains("DTD", StringComparison.Ordinal)
                ? $"{name} holds a document type declaration, which no workbook needs. It was not followed. Save the sheet again as CSV."
                : $"{name} is damaged or cut short and cannot be read as a workbook. Save the sheet again as .xlsx or CSV.");
        }
    }

    private static List<IReadOnlyList<RawCell>> Rows(IExcelDataReader reader, SheetScan scan, string name)
    {
        var rows = new List<IReadOnlyList<RawCell>>();
        while (rows.Count < scan.LastRow && reader.Read())
        {
            var row = new RawCell[Math.Min(scan.LastColumn, reader.FieldCount)];
            for (var c = 0; c < row.Length; c++)
            {
                row[c] = scan.Errors.TryGetValue((rows.Count, c), out var error) ? new RawCell(error, CellKind.Error) : Cell(reader, c);
                row[c] = row[c] with { Formula = scan.Formulas.GetValueOrDefault((rows.Count, c)) };
                if (row[c].Text.Length > ImportLimits.CellCharacters)
                    throw new UnreadableFileException(FormattableString.Invariant($"{name}, row {rows.Count + 1}, column {RawTable.Letters(c)}: the cell holds {row[c].Text.Length:#,0} characters, more than {ImportLimits.CellCharacters:#,0}. Take it out of the table and save again."));
            }
            rows.Add(row);
        }
        return rows;
    }

    private static RawCell Cell(IExcelDataReader reader, int column)
    {
        switch (reader.GetValue(column))
        {
            case null: return new RawCell("");
            case string text: return new RawCell(text);
            case DateTime or TimeSpan or DateTimeOffset:
                return new RawCell(string.Format(CultureInfo.InvariantCulture, "{0:s}", reader.GetValue(column)), CellKind.Date);
            case bool truth: return new RawCell(truth ? "TRUE" : "FALSE");
            case IConvertible number:
                var value = number.ToDouble(CultureInfo.InvariantCulture);
                // 15 figures are what a spreadsheet keeps and shows; a percent format stores 0.45 for what reads 45%.
                return reader.GetNumberFormatString(column)?.Contains('%', StringComparison.Ordinal) == true
                    ? new RawCell((value * 100).ToString("G13", CultureInfo.InvariantCulture) + "%", CellKind.Number)
                    : new RawCell(value.ToString("G15", CultureInfo.InvariantCulture), CellKind.Number);
            case var other: return new RawCell(Convert.ToString(other, CultureInfo.InvariantCulture) ?? "");
        }
    }
}
