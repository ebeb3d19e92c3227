using Portwright.Cli.Terminal;
using Portwright.Shop.Units;
using Portwright.Store.Import;

namespace Portwright.Cli.Import;

/// <summary>What a file was read as, to be looked at before it is saved.</summary>
internal static class PreviewPage
{
    public static void Text(Page page, ImportPreview preview, UnitSystem units)
    {
        page.Title(preview.Table.Sheet is { } sheet ? $"{preview.Table.FileName}, sheet {sheet}" : preview.Table.FileName);
        page.Line();
        page.Line("columns");
        foreach (var column in preview.Mapping.Columns)
        {
            var role = column.Role == ColumnRole.LeftOut ? "left out" : column.Role.ToString().ToLowerInvariant() + (column.Unit is { } unit ? $" in {unit}" : "");
            var of = string.Join(", ", new[] { column.Port, column.Cut is { } c ? $"cut {c}" : "", column.Repeat is { } r ? $"repeat {r}" : "" }.Where(t => t.Length > 0));
            page.Pair($"{RawTable.Letters(column.Column)}  {column.Heading}", string.Join("; ", new[] { role, of, column.Why }.Where(t => t.Length > 0)));
        }
        foreach (var sweep in preview.Readings.GroupBy(r => (r.Port, r.Cut)))
        {
            page.Line();
            page.Line($"{(sweep.Key.Port.Length > 0 ? sweep.Key.Port : "readings")}{(sweep.Key.Cut is { } cut ? $", cut {cut}" : "")}");
            foreach (var lift in sweep.GroupBy(r => r.Lift.Si(Dimension.Lift)))
                page.Pair("lift " + Print.Number(lift.Key, Dimension.Lift, units), string.Join("  ", lift.Select(r => Shown(r.Reading) + (r.Range is { Length: > 0 } range ? $" (range {range})" : ""))));
        }
        if (preview.LeftOut.Count > 0)
        {
            page.Line();
            page.Line("left out");
            foreach (var row in preview.LeftOut.Take(12)) page.Pair(row.Row, $"{row.Why}: {row.Text}");
            if (preview.LeftOut.Count > 12) page.Line($"  and {preview.LeftOut.Count - 12} more rows");
        }
        if (preview.Problems.Count > 0)
        {
            page.Line();
            page.Line("to put right");
            foreach (var problem in preview.Problems.Take(20)) page.Paragraph($"{(problem.Address.Length > 0 ? problem.Address + ": " : "")}{problem.Text}", 2, 2);
            if (preview.Problems.Count > 20) page.Line($"  and {preview.Problems.Count - 20} more");
        }
        page.Line();
    }

    public static void Json(TextWriter output, IReadOnlyList<ImportPreview> previews) => JsonText.Write(output, json =>
    {
        json.WriteStartArray();
        foreach (var preview in previews)
        {
            json.WriteStartObject();
            json.WriteString("file", preview.Table.FileName);
            json.WriteBoolean("can_be_saved", preview.CanBeSaved);
            json.WriteStartArray("readings");
            foreach (var r in preview.Readings)
            {
                json.WriteStartObject();
                json.WriteString("port", r.Port);
                if (r.Cut is { } cut) json.WriteNumber("cut", cut);
                json.Number("lift_m", r.Lift.Si(Dimension.Lift));
                json.WriteString("reading", r.Reading.Text);
                json.WriteString("unit", r.Reading.Unit);
                json.WriteNumber("repeat", r.Repeat);
                if (r.Range is { } range) json.WriteString("range", range);
                json.WriteString("cell", r.Address);
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteStartArray("problems");
            foreach (var p in preview.Problems)
            {
                json.WriteStartObject();
                json.WriteString("cell", p.Address);
                json.WriteString("problem", p.Text);
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteEndObject();
        }
        json.WriteEndArray();
    });

    private static string Shown(Typed typed) =>
        typed.Text.Trim() is { Length: > 0 } text && !char.IsAsciiDigit(text[^1]) ? text : $"{typed.Text.Trim()} {typed.Unit}".TrimEnd();
}
