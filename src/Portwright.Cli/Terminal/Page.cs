using System.Text;

namespace Portwright.Cli.Terminal;

/// <summary>Plain text for a terminal, never wider than 80 columns. No colour, no cursor movement: it reads the same in a file.</summary>
internal sealed class Page(TextWriter writer)
{
    public const int Width = 80;

    public void Line(string text = "") => writer.WriteLine(text.TrimEnd());

    /// <summary>A heading with a rule under it.</summary>
    public void Title(string text)
    {
        foreach (var line in Wrap(text, Width)) Line(line);
        Line(new string('=', Math.Min(Width, text.Length)));
    }

    /// <summary>Text broken at spaces, later lines indented further.</summary>
    public void Paragraph(string text, int indent = 0, int hanging = 0)
    {
        var first = true;
        foreach (var line in Wrap(text, Width - indent - hanging))
        {
            Line(new string(' ', first ? indent : indent + hanging) + line);
            first = false;
        }
    }

    /// <summary>Words on the left, a value beginning at a fixed column; a value too long for the line goes under it.</summary>
    public void Pair(string words, string value, int indent = 2, int column = 34)
    {
        var left = new string(' ', indent) + words;
        var lines = Wrap(value, Width - column);
        if (left.Length >= column)
        {
            Paragraph(words, indent, 2);
            left = "";
        }
        for (var i = 0; i < lines.Count; i++) Line((i == 0 ? left : "").PadRight(column) + lines[i]);
        if (lines.Count == 0) Line(left);
    }

    /// <summary>Breaks text into lines of at most <paramref name="width"/>, at spaces where there are any.</summary>
    public static List<string> Wrap(string text, int width)
    {
        var lines = new List<string>();
        var line = new StringBuilder();
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var rest = word;
            if (line.Length > 0 && line.Length + 1 + rest.Length > width)
            {
                lines.Add(line.ToString());
                line.Clear();
            }
            for (; rest.Length > width; rest = rest[width..]) lines.Add(rest[..width]);
            if (line.Length > 0) line.Append(' ');
            line.Append(rest);
        }
        if (line.Length > 0) lines.Add(line.ToString());
        return lines;
    }
}
