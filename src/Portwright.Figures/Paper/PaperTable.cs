using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Figures;

/// <summary>A table laid out in a room: how wide its columns are and how high its rows, and drawing them. A list of named values is one without heads.</summary>
internal sealed class PaperTable
{
    private const double Small = 7.2, Apart = 8;

    private readonly Table _table;
    private readonly bool _list;
    private readonly double _size, _line;
    private readonly double[] _widths;
    private readonly IReadOnlyList<string>[] _heads;
    private readonly string[] _units;
    private readonly IReadOnlyList<string>[][] _rows;

    public PaperTable(Table table, UnitSystem units, double room, double size = Small, bool list = false)
    {
        (_table, _list, _size, _line) = (table, list, size, 1.22 * size);
        var columns = table.Columns;
        var cells = table.Rows.Select(r => r.Select((c, i) => Lettering.Clean(columns[i].CellIn(c, units))).ToArray()).ToArray();
        var heads = columns.Select(c => c.Head.In(units)).ToArray();
        _units = [.. columns.Select(c => c.UnitIn(units))];
        double Widest(int column, Func<string, Weight, double> of) => cells.Select((c, r) => Mark(r, column) + of(c[column], WeightOf(r, column))).DefaultIfEmpty(0).Max();
        // A number keeps to its doubt; a long head stands on up to three lines rather than keep its column wide.
        var least = columns.Select((c, i) => Math.Max(Word(heads[i], Weight.SemiBold), Widest(i, c.Dimension is null ? Word : Wide))).ToArray();
        var natural = columns.Select((_, i) => Math.Max(Math.Max(least[i], Wide(heads[i], Weight.SemiBold) / 2.4), Widest(i, Wide))).ToArray();
        var between = Apart * (columns.Count - 1);
        Natural = natural.Sum() + between + 0.5;
        // Two ways to share a room that is too small; the one that breaks fewer lines is taken.
        _widths = Natural <= room ? natural : new[] { Yielding(least, natural, room - between), ShortFirst(least, natural, room - between) }.MinBy(w => cells.Sum(row => row.Select((c, i) => Lettering.Wrap(c, size, w[i]).Count).Max()))!;
        Width = Math.Min(Natural, room);
        _heads = [.. heads.Select((h, i) => Lettering.Wrap(h, size, _widths[i] + 0.1, Weight.SemiBold))];
        _rows = [.. cells.Select((row, r) => row.Select((c, i) => Lettering.Wrap(c, size, _widths[i] - Mark(r, i) + 0.1, WeightOf(r, i))).ToArray())];
    }

    /// <summary>With every cell on one line.</summary>
    public double Natural { get; }

    public double Width { get; }

    public int Rows => _rows.Length;

    public double HeadHeight => _list ? 0 : (_heads.Max(h => h.Count) + (_units.Any(u => u.Length > 0) ? 1 : 0)) * _line + 3;

    /// <summary>Rows of each where it stands in so many parts side by side.</summary>
    public int Per(int abreast) => (Rows + abreast - 1) / abreast;

    public double Height(int abreast) => HeadHeight + Enumerable.Range(0, Per(abreast)).Sum(r => HeightOf(r, abreast));

    /// <summary>Of one row over all parts.</summary>
    public double HeightOf(int row, int abreast) => Across(row, abreast).Max(r => Math.Max(1, _rows[r].Max(c => c.Count))) * _line + (_list ? 0.6 : 1.6);

    /// <summary>The heads and the line under them; gives their height.</summary>
    public double Head(Pen pen, double left, double y)
    {
        if (_list) return 0;
        var most = _heads.Max(h => h.Count);
        for (var (i, x) = (0, left); i < _widths.Length; x += _widths[i++] + Apart)
        {
            for (var l = 0; l < _heads[i].Count; l++) pen.Text(x, y + 7 + (most - _heads[i].Count + l) * _line, _heads[i][l], _size, Role.Ink, Anchor.Start, Weight.SemiBold);
            pen.Text(x, y + 6.4 + most * _line, _units[i], 0.92 * _size, Role.Quiet);
        }

        pen.Line(left, y + HeadHeight - 1, left + Width, y + HeadHeight - 1, new Stroke(Role.Ink, 0.9));
        return HeadHeight;
    }

    /// <param name="pitch">From part to part.</param>
    public void Row(Pen pen, double left, double y, int row, int abreast = 1, double pitch = 0)
    {
        foreach (var r in Across(row, abreast))
        {
            var foot = y + HeightOf(row, abreast) - 0.3;
            if (!_list) pen.Line(left, foot, left + Width, foot, new Stroke(Role.Hairline, 0.5));
            for (var (i, x) = (0, left); i < _widths.Length; x += _widths[i++] + Apart)
            {
                if (_table.Rows[r][i].Shape is var shape and not VerdictShape.None) VerdictMark.Draw(pen, new(x + 3, y + 0.68 * _size), 0.38 * _size, shape, 0.9);
                for (var l = 0; l < _rows[r][i].Count; l++)
                    pen.Text(x + Mark(r, i), y + 0.2 + 0.97 * _size + l * _line, _rows[r][i][l], _size, _list && i == 0 ? Role.Quiet : Role.Ink, Anchor.Start, WeightOf(r, i));
            }

            left += pitch;
        }
    }

    /// <summary>Each column yields in the measure it can; all alike where even the longest words have no room.</summary>
    private static double[] Yielding(double[] least, double[] natural, double room)
    {
        var (give, over) = (natural.Sum() - least.Sum(), natural.Sum() - room);
        return [.. natural.Select((n, i) => over < give ? n - (n - least[i]) * over / give : n * room / natural.Sum())];
    }

    /// <summary>Columns narrower than their share keep their width, the wide ones share what is left.</summary>
    private static double[] ShortFirst(double[] least, double[] natural, double room)
    {
        var widths = new double[natural.Length];
        var left = natural.Length;
        foreach (var i in Enumerable.Range(0, natural.Length).OrderBy(i => natural[i]))
        {
            widths[i] = Math.Min(natural[i], room / left--);
            room -= widths[i];
        }

        return widths.Where((w, i) => w < least[i]).Any() ? Yielding(least, natural, widths.Sum()) : widths;
    }

    private IEnumerable<int> Across(int row, int abreast) => Enumerable.Range(0, abreast).Select(a => row + a * Per(abreast)).Where(r => r < Rows);

    private double Mark(int row, int column) => _table.Rows[row][column].Shape == VerdictShape.None ? 0 : 1.25 * _size;

    private Weight WeightOf(int row, int column) =>
        _table.Columns[column].Strong || (_list && _table.Rows[row][column].Shape != VerdictShape.None) ? Weight.SemiBold : Weight.Regular;

    private double Wide(string words, Weight weight) => Lettering.Width(words, _size, weight);

    private double Word(string words, Weight weight) => words.Split(' ').Max(w => Wide(w, weight));
}
