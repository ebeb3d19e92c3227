using Portwright.Shop.Units;

namespace Portwright.Store.Import;

/// <summary>Finds the sweep in a table: where its heading is, which column holds what. Every guess can be changed.</summary>
public static class SweepTable
{
    private const int LooksAt = 400;

    private static readonly Dimension[] SweepDimensions = [Dimension.Lift, Dimension.VolumeFlow, Dimension.Pressure, Dimension.Fraction, Dimension.MassFlow];

    /// <summary>Reads a table with the best guess at its mapping.</summary>
    public static ImportPreview Guess(RawTable table, UnitSystem system)
    {
        ArgumentNullException.ThrowIfNull(table);
        var turned = LiftsRunAcross(table, system);
        var upright = turned ? table.Turned() : table;
        return Read(table, GuessMapping(upright, system, turned));
    }

    /// <summary>Reads a table as the mapping says.</summary>
    public static ImportPreview Read(RawTable table, SweepMapping mapping)
    {
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(mapping);
        return SweepRows.Read(table, mapping);
    }

    /// <summary>A number, with or without any unit a sweep may carry.</summary>
    internal static bool IsNumber(RawCell cell, DecimalMark mark)
    {
        if (cell.Kind == CellKind.Number) return true;
        if (cell.Kind != CellKind.Text) return false;
        return TypedNumber.TrySplit(cell.Text, mark, out _, out var unit)
            && (unit.Length == 0 || SweepDimensions.Any(d => Unit.Find(unit, d) is not null));
    }

    internal static bool IsLiftHeading(RawCell cell, UnitSystem system) =>
        cell.Kind == CellKind.Text && cell.Text.Length is > 0 and < 80 && char.IsLetter(cell.Text.AsSpan().TrimStart() is [var letter, ..] ? letter : ' ') && HeadingText.Of(cell.Text, system).Role == ColumnRole.Lift;

    // A lift heading with numbers to its right and no more than one below it.
    private static bool LiftsRunAcross(RawTable table, UnitSystem system)
    {
        for (var r = 0; r < Math.Min(table.Rows, LooksAt); r++)
        {
            for (var c = 0; c < Math.Min(table.Columns, 5); c++)
            {
                if (!IsLiftHeading(table[r, c], system)) continue;
                var across = Enumerable.Range(c + 1, Math.Max(0, table.Columns - c - 1)).Count(k => IsNumber(table[r, k], table.Mark));
                var below = Enumerable.Range(r + 1, Math.Min(LooksAt, table.Rows - r - 1)).Count(k => IsNumber(table[k, c], table.Mark));
                return across >= 2 && across > below;
            }
        }

        return false;
    }

    private static SweepMapping GuessMapping(RawTable table, UnitSystem system, bool turned)
    {
        var heading = HeadingRow(table, system);
        var first = heading + 1;
        if (heading < 0)
        {
            // No word over the lifts: the first row with two numbers begins the table, a row of words just above it heads it.
            first = Enumerable.Range(0, Math.Min(table.Rows, LooksAt)).FirstOrDefault(r => Numbers(table, r) >= 2, 0);
            if (first > 0 && Enumerable.Range(0, table.Columns).Count(c => !table[first - 1, c].IsBlank) >= 2) heading = first - 1;
        }
        return new SweepMapping(turned, heading, first, SweepColumns.Guess(table, heading, first, system), table.Mark, system);
    }

    private static int HeadingRow(RawTable table, UnitSystem system)
    {
        for (var r = 0; r < Math.Min(table.Rows, LooksAt); r++)
        {
            for (var c = 0; c < table.Columns; c++)
            {
                if (!IsLiftHeading(table[r, c], system)) continue;
                // A note may speak of lift; a heading has numbers beneath, perhaps after a line of units.
                if (Enumerable.Range(r + 1, 4).Any(k => IsNumber(table[k, c], table.Mark))) return r;
            }
        }

        return -1;
    }

    private static int Numbers(RawTable table, int row) => Enumerable.Range(0, table.Columns).Count(c => IsNumber(table[row, c], table.Mark));
}
