using System.Globalization;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Figures;

/// <summary>The title block at the foot of a sheet: named fields in boxes, as on a workshop drawing (ISO 7200). A field takes room by its words.</summary>
internal sealed class TitleBlock
{
    private const double Row = 26, Name = 6.2, Value = 8.2, Small = 6.4, Pad = 4, Widest = 150;
    private const int MostInRow = 6;

    private readonly (string Name, string Value)[][] _rows;
    private readonly double _width;

    public TitleBlock(IReadOnlyList<NamedValue> fields, UnitSystem units, double width)
    {
        _width = width;
        var all = fields.Select(f => (f.Name.In(units), f.Value.In(units))).Append(("sheet", "")).ToArray();
        var rows = (all.Length + MostInRow - 1) / MostInRow;
        _rows = [.. all.Chunk((all.Length + rows - 1) / rows)];
    }

    public double Height => Row * _rows.Length;

    public void Draw(Pen pen, double left, double top, int page, int pages)
    {
        var line = new Stroke(Role.Ink, 0.6);
        pen.Box(new(left, top, _width, Height), 0, null, new Stroke(Role.Ink, 1.2));
        for (var r = 0; r < _rows.Length; r++)
        {
            var (x, y) = (left, top + r * Row);
            if (r > 0) pen.Line(left, y, left + _width, y, line);
            var rooms = _rows[r].Select(f => 2 * Pad + Math.Max(Lettering.Width(f.Name, Name), Math.Clamp(Lettering.Width(f.Value, Value, Weight.SemiBold), 28, Widest))).ToArray();
            var stretch = _width / rooms.Sum();
            for (var c = 0; c < rooms.Length; c++)
            {
                var (name, value) = _rows[r][c];
                var room = rooms[c] * stretch;
                if (c > 0) pen.Line(x, y, x, y + Row, line);
                pen.Text(x + Pad, y + 7.8, name, Name, Role.Quiet);
                Fit(pen, name == "sheet" ? string.Create(CultureInfo.InvariantCulture, $"{page} of {pages}") : value, x + Pad, y, room - 2 * Pad);
                x += room;
            }
        }
    }

    /// <summary>On one line where it fits, smaller on two where it does not.</summary>
    private static void Fit(Pen pen, string value, double x, double y, double room)
    {
        void Put(string words, double size, double below) => pen.Text(x, y + below, words, size, Role.Ink, Anchor.Start, Weight.SemiBold);
        if (Lettering.Width(value, Value, Weight.SemiBold) <= room)
        {
            Put(value, Value, 19.5);
            return;
        }

        var lines = Lettering.Wrap(value, Small, room, Weight.SemiBold);
        Put(lines[0], Small, 15.5);
        if (lines.Count > 1) Put(Lettering.Fit(string.Join(' ', lines.Skip(1)), Small, room, Weight.SemiBold), Small, 23);
    }
}
