namespace Portwright.Store.Export;

/// <summary>One cell to write: text, a number, or nothing.</summary>
public readonly record struct SheetCell(string? Text, double? Number)
{
    public static implicit operator SheetCell(string? text) => new(text, null);

    /// <summary>A number; what is not finite is written as nothing.</summary>
    public static implicit operator SheetCell(double number) => new(null, double.IsFinite(number) ? number : null);

    /// <summary>A number or nothing.</summary>
    public static implicit operator SheetCell(double? number) => number ?? double.NaN;
}

/// <summary>A table to write as CSV or as a workbook: notes above it, one row of headings, rows.</summary>
/// <param name="Name">Of the sheet in a workbook.</param>
/// <param name="Notes">Lines above the headings, each in the first column.</param>
public sealed record SheetTable(string Name, IReadOnlyList<string> Notes, IReadOnlyList<string> Headings, IReadOnlyList<IReadOnlyList<SheetCell>> Rows);
