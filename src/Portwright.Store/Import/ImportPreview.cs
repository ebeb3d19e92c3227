using Portwright.Shop.Units;

namespace Portwright.Store.Import;

/// <summary>One reading as it will be saved, with the place it came from.</summary>
/// <param name="Lift">As the file has it.</param>
/// <param name="Reading">As the file has it.</param>
/// <param name="Dimension">Of <paramref name="Reading"/>.</param>
/// <param name="Port">As the file calls the port; empty when it does not say.</param>
/// <param name="Cut">The cut, when the file says one.</param>
/// <param name="Repeat">From 1, within port, cut and lift.</param>
/// <param name="TestPressure">When the file says one.</param>
/// <param name="Range">The meter's range, when the file says one.</param>
/// <param name="MeterTemperature">Of the air at the meter, when the file says it.</param>
/// <param name="PlenumTemperature">Of the air in the plenum, when the file says it.</param>
/// <param name="Row">Row in the file, from 1.</param>
/// <param name="Column">Column in the file, from 1.</param>
public sealed record ImportedReading(Typed Lift, Typed Reading, Dimension Dimension, string Port, int? Cut, int Repeat, Typed? TestPressure, string? Range, Typed? MeterTemperature, Typed? PlenumTemperature, int Row, int Column)
{
    /// <summary>"row 7, column C".</summary>
    public string Address => FormattableString.Invariant($"row {Row}, column {RawTable.Letters(Column - 1)}");
}

/// <summary>A row that holds no readings, and why it was left out.</summary>
/// <param name="Row">As the spreadsheet names it, "row 12".</param>
/// <param name="Text">The start of what it says.</param>
/// <param name="Why">In a few words.</param>
public sealed record LeftOutRow(string Row, string Text, string Why);

/// <summary>What keeps the file from being saved.</summary>
/// <param name="Address">As the spreadsheet names it; empty when it is the whole file.</param>
/// <param name="Text">What is wrong and how to cure it.</param>
public sealed record ImportProblem(string Address, string Text);

/// <summary>
/// What importing a file with a mapping would save. Nothing is saved by it; all or nothing of
/// <see cref="Readings"/> is saved afterwards, and only when <see cref="CanBeSaved"/>.
/// </summary>
public sealed record ImportPreview(RawTable Table, SweepMapping Mapping, IReadOnlyList<ImportedReading> Readings, IReadOnlyList<LeftOutRow> LeftOut, IReadOnlyList<ImportProblem> Problems)
{
    /// <summary>There are readings and nothing is wrong with any cell that should hold one.</summary>
    public bool CanBeSaved => Readings.Count > 0 && Problems.Count == 0;

    /// <summary>The ports the file names, in its order; one empty name when it names none.</summary>
    public IReadOnlyList<(string Port, int? Cut)> Sweeps => [.. Readings.Select(r => (r.Port, r.Cut)).Distinct()];

    /// <summary>The same file read another way.</summary>
    public ImportPreview Read(SweepMapping mapping) => SweepTable.Read(Table, mapping);
}
