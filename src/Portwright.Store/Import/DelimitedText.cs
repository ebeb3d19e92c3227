using System.Globalization;
using System.Text;
using CsvHelper;

namespace Portwright.Store.Import;

/// <summary>Separated text: finds the encoding and the delimiter, and splits the cells.</summary>
internal static class DelimitedText
{
    private const string Delimiters = "\t;|,";

    internal static RawTable Read(byte[] bytes, string name, string hash)
    {
        var text = Decode(bytes, name);
        var delimiter = DelimiterOf(ref text);
        var rows = Split(text, delimiter, name);
        if (rows.Count == 0) throw new UnreadableFileException($"{name} holds nothing but blank lines. Save the sheet again and choose the new file.");
        return new RawTable(name, hash, rows, DecimalMarks.Of(rows.SelectMany(r => r).Select(c => c.Text)), null, [], false);
    }

    private static string Decode(byte[] bytes, string name)
    {
        // The usual marks first, then UTF-8 if it is valid, then what spreadsheets on Windows write.
        Encoding encoding = bytes switch
        {
            [0xEF, 0xBB, 0xBF, ..] => new UTF8Encoding(true, true),
            [0xFF, 0xFE, 0, 0, ..] => new UTF32Encoding(false, true, true),
            [0xFF, 0xFE, ..] => new UnicodeEncoding(false, true, true),
            [0xFE, 0xFF, ..] => new UnicodeEncoding(true, true, true),
            _ when LooksUtf16(bytes, 1) => new UnicodeEncoding(false, false, true),
            _ when LooksUtf16(bytes, 0) => new UnicodeEncoding(true, false, true),
            _ => new UTF8Encoding(false, true),
        };
        string text;
        try
        {
            text = encoding.GetString(bytes);
        }
        catch (DecoderFallbackException) when (encoding is UTF8Encoding && encoding.Preamble.Length == 0)
        {
            text = CodePagesEncodingProvider.Instance.GetEncoding(1252)!.GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            throw new UnreadableFileException($"{name} is damaged: its text breaks off or is not what its first bytes say. Save the sheet again and choose the new file.");
        }
        text = text.TrimStart('\uFEFF');
        var odd = text.Count(c => c is '\0' || (char.IsControl(c) && c is not ('\t' or '\r' or '\n')));
        if (text.Contains('\0', StringComparison.Ordinal) || odd > 4 + text.Length / 500)
            throw new UnreadableFileException($"{name} is not text and not a workbook. Save the sheet as .xlsx or CSV and choose that file.");
        return text;
    }

    // Text in Latin letters has a zero in every second byte.
    private static bool LooksUtf16(byte[] bytes, int zeroAt)
    {
        var length = Math.Min(bytes.Length & ~1, 400);
        if (length < 8) return false;
        var zeros = 0;
        for (var i = 0; i < length; i += 2)
        {
            if (bytes[i + 1 - zeroAt] == 0) return false;
            if (bytes[i + zeroAt] == 0) zeros++;
        }
        return zeros > length / 2 * 0.8;
    }

    /// <summary>The character that splits most lines into the same number of cells; on a tie the one seldom found in text.</summary>
    private static char DelimiterOf(ref string text)
    {
        // A first line "sep=;" is written for the spreadsheet, which does not count it as a row.
        if (text.StartsWith("sep=", StringComparison.OrdinalIgnoreCase) && text.Length > 4 && Delimiters.Contains(text[4]))
        {
            var said = text[4];
            var end = text.IndexOf('\n', StringComparison.Ordinal);
            text = end < 0 ? "" : text[(end + 1)..];
            return said;
        }
        var lines = new List<string>();
        foreach (var line in text.AsSpan().EnumerateLines())
        {
            if (!line.IsWhiteSpace()) lines.Add(line[..Math.Min(line.Length, 5000)].ToString());
            if (lines.Count == 100) break;
        }
        return Delimiters
            .Select(d => (d, Lines: lines.Select(l => Outside(l, d)).Where(n => n > 0).GroupBy(n => n).Select(g => g.Count()).DefaultIfEmpty(0).Max()))
            .MaxBy(x => x.Lines) is { Lines: > 0 } best ? best.d : ',';
    }

    private static int Outside(string line, char delimiter)
    {
        var quoted = false;
        var count = 0;
        var atStart = true;
        foreach (var c in line)
        {
            // A quote opens a cell only at its start; elsewhere it is an inch mark.
            if (c == '"' && (quoted || atStart)) quoted = !quoted;
            else if (c == delimiter && !quoted) count++;
            atStart = c == delimiter;
        }
        return count;
    }

    private static List<IReadOnlyList<RawCell>> Split(string text, char delimiter, string name)
    {
        var rows = new List<IReadOnlyList<RawCell>>();
        long unclosed = -1;
        var options = new CsvReaderOptions
        {
            Separator = delimiter,
            HasHeader = false,
            SkipEmptyLines = false,
            DetectSeparatorHint = false,
            MaxRecordSize = ImportLimits.Columns * ImportLimits.CellCharacters * 4,
            OnMalformedRecord = m => { if (m.Reason == CsvMalformedReason.UnterminatedQuote) unclosed = m.RecordNumber; },
        };
        var cells = 0;
        try
        {
            using var reader = CsvReader.FromText(text, options);
            while (reader.Read())
            {
                if (unclosed >= 0) throw Unclosed(name, rows.Count);
                if (reader.FieldCount > ImportLimits.Columns && LastInUse(reader) >= ImportLimits.Columns)
                    throw new UnreadableFileException($"{name} has more than {ImportLimits.Columns} columns in row {Row(rows.Count)}. Save only the table with the readings.");
                var row = new RawCell[Math.Min(reader.FieldCount, ImportLimits.Columns)];
                for (var c = 0; c < row.Length; c++) row[c] = Cell(reader.GetString(c), rows.Count, c, name);
                cells += row.Count(c => !c.IsBlank);
                rows.Add(row);
                if (rows.Count > ImportLimits.Rows)
                    throw new UnreadableFileException($"{name} has more than {Number(ImportLimits.Rows)} rows. Save only the table with the readings.");
                if (cells > ImportLimits.Cells)
                    throw new UnreadableFileException($"{name} has more than {Number(ImportLimits.Cells)} cells in use. Save only the table with the readings.");
            }
        }
        catch (Exception e) when (e is CsvHelper.CsvFormatException or InvalidDataException or InvalidOperationException or NotSupportedException)
        {
            throw unclosed >= 0 ? Unclosed(name, rows.Count) : new UnreadableFileException($"{name} cannot be split into cells after row {Row(rows.Count - 1)}. Save the sheet again as CSV or .xlsx.");
        }
        if (unclosed >= 0) throw Unclosed(name, rows.Count - 1);
        while (rows.Count > 0 && rows[^1].All(c => c.IsBlank)) rows.RemoveAt(rows.Count - 1);
        return rows;
    }

    private static int LastInUse(CsvReader reader)
    {
        var last = reader.FieldCount - 1;
        while (last >= ImportLimits.Columns && reader.IsEmpty(last)) last--;
        return last;
    }

    private static RawCell Cell(string text, int row, int column, string name) => text.Length <= ImportLimits.CellCharacters
        ? new RawCell(text)
        : throw new UnreadableFileException($"{name}, row {Row(row)}, column {RawTable.Letters(column)}: the cell holds {Number(text.Length)} characters, more than {Number(ImportLimits.CellCharacters)}. Take it out of the table and save again.");

    private static UnreadableFileException Unclosed(string name, int row) =>
        new($"{name}, row {Row(row)}: a quote mark is opened and never closed, so the rows below cannot be told apart. Close it or take it out, and save again.");

    private static string Row(int row) => Number(row + 1);

    private static string Number(int n) => n.ToString("#,0", CultureInfo.InvariantCulture);
}
