using System.Globalization;
using System.Xml;

namespace Portwright.Store.Import;

/// <summary>
/// A first look through a sheet: how far its cells in use reach, and which of them are worked out by a formula.
/// Cells that only carry a colour or a border are not in use.
/// </summary>
internal sealed class SheetScan
{
    private int _cells;

    /// <summary>Rows and columns in use, from 1; 0 when there is none.</summary>
    internal int LastRow { get; private set; }

    internal int LastColumn { get; private set; }

    /// <summary>Formula text by row and column from 0.</summary>
    internal Dictionary<(int Row, int Column), string> Formulas { get; } = [];

    /// <summary>The error shown, such as #DIV/0!, by row and column from 0.</summary>
    internal Dictionary<(int Row, int Column), string> Errors { get; } = [];

    internal static SheetScan Of(Stream part, string name)
    {
        var scan = new SheetScan();
        using var xml = WorkbookArchive.SafeXml(part);
        var (row, column) = (0, 0);
        var (inCell, isError) = (false, false);
        while (xml.Read())
        {
            if (xml.NodeType == XmlNodeType.Element && xml.LocalName == "row")
            {
                row = int.TryParse(xml.GetAttribute("r"), NumberStyles.None, CultureInfo.InvariantCulture, out var r) ? r : row + 1;
                column = 0;
            }
            else if (xml.NodeType == XmlNodeType.Element && xml.LocalName == "c")
            {
                column = ColumnOf(xml.GetAttribute("r")) ?? column + 1;
                inCell = !xml.IsEmptyElement;
                isError = xml.GetAttribute("t") == "e";
            }
            else if (inCell && xml.NodeType == XmlNodeType.Element && xml.LocalName is "v" or "is" && !xml.IsEmptyElement)
            {
                scan.InUse(row, column, name);
                if (isError) scan.Errors[(row - 1, column - 1)] = TextOf(xml);
            }
            else if (inCell && xml.NodeType == XmlNodeType.Element && xml.LocalName == "f")
            {
                scan.Formulas[(row - 1, column - 1)] = TextOf(xml);
            }
        }
        return scan;
    }

    internal void ThrowIfTooLarge(string name, string sheet)
    {
        var (what, limit) = LastRow > ImportLimits.Rows ? ("rows", ImportLimits.Rows) : LastColumn > ImportLimits.Columns ? ("columns", ImportLimits.Columns) : ("", 0);
        if (limit > 0)
            throw new UnreadableFileException(string.Create(CultureInfo.InvariantCulture, $"{name}, sheet \"{TableFile.ShownName(sheet)}\", has more than {limit:#,0} {what}. Save only the table with the readings."));
    }

    private void InUse(int row, int column, string name)
    {
        LastRow = Math.Max(LastRow, row);
        LastColumn = Math.Max(LastColumn, column);
        if (++_cells > ImportLimits.Cells)
            throw new UnreadableFileException(string.Create(CultureInfo.InvariantCulture, $"{name} has more than {ImportLimits.Cells:#,0} cells in use. Save only the table with the readings."));
    }

    // A formula shared by several cells is written once; the others are empty but worked out all the same.
    private static string TextOf(XmlReader xml)
    {
        if (xml.IsEmptyElement) return "";
        return xml.Read() && xml.NodeType == XmlNodeType.Text ? xml.Value[..Math.Min(xml.Value.Length, 200)] : "";
    }

    private static int? ColumnOf(string? address)
    {
        if (string.IsNullOrEmpty(address)) return null;
        var column = 0;
        foreach (var c in address)
        {
            if (!char.IsAsciiLetterUpper(c) || column > 100_000) break;
            column = column * 26 + (c - 'A' + 1);
        }
        return column > 0 ? column : null;
    }
}
