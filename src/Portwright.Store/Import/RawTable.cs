using System.Globalization;
using Portwright.Shop.Units;

namespace Portwright.Store.Import;

/// <summary>What a cell was in its file.</summary>
public enum CellKind
{
    /// <summary>Text, also every cell of a text file.</summary>
    Text,
    /// <summary>A number of a workbook: its text is the number with a point, whatever the workbook shows.</summary>
    Number,
    /// <summary>A date or time of a workbook.</summary>
    Date,
    /// <summary>An error of a workbook, such as a division by zero.</summary>
    Error,
}

/// <summary>One cell. Text is kept letter for letter; a formula's text is never worked out, only looked at.</summary>
public readonly record struct RawCell(string Text, CellKind Kind = CellKind.Text, string? Formula = null)
{
    /// <summary>Nothing but spaces.</summary>
    public bool IsBlank => string.IsNullOrWhiteSpace(Text);
}

/// <summary>The cells of a file, with the row and column names its owner sees in a spreadsheet.</summary>
public sealed class RawTable
{
    private static readonly RawCell Empty = new("");
    private readonly IReadOnlyList<IReadOnlyList<RawCell>> _rows;

    internal RawTable(string fileName, string fileHash, IReadOnlyList<IReadOnlyList<RawCell>> rows, DecimalMark mark, string? sheet, IReadOnlyList<string> sheets, bool transposed)
    {
        (FileName, FileHash, this._rows, Mark, Sheet, Sheets, Transposed) = (fileName, fileHash, rows, mark, sheet, sheets, transposed);
        Columns = rows.Count == 0 ? 0 : rows.Max(r => r.Count);
    }

    /// <summary>The file's name without its folder.</summary>
    public string FileName { get; }

    /// <summary>SHA-256 of the file's bytes, lower-case hexadecimal.</summary>
    public string FileHash { get; }

    /// <summary>The decimal mark its numbers show it to use.</summary>
    public DecimalMark Mark { get; }

    /// <summary>The sheet read, null for a text file.</summary>
    public string? Sheet { get; }

    /// <summary>All sheets of the workbook; empty for a text file.</summary>
    public IReadOnlyList<string> Sheets { get; }

    /// <summary>Rows here are the file's columns: a table with its lifts across the top is read turned.</summary>
    public bool Transposed { get; }

    /// <summary>Rows, blank ones included.</summary>
    public int Rows => _rows.Count;

    /// <summary>Columns of the widest row.</summary>
    public int Columns { get; }

    /// <summary>The cell, blank beyond a row's end. Both from 0.</summary>
    public RawCell this[int row, int column] => row >= 0 && row < _rows.Count && column >= 0 && column < _rows[row].Count ? _rows[row][column] : Empty;

    /// <summary>The same cells turned: what were columns are rows.</summary>
    public RawTable Turned()
    {
        var turned = Enumerable.Range(0, Columns).Select(c => (IReadOnlyList<RawCell>)[.. Enumerable.Range(0, Rows).Select(r => this[r, c])]).ToList();
        return new RawTable(FileName, FileHash, turned, Mark, Sheet, Sheets, !Transposed);
    }

    /// <summary>"row 7, column C", as the spreadsheet names the cell.</summary>
    public string Address(int row, int column) => Transposed ? $"{Named(column, false)}, {Named(row, true)}" : $"{Named(row, false)}, {Named(column, true)}";

    /// <summary>"row 7", or "column G" in a turned table.</summary>
    public string RowName(int row) => Named(row, Transposed);

    /// <summary>"column C", or "row 3" in a turned table.</summary>
    public string ColumnName(int column) => Named(column, !Transposed);

    /// <summary>Row and column in the file itself, from 1.</summary>
    public (int Row, int Column) InFile(int row, int column) => Transposed ? (column + 1, row + 1) : (row + 1, column + 1);

    /// <summary>A, B, … Z, AA, … for a column from 0.</summary>
    public static string Letters(int column)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(column);
        var letters = "";
        for (var n = column + 1; n > 0; n = (n - 1) / 26) letters = (char)('A' + (n - 1) % 26) + letters;
        return letters;
    }

    private static string Named(int index, bool column) => column ? $"column {Letters(index)}" : "row " + (index + 1).ToString(CultureInfo.InvariantCulture);
}
