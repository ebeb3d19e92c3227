using System.Text;

namespace Portwright.Figures;

/// <summary>Drawings as SVG. What a person typed is escaped; nothing carries a style attribute, so a strict content security policy holds.</summary>
public static class Svg
{
    private static readonly Lazy<string> Sheet = new(() => Encoding.UTF8.GetString(Typeface.File("figures.css")!));

    /// <summary>The style sheet that goes with figures in a page; it takes its colours from the page's custom properties.</summary>
    public static string StyleSheet => Sheet.Value;

    /// <summary>For a page: colours by class, so the figure follows the page's light or dark.</summary>
    /// <param name="className">Further classes of the <c>svg</c> element.</param>
    public static string Page(Drawing drawing, string className = "") => new SvgWriter(null).Write(drawing, className);

    /// <summary>For a page, in both layouts; the style sheet shows the one that fits.</summary>
    public static string Page(Drawing wide, Drawing narrow) =>
        $"<div class=\"pw-fit\">{Page(wide, "pw-wide")}{Page(narrow, "pw-narrow")}</div>";

    /// <summary>A file of its own, with colours in it.</summary>
    /// <param name="embedFont">True: the font's letters go with it (about 85 kB a weight). False: the font is only named.</param>
    public static string Standalone(Drawing drawing, Theme theme, bool embedFont = true)
    {
        ArgumentNullException.ThrowIfNull(theme);
        return new SvgWriter(theme).Write(drawing, "", embedFont ? FontFaces(drawing.Texts().Select(t => t.Weight)) : "");
    }

    /// <summary>Style rules that carry the font's letters inside.</summary>
    internal static string FontFaces(IEnumerable<Weight> weights)
    {
        var css = new StringBuilder();
        foreach (var weight in weights.Distinct().Order())
        {
            css.Append("@font-face{font-family:\"").Append(Typeface.Family).Append("\";font-weight:").Append((int)weight)
                .Append(";src:url(data:font/woff2;base64,").Append(Convert.ToBase64String(Typeface.File(Typeface.FileName(weight))!))
                .Append(") format(\"woff2\")}");
        }

        return css.ToString();
    }
}
