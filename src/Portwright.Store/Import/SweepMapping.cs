using Portwright.Shop.Units;

namespace Portwright.Store.Import;

/// <summary>What a column of a sweep file holds.</summary>
public enum ColumnRole
{
    /// <summary>Not read.</summary>
    LeftOut,
    /// <summary>The lift of the row's readings.</summary>
    Lift,
    /// <summary>One reading a row.</summary>
    Reading,
    /// <summary>Which port the row's readings are of; several such columns are joined.</summary>
    Port,
    /// <summary>Which repeat the row is.</summary>
    Repeat,
    /// <summary>The test pressure of the row.</summary>
    TestPressure,
    /// <summary>Which cut of the port the row is of.</summary>
    Cut,
    /// <summary>The meter's range of the row.</summary>
    Range,
    /// <summary>The temperature of the air at the meter.</summary>
    MeterTemperature,
    /// <summary>The temperature of the air in the plenum.</summary>
    PlenumTemperature,
}

/// <summary>One column as it was guessed or as the person set it.</summary>
/// <param name="Column">From 0.</param>
/// <param name="Heading">The heading as the file has it.</param>
/// <param name="Role">What it holds.</param>
/// <param name="Dimension">Of its numbers; for readings volume flow, mass flow, percent of range (a fraction) or a manometer's pressure.</param>
/// <param name="Unit">The unit of its bare numbers, as <see cref="Typed.Unit"/> names it; null to take the default and the rule for bare lifts.</param>
/// <param name="LiftColumn">For a reading: the column its lift stands in.</param>
/// <param name="Port">For a reading: the port as the file calls it; empty when only rows say it or the file is of one port.</param>
/// <param name="Cut">For a reading: the cut; null when not said.</param>
/// <param name="Repeat">For a reading: which repeat, from 1; null to count by order.</param>
/// <param name="TestPressure">For a reading: as the heading or a note says.</param>
/// <param name="Why">Why it is read or left out like this, in a few words.</param>
public sealed record ColumnMapping(int Column, string Heading, ColumnRole Role, Dimension Dimension, string? Unit, int? LiftColumn, string Port, int? Cut, int? Repeat, Typed? TestPressure, string Why);

/// <summary>How a table is read: guessed first, then changed and confirmed by the person.</summary>
/// <param name="Turned">The file's lifts stand across the top, so rows and columns are exchanged before anything else.</param>
/// <param name="HeadingRow">From 0; -1 when there is none.</param>
/// <param name="FirstRow">The first row that may hold readings, from 0.</param>
/// <param name="Columns">Every column of the table.</param>
/// <param name="Mark">The decimal mark of the file.</param>
/// <param name="System">The units of numbers that name none.</param>
public sealed record SweepMapping(bool Turned, int HeadingRow, int FirstRow, IReadOnlyList<ColumnMapping> Columns, DecimalMark Mark, UnitSystem System)
{
    /// <summary>The same with one column set otherwise.</summary>
    public SweepMapping With(ColumnMapping column)
    {
        ArgumentNullException.ThrowIfNull(column);
        return this with { Columns = [.. Columns.Select(c => c.Column == column.Column ? column : c)] };
    }
}
