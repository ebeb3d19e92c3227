namespace Portwright.Figures;

/// <summary>The table of readings on paper; its head stands again on a further sheet.</summary>
internal static class PaperTable
{
    private const double Size = 7.6, Line = 9.6, Pad = 2.6;

    /// <summary>Share of the width each column takes.</summary>
    private static readonly double[] Shares = [0.06, 0.105, 0.065, 0.15, 0.17, 0.075, 0.11, 0.055, 0.08, 0.13];

    public static void Put(PaperColumn column, SheetContent content, double left, double width)
    {
        if (content.Rows.Count == 0) return;
        var heads = SheetRow.Heads(content.Units);
        // Columns nobody fills (no earlier cut, no valve data) give their room to the readings.
        var cells = content.Rows.Select(r => r.Cells()).ToList();
        var used = Enumerable.Range(0, heads.Count).Where(c => cells.Any(r => r[c].Length > 0)).ToArray();
        var widths = used.Select(c => Shares[c] * width).ToArray();
        if (Array.IndexOf(used, SheetRow.ReadColumn) is >= 0 and var read) widths[read] += width - widths.Sum();
        var edges = new double[used.Length];
        for (var i = 1; i < used.Length; i++) edges[i] = edges[i - 1] + widths[i - 1];

        double Head(Pen pen, double y)
        {
            for (var i = 0; i < used.Length; i++)
            {
                pen.Text(left + edges[i], y + 8, Lettering.Fit(heads[used[i]].Name, Size, widths[i] - 4, Weight.SemiBold), Size, Role.Ink, Anchor.Start, Weight.SemiBold);
                pen.Text(left + edges[i], y + 17, Lettering.Fit(heads[used[i]].Unit, Size, widths[i] - 4), Size, Role.Quiet);
            }

            pen.Line(left, y + 20.5, left + width, y + 20.5, new Stroke(Role.Ink, 0.9));
            return 22;
        }

        column.Put(22, (pen, y) => Head(pen, y), keep: 3 * Line);
        for (var r = 0; r < cells.Count; r++)
        {
            var row = content.Rows[r];
            var lines = used.Select((c, i) => Lettering.Wrap(cells[r][c], Size, widths[i] - (c == SheetRow.VerdictColumn ? 14 : 4))).ToArray();
            var height = Math.Max(1, lines.Max(l => l.Count)) * Line + Pad;
            column.Put(height, (pen, y) =>
            {
                for (var i = 0; i < used.Length; i++)
                {
                    var x = left + edges[i];
                    if (used[i] == SheetRow.VerdictColumn && row.Verdict is { } verdict)
                    {
                        VerdictMark.Draw(pen, new(x + 3, y + 5.6), 2.9, verdict, row.Gain, 0.9);
                        x += 10;
                    }

                    for (var l = 0; l < lines[i].Count; l++)
                        pen.Text(x, y + 8.2 + l * Line, lines[i][l], Size, Role.Ink, Anchor.Start, used[i] is 0 or SheetRow.FlowColumn ? Weight.SemiBold : Weight.Regular);
                }

                pen.Line(left, y + height - 0.4, left + width, y + height - 0.4, new Stroke(Role.Hairline, 0.5));
            }, again: Head);
        }
    }
}
