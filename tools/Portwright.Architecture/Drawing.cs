using System.Globalization;
using System.Net;
using System.Text;

namespace Portwright.Architecture;

/// <summary>A drawing in the program's own look: paper, ink, blue for what is worked, brass for what to look at.</summary>
public sealed class Drawing(double width, double height, string title)
{
    public const string Ink = "#1a2227", Quiet = "#5d686e", Blue = "#1d4f91", Brass = "#a8620f", Panel = "#fbfaf6";
    private const string Ground = "#f3f1ea", Hairline = "#cfd0c9";
    private readonly StringBuilder _body = new();

    public void Box(double x, double y, double w, double h, string name, string? under = null)
    {
        Put($"<rect x=\"{x - w / 2:0.#}\" y=\"{y - h / 2:0.#}\" width=\"{w:0.#}\" height=\"{h:0.#}\" rx=\"3\" fill=\"{Panel}\" stroke=\"{Ink}\" stroke-width=\"1.6\"/>");
        Words(x, under is null ? y + 5.5 : y - 2, name, 17, Ink, "middle", bold: true);
        if (under is not null) Words(x, y + 15, under, 13, Quiet, "middle");
    }

    /// <summary>A smooth line through places, with a head at its end; both ends for rooms tied to one another.</summary>
    public void Arrow(IReadOnlyList<Place> through, bool tied = false)
    {
        var path = new StringBuilder(string.Create(CultureInfo.InvariantCulture, $"M{through[0].X:0.#} {through[0].Y:0.#}"));
        for (var i = 1; i < through.Count; i++)
        {
            var (a, b) = (through[i - 1], through[i]);
            var (flat, middle) = (tied ? 0 : (b.Y - a.Y) / 2, tied ? -26 : 0);
            path.Append(CultureInfo.InvariantCulture, $" C{a.X:0.#} {a.Y + flat + middle:0.#} {b.X:0.#} {b.Y - flat + middle:0.#} {b.X:0.#} {b.Y:0.#}");
        }

        var colour = tied ? Brass : Blue;
        Put($"<path d=\"{path}\" fill=\"none\" stroke=\"{colour}\" stroke-width=\"1.5\"{(tied ? " stroke-dasharray=\"6 3\"" : "")}/>");
        Head(through[^1], through[^1] with { Y = through[^1].Y - 1 }, colour);
        if (tied) Head(through[0], through[0] with { Y = through[0].Y - 1 }, colour);
    }

    /// <summary>An arrow to the right.</summary>
    public void Onward(Place from, Place to)
    {
        Put($"<path d=\"M{from.X:0.#} {from.Y:0.#} L{to.X:0.#} {to.Y:0.#}\" stroke=\"{Blue}\" stroke-width=\"1.5\"/>");
        Head(to, to with { X = to.X - 1 }, Blue);
    }

    public void Words(double x, double y, string words, double size, string colour, string anchor = "start", bool bold = false) =>
        Put($"<text x=\"{x:0.#}\" y=\"{y:0.#}\" font-size=\"{size:0.#}\" fill=\"{colour}\" text-anchor=\"{anchor}\"{(bold ? " font-weight=\"600\"" : "")}>{WebUtility.HtmlEncode(words)}</text>");

    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"""
        <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width:0.#} {height:0.#}" width="{width:0.#}" height="{height:0.#}" role="img" font-family="'IBM Plex Sans Condensed', 'Arial Narrow', sans-serif">
        <title>{WebUtility.HtmlEncode(title)}</title>
        <rect width="{width:0.#}" height="{height:0.#}" fill="{Ground}" stroke="{Hairline}"/>
        {_body}</svg>

        """).ReplaceLineEndings("\n");

    private void Head(Place tip, Place before, string colour)
    {
        var (dx, dy) = (tip.X - before.X, tip.Y - before.Y);
        Put($"<path d=\"M{tip.X:0.#} {tip.Y:0.#} L{tip.X - 9 * dx - 4 * dy:0.#} {tip.Y - 9 * dy + 4 * dx:0.#} L{tip.X - 9 * dx + 4 * dy:0.#} {tip.Y - 9 * dy - 4 * dx:0.#} Z\" fill=\"{colour}\"/>");
    }

    private void Put(FormattableString line) => _body.Append(line.ToString(CultureInfo.InvariantCulture)).Append('\n');
}
