using System.Globalization;
using System.Text.RegularExpressions;
using Portwright.Shop.Units;

namespace Portwright.Store.Import;

/// <summary>Takes the readings out of the rows beneath the heading, and says of every other row why it was left out.</summary>
internal static partial class SweepRows
{
    internal static ImportPreview Read(RawTable table, SweepMapping mapping)
    {
        var upright = mapping.Turned ? table.Turned() : table;
        var reader = new Reader(upright, mapping);
        reader.Above();
        for (var r = Math.Max(mapping.FirstRow, 0); r < upright.Rows; r++) reader.Row(r);
        return reader.Preview(table);
    }

    /// <summary>A dash, n/a or the like: nothing was read there.</summary>
    internal static bool IsMissing(RawCell cell) => cell.IsBlank || (cell.Text.Length < 12 && !char.IsAsciiDigit(cell.Text[^1]) && Missing().IsMatch(cell.Text));

    /// <summary>The row's first words call it a total, an average or a note, or a formula over other cells made its numbers.</summary>
    internal static bool IsSummary(RawTable table, int row)
    {
        for (var c = 0; c < table.Columns; c++)
            if (!table[row, c].IsBlank) return Summary().IsMatch(table[row, c].Text) || Aggregate().IsMatch(table[row, c].Formula ?? "");
        return false;
    }

    private sealed class Reader(RawTable table, SweepMapping mapping)
    {
        private readonly List<ImportedReading> _readings = [];
        private readonly List<LeftOutRow> _leftOut = [];
        private readonly List<ImportProblem> _problems = [];
        private readonly Dictionary<(string, int?, double, double?), SortedSet<int>> _repeats = [];
        private double[] _sums = [];
        private int _summed;
        private readonly ColumnMapping[] _lifts = [.. mapping.Columns.Where(c => c.Role == ColumnRole.Lift)];
        private readonly ColumnMapping[] _flows = [.. mapping.Columns.Where(c => c.Role == ColumnRole.Reading)];
        // A unit that is none of the dimension's (a mapping may be typed by hand) is no unit: the default and its rules hold.
        private readonly Unit?[] _units = UnitsOf(mapping, table.Columns);
        private string _section = "";
        private int _unlisted;

        internal void Row(int r)
        {
            var cells = Enumerable.Range(0, table.Columns).Where(c => !table[r, c].IsBlank).ToList();
            if (cells.Count == 0) return;
            var first = table[r, cells[0]];
            if (r == mapping.FirstRow && cells.All(c => table[r, c].Kind == CellKind.Text && !SweepTable.IsNumber(table[r, c], mapping.Mark)) && cells.Count > 1) Leave(r, "units or words under the heading");
            else if (IsSummary(table, r)) Leave(r, Summary().IsMatch(first.Text) ? $"\"{Short(first.Text)}\": not a reading" : "worked out by the spreadsheet from other cells");
            else if (cells.Any(c => SweepTable.IsLiftHeading(table[r, c], mapping.System))) Heading(r);
            else if (cells.Count == 1 && !SweepTable.IsNumber(first, mapping.Mark)) Section(r, first.Text);
            else Readings(r);
        }

        private static Unit?[] UnitsOf(SweepMapping mapping, int columns)
        {
            var units = new Unit?[Math.Max(columns, mapping.Columns.Select(c => c.Column + 1).DefaultIfEmpty(0).Max())];
            foreach (var c in mapping.Columns) units[c.Column] = c.Unit is { } name ? Unit.Find(name, c.Dimension) : null;
            return units;
        }

        private void Readings(int r)
        {
            var anyLift = false;
            var bad = new List<ImportProblem>();
            var taken = new List<(ColumnMapping Column, Typed Lift, Typed Value)>();
            foreach (var liftColumn in _lifts)
            {
                var cell = table[r, liftColumn.Column];
                var mine = _flows.Where(f => f.LiftColumn == liftColumn.Column && !IsMissing(table[r, f.Column])).ToList();
                if (cell.IsBlank || mine.Count == 0) { anyLift |= !cell.IsBlank && SweepTable.IsNumber(cell, mapping.Mark); continue; }
                var numbers = mine.Count(f => SweepTable.IsNumber(table[r, f.Column], mapping.Mark));
                if (!SweepTable.IsNumber(cell, mapping.Mark) && numbers == 0) continue;
                anyLift = true;
                if (!Parse(r, liftColumn, out var lift, out var problem)) { bad.Add(problem!); continue; }
                foreach (var flow in mine)
                {
                    if (Aggregate().IsMatch(table[r, flow.Column].Formula ?? "")) continue;
                    if (Parse(r, flow, out var value, out problem)) taken.Add((flow, lift, value));
                    else bad.Add(problem!);
                }
            }
            if (!anyLift) { Leave(r, _flows.Any(f => SweepTable.IsNumber(table[r, f.Column], mapping.Mark)) ? "numbers without a lift: a total or an average" : "words, no readings"); return; }
            if (bad.Count == 0 && taken.Count == 0) { Leave(r, "a lift without readings"); return; }
            if (bad.Count == 0 && SumsUp(taken) && IsLast(r)) { Leave(r, "the total or average of the rows above"); return; }
            foreach (var problem in bad) Complain(problem);
            if (bad.Count == 0) Add(Numbers(taken));
            var row = Fields(r);
            foreach (var (column, lift, value) in taken) Take(r, column, lift, value, row);
        }

        private void Take(int r, ColumnMapping column, Typed lift, Typed value, RowFields row)
        {
            var port = string.Join(' ', new[] { row.Port, column.Port }.Where(p => p.Length > 0).Distinct(StringComparer.OrdinalIgnoreCase));
            if (port.Length == 0) port = _section;
            var cut = row.Cut ?? column.Cut;
            var pressure = row.Pressure ?? column.TestPressure;
            var key = (port.ToUpperInvariant(), cut, lift.Si(Dimension.Lift), pressure?.Si(Dimension.Pressure));
            if (!_repeats.TryGetValue(key, out var used)) _repeats[key] = used = [];
            var repeat = row.Repeat ?? column.Repeat ?? 1;
            // A lift that comes again (down the sweep as well as up) is one more repeat of it.
            if (used.Contains(repeat)) repeat = used.Max + 1;
            used.Add(repeat);
            var (fileRow, fileColumn) = table.InFile(r, column.Column);
            _readings.Add(new ImportedReading(lift, value, column.Dimension, port, cut, repeat, pressure, row.Range, row.MeterTemperature, row.PlenumTemperature, fileRow, fileColumn));
        }

        private RowFields Fields(int r)
        {
            var port = new List<string>();
            int? cut = null, repeat = null;
            Typed? pressure = null, meter = null, plenum = null;
            string? range = null;
            foreach (var c in mapping.Columns)
            {
                var cell = table[r, c.Column];
                if (c.Role is ColumnRole.LeftOut or ColumnRole.Lift or ColumnRole.Reading || IsMissing(cell)) continue;
                switch (c.Role)
                {
                    case ColumnRole.Port: port.Add(cell.Text.Trim()); break;
                    case ColumnRole.Range: range = cell.Text.Trim(); break;
                    case ColumnRole.TestPressure: pressure = Number(c); break;
                    case ColumnRole.MeterTemperature: meter = Number(c); break;
                    case ColumnRole.PlenumTemperature: plenum = Number(c); break;
                    default:
                        var digits = LastNumber().Match(cell.Text).Value;
                        if (!int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out var n))
                            Complain(new ImportProblem(table.Address(r, c.Column), $"{table.Address(r, c.Column)}: \"{Short(cell.Text)}\" is not the number of a {(c.Role == ColumnRole.Cut ? "cut" : "repeat")}. Type it as 1, or leave the column out."));
                        else if (c.Role == ColumnRole.Cut) cut = n;
                        else repeat = Math.Max(n, 1);
                        break;
                }
            }
            return new RowFields(string.Join(' ', port), cut, repeat, pressure, range, meter, plenum);

            Typed? Number(ColumnMapping c)
            {
                if (Parse(r, c, out var typed, out var problem)) return typed;
                Complain(problem!);
                return null;
            }
        }

        /// <summary>What the columns beside the readings say of a row.</summary>
        private sealed record RowFields(string Port, int? Cut, int? Repeat, Typed? Pressure, string? Range, Typed? MeterTemperature, Typed? PlenumTemperature);

        private bool Parse(int r, ColumnMapping column, out Typed value, out ImportProblem? problem)
        {
            var cell = table[r, column.Column];
            var address = table.Address(r, column.Column);
            problem = null;
            if (cell.Kind is CellKind.Date or CellKind.Error)
            {
                value = new Typed(double.NaN, "", cell.Text);
                problem = new ImportProblem(address, cell.Kind == CellKind.Date
                    ? $"{address}: the spreadsheet holds a date here ({Short(cell.Text)}). It may have made one of a fraction. Type the number as 12.5."
                    : $"{address}: the spreadsheet shows an error here ({Short(cell.Text)}). Type the number that was read.");
                return false;
            }
            var unit = _units[column.Column];
            var mark = cell.Kind == CellKind.Number ? DecimalMark.Point : mapping.Mark;
            if (TypedNumber.TryParse(cell.Text, column.Dimension, mapping.System, $"{address}:", mark, unit, out value, out var text)) return true;
            problem = new ImportProblem(address, text);
            return false;
        }

        private void Heading(int r)
        {
            if (mapping.HeadingRow >= 0 && mapping.Columns.Where(c => c.Role is ColumnRole.Lift or ColumnRole.Reading).All(c => string.Equals(table[r, c.Column].Text.Trim(), c.Heading, StringComparison.OrdinalIgnoreCase)))
                Leave(r, "the heading again");
            else
                Complain(new ImportProblem(table.RowName(r), $"{table.RowName(r)}: a second heading that differs from the first. Save the tables as separate files, or under one heading."));
        }

        private void Section(int r, string text)
        {
            var port = PortIn(text);
            if (port.Length > 0) _section = port;
            Leave(r, port.Length > 0 ? "names the port of the rows below" : "words, no readings");
        }

        // A line that says nothing but a port: "Intake 3".
        private string PortIn(string text) => text.Length < 40 && HeadingText.Of(text, mapping.System) is { Port.Length: > 0, Rest.Length: 0 } said ? said.Port : "";

        /// <summary>The nearest line above the heading that names a port.</summary>
        internal void Above()
        {
            for (var r = mapping.HeadingRow - 1; r >= 0 && _section.Length == 0; r--)
            {
                if (Enumerable.Range(0, table.Columns).Count(c => !table[r, c].IsBlank) == 1)
                    _section = PortIn(Enumerable.Range(0, table.Columns).Select(c => table[r, c].Text).First(t => !string.IsNullOrWhiteSpace(t)));
            }
        }

        private bool IsLast(int r) => Enumerable.Range(r + 1, table.Rows - r - 1).All(k => IsSummary(table, k) || _flows.All(f => !SweepTable.IsNumber(table[k, f.Column], mapping.Mark)));

        // A last row whose every number is the sum or the mean of those above carries no word, but is no reading.
        private bool SumsUp(List<(ColumnMapping Column, Typed Lift, Typed Value)> taken)
        {
            var last = Numbers(taken);
            if (_summed < 3 || _sums.Length != last.Length || last.Length < 2) return false;
            bool Is(double share) => last.Zip(_sums).All(p => Math.Abs(p.Second * share - p.First) <= 0.002 * Math.Abs(p.First) + 1e-12);
            return Is(1) || Is(1.0 / _summed);
        }

        // Rows of another width than the first cannot be added to it; then nothing is concluded.
        private void Add(double[] numbers)
        {
            if (_summed++ == 0) _sums = numbers;
            else _sums = _sums.Length == numbers.Length ? [.. _sums.Zip(numbers, (a, b) => a + b)] : [];
        }

        private static double[] Numbers(List<(ColumnMapping Column, Typed Lift, Typed Value)> taken) => [.. taken.Take(1).Select(t => t.Lift.Value), .. taken.Select(t => t.Value.Value)];

        private void Leave(int r, string why) => _leftOut.Add(new LeftOutRow(table.RowName(r), Short(string.Join("  ", Enumerable.Range(0, table.Columns).Select(c => table[r, c].Text.Trim()).Where(t => t.Length > 0))), why));

        private void Complain(ImportProblem problem)
        {
            if (_problems.Count < ImportLimits.ListedProblems) _problems.Add(problem);
            else _unlisted++;
        }

        internal ImportPreview Preview(RawTable file)
        {
            if (_lifts.Length == 0) _problems.Insert(0, new ImportProblem("", "No column of lifts was found. Choose which column holds the lifts."));
            else if (_flows.Length == 0) _problems.Insert(0, new ImportProblem("", "No column of readings was found. Choose which columns hold the readings."));
            else if (_readings.Count == 0 && _problems.Count == 0) _problems.Add(new ImportProblem("", "No row holds a lift with a reading beside it. Check the heading row and the columns."));
            if (_unlisted > 0) _problems.Add(new ImportProblem("", string.Create(CultureInfo.InvariantCulture, $"And {_unlisted} more like these. Check that the right columns are chosen.")));
            return new ImportPreview(file, mapping, _readings, _leftOut, _problems);
        }
    }

    private static string Short(string text)
    {
        var clean = new string([.. text.Trim().Select(c => char.IsControl(c) ? ' ' : c)]);
        return clean.Length <= 60 ? clean : clean[..59] + "…";
    }

    private const RegexOptions Options = RegexOptions.CultureInvariant | RegexOptions.IgnoreCase;

    [GeneratedRegex(@"^\s*(?:[-–—]+|n/?a|none|nil|x|\?+|\.)\s*$", Options)] private static partial Regex Missing();
    [GeneratedRegex(@"^\s*(?:avg|ave|average|averages|mean|median|max|maximum|min|minimum|total|totals|sum|subtotal|grand total|std|st\.? ?dev|stdev|dev|spread|gain|diff|difference|notes?|remarks?|comments?|area under|auc|peak|mittelwert|schnitt|summe|gesamt|moyenne|total[ei]|media|Ø|∑|Σ)(?![A-Za-z])", Options)] private static partial Regex Summary();
    [GeneratedRegex(@"\b(?:SUM|AVERAGE|AVERAGEA|MAX|MIN|MEDIAN|COUNT|STDEV|STDEV\.S|SUBTOTAL|AGGREGATE|SUMPRODUCT)\s*\(", Options)] private static partial Regex Aggregate();
    [GeneratedRegex(@"\d{1,4}(?=\D*$)", Options)] private static partial Regex LastNumber();
}
