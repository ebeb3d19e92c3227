using Portwright.Shop.Units;

namespace Portwright.Store.Import;

/// <summary>Guesses what each column holds from its heading, the headings above it and its numbers.</summary>
internal static class SweepColumns
{
    private const int Samples = 60;

    internal static IReadOnlyList<ColumnMapping> Guess(RawTable table, int headingRow, int firstRow, UnitSystem system)
    {
        var groups = GroupHeadings(table, headingRow);
        var notes = Notes(table, headingRow, firstRow, groups.Length > 0, system);
        var units = UnitLine(table, headingRow, firstRow);
        var columns = new List<ColumnMapping>();
        for (var c = 0; c < table.Columns; c++)
        {
            var heading = headingRow < 0 ? "" : table[headingRow, c].Text.Trim();
            var text = units is { } u && !table[u, c].IsBlank ? $"{heading} ({table[u, c].Text.Trim('(', ')', '[', ']', ' ')})" : heading;
            columns.Add(One(table, c, firstRow, heading, HeadingText.Of(text, system), system));
        }
        if (columns.All(c => c.Role != ColumnRole.Lift)) FindLift(table, columns, firstRow);
        if (columns.All(c => c.Role != ColumnRole.Reading)) RepeatMayBeReading(table, columns, firstRow);
        SetUnitsOfLifts(table, columns, firstRow);
        SetReadings(columns, groups, notes, headingRow >= 0, table, system);
        return columns;
    }

    private static ColumnMapping One(RawTable table, int c, int firstRow, string heading, HeadingText said, UnitSystem system)
    {
        var (numbers, texts) = Content(table, c, firstRow);
        var role = said.Role;
        var why = said.Why;
        if (numbers == 0 && texts == 0) (role, why) = (ColumnRole.LeftOut, "empty");
        else if (role == ColumnRole.Reading && numbers == 0) (role, why) = (ColumnRole.LeftOut, "no numbers in it");
        else if (role == ColumnRole.Reading && texts > numbers && !said.SaysFlow) (role, why) = (ColumnRole.LeftOut, "mostly words");
        else if (role == ColumnRole.Lift && numbers == 0) (role, why) = (ColumnRole.LeftOut, "headed as lift, but no numbers in it");
        else if (heading.Length == 0 && role == ColumnRole.LeftOut)
            (role, why) = numbers > texts ? (ColumnRole.Reading, "numbers without a heading") : (ColumnRole.LeftOut, "no heading and no numbers");
        return new ColumnMapping(c, heading, role, said.Dimension, said.Unit, null, said.Port, said.Cut, said.Repeat, said.TestPressure, why);
    }

    // Without the word, the first column of numbers that only rise and could be lifts.
    private static void FindLift(RawTable table, List<ColumnMapping> columns, int firstRow)
    {
        foreach (var c in columns.Where(c => c.Role is ColumnRole.Reading or ColumnRole.Repeat))
        {
            var values = Values(table, c.Column, firstRow);
            if (values.Count < 2 || values.Zip(values.Skip(1)).Any(p => p.Second <= p.First) || values[^1] > 3000) continue;
            columns[c.Column] = c with { Role = ColumnRole.Lift, Dimension = Dimension.Lift, Unit = null, Why = "first column whose numbers only rise" };
            return;
        }
    }

    private static void RepeatMayBeReading(RawTable table, List<ColumnMapping> columns, int firstRow)
    {
        foreach (var c in columns.Where(c => c.Role == ColumnRole.Repeat && Content(table, c.Column, firstRow).Numbers > 0).ToList())
            columns[c.Column] = c with { Role = ColumnRole.Reading, Dimension = Dimension.VolumeFlow, Why = "the only numbers beside the lifts" };
    }

    /// <summary>Lifts without a unit are judged together: all up to 1.5 are inches, whole ones from 20 thousandths, the rest millimetres.</summary>
    private static void SetUnitsOfLifts(RawTable table, List<ColumnMapping> columns, int firstRow)
    {
        foreach (var c in columns.Where(c => c.Role == ColumnRole.Lift && c.Unit is null).ToList())
        {
            var values = Values(table, c.Column, firstRow).Where(v => v > 0).ToList();
            if (values.Count == 0) continue;
            var (unit, why) = values.Max() <= 1.5 ? ("in", "none is over 1.5, so taken as inches")
                : values.Min() >= 20 && values.All(v => v == Math.Floor(v)) ? ("thou", "whole numbers from 20 up, so taken as thousandths of an inch")
                : ("mm", "between 1.5 and 20, so taken as millimetres");
            columns[c.Column] = c with { Unit = unit, Why = $"{c.Why}; {why}".TrimStart(';', ' ') };
        }
    }

    private static void SetReadings(List<ColumnMapping> columns, string[] groups, HeadingText notes, bool hasHeadings, RawTable table, UnitSystem system)
    {
        var firstLift = columns.FindIndex(c => c.Role == ColumnRole.Lift);
        var rest = new Dictionary<int, string>();
        foreach (var c in columns.Where(c => c.Role == ColumnRole.Reading).ToList())
        {
            var lift = columns.FindLastIndex(c.Column, c.Column + 1, l => l.Role == ColumnRole.Lift);
            if (lift < 0) lift = firstLift;
            var said = HeadingText.Of(c.Heading, system);
            var group = c.Column < groups.Length ? groups[c.Column] : "";
            var above = HeadingText.Of(group, system);
            var port = string.Join(' ', new[] { above.Port, c.Port }.Where(p => p.Length > 0).Distinct());
            var unit = c.Unit ?? above.Unit ?? notes.Unit;
            var dimension = c.Unit is not null ? c.Dimension : above.Unit is not null ? above.Dimension : notes.Unit is not null ? notes.Dimension : c.Dimension;
            rest[c.Column] = (above.Rest + " " + said.Rest).Trim();
            columns[c.Column] = c with
            {
                LiftColumn = lift < 0 ? null : lift,
                Dimension = dimension,
                Unit = unit ?? Unit.Default(dimension, system).Name,
                Port = port,
                Cut = c.Cut ?? above.Cut,
                Repeat = c.Repeat ?? (above.Port.Length == 0 ? above.Repeat : null),
                TestPressure = c.TestPressure ?? above.TestPressure ?? notes.TestPressure,
                Why = c.Why.Length > 0 ? c.Why : unit is null ? $"numbers; no unit named, so {Unit.Default(dimension, system).Name}" : "numbers",
            };
        }
        // Two headings that differ in more than a number are two things, not two repeats of one: each keeps its own name.
        var readings = columns.Where(c => c.Role == ColumnRole.Reading).ToList();
        foreach (var samePort in readings.GroupBy(c => (c.Port, c.Cut)).Where(g => g.Select(c => rest[c.Column].ToUpperInvariant()).Distinct().Count() > 1).ToList())
        {
            foreach (var c in samePort.Where(c => rest[c.Column].Length > 0))
                columns[c.Column] = c with { Port = (c.Port + " " + rest[c.Column]).Trim() };
        }

        if (!hasHeadings && readings.Count > 1)
        {
            foreach (var c in readings)
                columns[c.Column] = columns[c.Column] with { Port = table.ColumnName(c.Column) };
        }

        SetRepeats(columns);
    }

    private static void SetRepeats(List<ColumnMapping> columns)
    {
        foreach (var sweep in columns.Where(c => c.Role == ColumnRole.Reading).GroupBy(c => (c.Port.ToUpperInvariant(), c.Cut, c.TestPressure?.Value)).Where(g => g.Count() > 1).ToList())
        {
            // The same readings again in another unit are not more readings.
            var first = sweep.First();
            foreach (var again in sweep.Where(c => c.Unit != first.Unit))
                columns[again.Column] = again with { Role = ColumnRole.LeftOut, Why = $"the same readings again, in {again.Unit}" };
            var kept = sweep.Where(c => c.Unit == first.Unit).ToList();
            var numbered = kept.All(c => c.Repeat is > 0) && kept.Select(c => c.Repeat).Distinct().Count() == kept.Count;
            if (!numbered && kept.Count > 1)
                for (var i = 0; i < kept.Count; i++) columns[kept[i].Column] = kept[i] with { Repeat = i + 1 };
        }
    }

    // The row above the headings names groups when it has words right of the first column; each reaches to the next.
    private static string[] GroupHeadings(RawTable table, int headingRow)
    {
        if (headingRow < 1) return [];
        var row = headingRow - 1;
        if (Enumerable.Range(1, Math.Max(0, table.Columns - 1)).All(c => table[row, c].IsBlank)) return [];
        var groups = new string[table.Columns];
        var name = "";
        for (var c = 0; c < groups.Length; c++)
        {
            if (!table[row, c].IsBlank) name = table[row, c].Text.Trim();
            groups[c] = name;
        }
        return groups;
    }

    // "All flows in cfm at 28 inH2O" above the table gives the unit and test pressure its headings leave out.
    private static HeadingText Notes(RawTable table, int headingRow, int firstRow, bool hasGroups, UnitSystem system)
    {
        var none = HeadingText.Of("", system);
        var last = headingRow < 0 ? firstRow : headingRow - (hasGroups ? 1 : 0);
        for (var r = 0; r < Math.Min(last, 50); r++)
        {
            var line = string.Join(' ', Enumerable.Range(0, Math.Min(table.Columns, 12)).Select(c => table[r, c].Text.Trim()).Where(t => t.Length > 0));
            if (line.Length is 0 or > 200) continue;
            var said = HeadingText.OfNote(line, system);
            none = none with
            {
                Unit = none.Unit ?? said.Unit,
                Dimension = none.Unit is null && said.Unit is not null ? said.Dimension : none.Dimension,
                TestPressure = none.TestPressure ?? said.TestPressure,
            };
        }
        return none;
    }

    // A row of units between the headings and the first numbers.
    private static int? UnitLine(RawTable table, int headingRow, int firstRow)
    {
        if (headingRow < 0 || firstRow >= table.Rows) return null;
        var cells = Enumerable.Range(0, table.Columns).Select(c => table[firstRow, c]).Where(c => !c.IsBlank).ToList();
        return cells.Count > 0 && cells.All(c => c.Text.Length < 16 && !char.IsAsciiDigit(c.Text.TrimStart('(', '[').FirstOrDefault())
            && Enum.GetValues<Dimension>().Any(d => Unit.Find(c.Text.Trim('(', ')', '[', ']', ' '), d) is { Name.Length: > 0 })) ? firstRow : null;
    }

    private static (int Numbers, int Texts) Content(RawTable table, int column, int firstRow)
    {
        var (numbers, texts) = (0, 0);
        for (var r = firstRow; r < table.Rows && numbers + texts < Samples; r++)
        {
            var cell = table[r, column];
            if (cell.IsBlank || SweepRows.IsMissing(cell)) continue;
            if (SweepTable.IsNumber(cell, table.Mark)) numbers++;
            else texts++;
        }
        return (numbers, texts);
    }

    private static List<double> Values(RawTable table, int column, int firstRow)
    {
        var values = new List<double>();
        for (var r = firstRow; r < table.Rows && values.Count < Samples; r++)
        {
            var cell = table[r, column];
            var mark = cell.Kind == CellKind.Number ? DecimalMark.Point : table.Mark;
            if (SweepRows.IsSummary(table, r)) continue;
            if (TypedNumber.TryParse(cell.Text, Dimension.Ratio, UnitSystem.Si, "", mark, null, out var typed, out _)) values.Add(typed.Value);
        }
        return values;
    }
}
