using System.Collections.Immutable;
using System.Globalization;
using System.Net;
using System.Security.Cryptography;
using System.Text;

namespace Portwright.Figures;

/// <summary>Writes one drawing as SVG text: colours by class where there is no theme, as attributes where there is one.</summary>
internal sealed class SvgWriter(Theme? theme)
{
    private readonly StringBuilder _out = new(16 * 1024);

    public string Write(Drawing drawing, string className, string css = "")
    {
        var touchable = theme is null && drawing.Touchables().Any();
        _out.Append("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 ").Append(N(drawing.Width)).Append(' ').Append(N(drawing.Height))
            .Append("\" width=\"").Append(N(drawing.Width)).Append("\" height=\"").Append(N(drawing.Height))
            // Inside role img everything is one picture; a figure with places to touch is a group of them.
            .Append("\" role=\"").Append(touchable ? "group" : "img").Append("\" aria-label=\"").Append(E(NameOf(drawing))).Append('"');
        if (theme is null) Attribute("class", $"pw-figure {className}".TrimEnd());
        Attribute("font-family", $"'{Typeface.Family}', sans-serif");
        _out.Append('>');
        if (theme is not null)
        {
            Element("title", drawing.Title);
            if (drawing.Description.Length > 0) Element("desc", drawing.Description);
            if (css.Length > 0) _out.Append("<style>").Append(css).Append("</style>");
            _out.Append("<rect width=\"").Append(N(drawing.Width)).Append("\" height=\"").Append(N(drawing.Height)).Append('"');
            Paint(Role.Ground, null);
            _out.Append("/>");
        }

        All(drawing.Marks);
        return _out.Append("</svg>").ToString();
    }

    private static string NameOf(Drawing d) => d.Description.Length > 0 ? $"{d.Title}. {d.Description}" : d.Title;

    private void All(ImmutableArray<Mark> marks)
    {
        foreach (var mark in marks) One(mark);
    }

    private void One(Mark mark)
    {
        switch (mark)
        {
            case Segments s:
                _out.Append("<path d=\"");
                foreach (var (from, to) in s.Pieces) _out.Append('M').Append(P(from)).Append('L').Append(P(to));
                _out.Append('"');
                Paint(null, s.Stroke);
                _out.Append("/>");
                break;
            case Polyline p: Path(p.Places, false, null, p.Stroke); break;
            case Area a: Path(a.Places, true, a.Fill, a.Outline); break;
            case Circle c:
                _out.Append("<circle");
                Numbers(("cx", c.Centre.X), ("cy", c.Centre.Y), ("r", c.Radius));
                Paint(c.Fill, c.Outline);
                _out.Append("/>");
                break;
            case RoundedBox b:
                Rectangle(b.Box, b.Radius);
                Paint(b.Fill, b.Outline);
                _out.Append("/>");
                break;
            case Shades s: Shaded(s); break;
            case Text t: Line(t); break;
            case Named n:
                _out.Append("<g");
                Attribute("data-key", n.Key);
                _out.Append('>');
                All(n.Marks);
                _out.Append("</g>");
                break;
            case Touchable t: Touch(t); break;
            default: throw new ArgumentOutOfRangeException(nameof(mark), mark.GetType().Name, "A mark this writer knows.");
        }
    }

    private void Line(Text t)
    {
        _out.Append("<text");
        Numbers(("x", t.At.X), ("y", t.At.Y), ("font-size", t.Size));
        if (t.Anchor != Anchor.Start) Attribute("text-anchor", t.Anchor == Anchor.Middle ? "middle" : "end");
        if (t.Weight != Weight.Regular) Numbers(("font-weight", (int)t.Weight));
        Paint(t.Role, null);
        // The space is not drawn: it keeps whoever reads the letters without the picture from running "in 1" and "221" together.
        _out.Append('>').Append(E(t.Words)).Append("</text> ");
    }

    private void Shaded(Shades shades)
    {
        var line = Closed(shades.Within);
        // Named after its own shape: two figures of one page share a name only where they share the line.
        var name = "pw-cut-" + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(line)).AsSpan(0, 6));
        _out.Append("<clipPath id=\"").Append(name).Append("\"><path d=\"").Append(line).Append("\"/></clipPath><g clip-path=\"url(#").Append(name).Append(")\">");
        foreach (var layer in shades.Layers)
        {
            _out.Append("<path d=\"");
            foreach (var ring in layer.Rings) _out.Append(Closed(ring));
            // The map's colours are the same in every theme, so they stand here and not in the style sheet.
            _out.Append("\" fill-rule=\"evenodd\" fill=\"").Append(E(layer.Colour)).Append("\"/>");
        }

        _out.Append("</g>");
    }

    private static string Closed(ImmutableArray<Place> places) => places.IsEmpty ? "" : $"M{string.Join('L', places.Select(P))}Z";

    private void Touch(Touchable t)
    {
        if (theme is not null)
        {
            All(t.Marks);
            return;
        }

        var element = t.Href is null ? "g" : "a";
        _out.Append('<').Append(element).Append(" class=\"pw-touch\"");
        if (t.Href is not null) Attribute("href", t.Href);
        else Attribute("tabindex", "0");
        if (t.Href is null) Attribute("role", "img");
        Attribute("aria-label", t.Title);
        if (t.Key is not null) Attribute("data-key", t.Key);
        _out.Append('>');
        Rectangle(t.Hit, t.Corner);
        Attribute("class", "pw-hit");
        _out.Append("/>");
        All(t.Marks);
        if (!t.Tip.IsEmpty)
        {
            _out.Append("<g class=\"pw-tip\" aria-hidden=\"true\">");
            All(t.Tip);
            _out.Append("</g>");
        }

        _out.Append("</").Append(element).Append('>');
    }

    private void Path(ImmutableArray<Place> places, bool closed, Role? fill, Stroke? stroke)
    {
        if (places.IsEmpty) return;
        _out.Append("<path d=\"M").Append(string.Join('L', places.Select(P))).Append(closed ? "Z\"" : "\"");
        Paint(fill, stroke);
        _out.Append("/>");
    }

    private void Rectangle(Box box, double radius)
    {
        _out.Append("<rect");
        Numbers(("x", box.X), ("y", box.Y), ("width", box.Width), ("height", box.Height));
        if (radius > 0) Numbers(("rx", radius));
    }

    private void Paint(Role? fill, Stroke? stroke)
    {
        if (theme is null)
        {
            var classes = fill is { } f ? $"f-{f.ToString().ToLowerInvariant()}" : "f-none";
            Attribute("class", stroke is { } s ? $"{classes} s-{s.Role.ToString().ToLowerInvariant()}" : classes);
        }
        else
        {
            Attribute("fill", fill is { } f ? theme.Of(f) : "none");
            if (stroke is { } s) Attribute("stroke", theme.Of(s.Role));
        }

        if (stroke is not { } line) return;
        Numbers(("stroke-width", line.Width));
        var dashes = line.Dashes();
        if (dashes.Length > 0) Attribute("stroke-dasharray", string.Join(' ', dashes.Select(N)));
        Attribute("stroke-linejoin", "round");
    }

    private void Element(string name, string words) => _out.Append('<').Append(name).Append('>').Append(E(words)).Append("</").Append(name).Append('>');

    private void Attribute(string name, string value) => _out.Append(' ').Append(name).Append("=\"").Append(E(value)).Append('"');

    private void Numbers(params ReadOnlySpan<(string Name, double Value)> numbers)
    {
        foreach (var (name, value) in numbers) _out.Append(' ').Append(name).Append("=\"").Append(N(value)).Append('"');
    }

    private static string E(string words) => WebUtility.HtmlEncode(Lettering.Clean(words)).Replace("&#39;", "'", StringComparison.Ordinal);

    private static string P(Place p) => $"{N(p.X)} {N(p.Y)}";

    private static string N(double number) => Math.Round(number, 2).ToString("0.##", CultureInfo.InvariantCulture);
}
