using System.Globalization;
using System.IO.Compression;
using System.Security;
using System.Text;

namespace Portwright.Store.Tests.Import;

/// <summary>Builds workbooks by hand (ECMA-376), so that a test can put in them what no spreadsheet would write.</summary>
internal static class WorkbookBytes
{
    private const string Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private const string Office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

    /// <summary>A sheet of cells: numbers as numbers, text as text, "=" as a formula with its kept value after "→".</summary>
    internal static byte[] Of(params object?[][] rows) => Of(Sheet(rows));

    internal static byte[] Of(string sheetXml, params (string Path, byte[] Content)[] more) => Pack(
    [
        ("[Content_Types].xml", """<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/><Override PartName="/xl/styles.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml"/></Types>"""u8.ToArray()),
        ("_rels/.rels", Utf8($"""<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="{Office}/officeDocument" Target="xl/workbook.xml"/></Relationships>""")),
        ("xl/workbook.xml", Utf8($"""<workbook xmlns="{Main}" xmlns:r="{Office}"><sheets><sheet name="Sweep" sheetId="1" r:id="rId1"/></sheets></workbook>""")),
        ("xl/_rels/workbook.xml.rels", Utf8($"""<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="{Office}/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="rId2" Type="{Office}/styles" Target="styles.xml"/></Relationships>""")),
        // Style 1 is a percentage, style 2 a date.
        ("xl/styles.xml", Utf8($"""<styleSheet xmlns="{Main}"><cellXfs count="3"><xf numFmtId="0"/><xf numFmtId="10"/><xf numFmtId="14"/></cellXfs></styleSheet>""")),
        ("xl/worksheets/sheet1.xml", Utf8(sheetXml)),
        .. more,
    ]);

    internal static string Sheet(params object?[][] rows)
    {
        var xml = new StringBuilder($"""<worksheet xmlns="{Main}"><sheetData>""");
        for (var r = 0; r < rows.Length; r++)
        {
            xml.Append(CultureInfo.InvariantCulture, $"<row r=\"{r + 1}\">");
            for (var c = 0; c < rows[r].Length; c++) xml.Append(Cell(rows[r][c], $"{(char)('A' + c)}{r + 1}"));
            xml.Append("</row>");
        }
        return xml.Append("</sheetData></worksheet>").ToString();
    }

    internal static byte[] Pack(IEnumerable<(string Path, byte[] Content)> parts)
    {
        using var bytes = new MemoryStream();
        using (var zip = new ZipArchive(bytes, ZipArchiveMode.Create, true))
        {
            foreach (var (path, content) in parts)
            {
                using var part = zip.CreateEntry(path, CompressionLevel.Fastest).Open();
                part.Write(content);
            }
        }

        return bytes.ToArray();
    }

    internal static byte[] Utf8(string text) => Encoding.UTF8.GetBytes(text);

    private static string Cell(object? value, string at) => value switch
    {
        null => "",
        Percent p => string.Create(CultureInfo.InvariantCulture, $"<c r=\"{at}\" s=\"1\"><v>{p.Share}</v></c>"),
        Date d => string.Create(CultureInfo.InvariantCulture, $"<c r=\"{at}\" s=\"2\"><v>{d.Serial}</v></c>"),
        Error e => $"<c r=\"{at}\" t=\"e\"><v>{e.Text}</v></c>",
        Formula f => string.Create(CultureInfo.InvariantCulture, $"<c r=\"{at}\"><f>{SecurityElement.Escape(f.Text)}</f><v>{f.Value}</v></c>"),
        string text => $"<c r=\"{at}\" t=\"inlineStr\"><is><t xml:space=\"preserve\">{SecurityElement.Escape(text)}</t></is></c>",
        IFormattable number => $"<c r=\"{at}\"><v>{number.ToString(null, CultureInfo.InvariantCulture)}</v></c>",
        _ => throw new ArgumentException(value.GetType().Name, nameof(value)),
    };

    internal sealed record Percent(double Share);

    internal sealed record Date(int Serial);

    internal sealed record Error(string Text);

    internal sealed record Formula(string Text, double Value);
}
