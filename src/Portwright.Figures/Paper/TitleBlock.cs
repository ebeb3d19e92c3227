using System.Globalization;

namespace Portwright.Figures;

/// <summary>The title block at the foot of a sheet: named fields in boxes, as on a workshop drawing (ISO 7200).</summary>
internal static class TitleBlock
{
    public const double Height = 58;

    private const double Name = 6.2, Value = 8.4;

    /// <summary>Field names of the two rows with their shares of the width.</summary>
    private static readonly (string Name, double Share)[][] Rows =
    [
        [("job", 0.34), ("head", 0.22), ("port", 0.16), ("cut", 0.10), ("date", 0.18)],
        [("standard air", 0.42), ("bench", 0.20), ("hand", 0.12), ("program", 0.16), ("sheet", 0.10)],
    ];

    public static void Draw(Pen pen, IReadOnlyList<SheetField> fields, Box box, int page, int pages)
    {
        var values = fields.ToDictionary(f => f.Name, f => f.Value);
        values["sheet"] = string.Create(CultureInfo.InvariantCulture, $"{page} of {pages}");
        pen.Box(box, 0, null, new Stroke(Role.Ink, 1.2));
        var rowHeight = box.Height / Rows.Length;
        for (var r = 0; r < Rows.Length; r++)
        {
            var (x, y) = (box.X, box.Y + r * rowHeight);
            if (r > 0) pen.Line(box.X, y, box.Right, y, new Stroke(Role.Ink, 0.6));
            for (var c = 0; c < Rows[r].Length; c++)
            {
                var (name, share) = Rows[r][c];
                var width = share * box.Width;
                if (c > 0) pen.Line(x, y, x, y + rowHeight, new Stroke(Role.Ink, 0.6));
                pen.Text(x + 4, y + 8.5, name, Name, Role.Quiet);
                Fit(pen, values[name], x + 4, y, width - 8);
                x += width;
            }
        }
    }

    /// <summary>On one line where it fits, smaller on two where it does not.</summary>
    private static void Fit(Pen pen, string value, double x, double y, double room)
    {
        if (Lettering.Width(value, Value, Weight.SemiBold) <= room)
        {
            pen.Text(x, y + 21, value, Value, Role.Ink, Anchor.Start, Weight.SemiBold);
            return;
        }

        const double small = 6.6;
        var lines = Lettering.Wrap(value, small, room, Weight.SemiBold);
        pen.Text(x, y + 17, lines[0], small, Role.Ink, Anchor.Start, Weight.SemiBold);
        if (lines.Count > 1) pen.Text(x, y + 25.5, Lettering.Fit(string.Join(' ', lines.Skip(1)), small, room, Weight.SemiBold), small, Role.Ink, Anchor.Start, Weight.SemiBold);
    }
}
