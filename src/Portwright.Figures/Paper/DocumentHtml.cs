using System.Security.Cryptography;
using System.Text;
using Portwright.Shop.Ports;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Figures;

/// <summary>
/// A port's document as one file that opens anywhere: figures and font inside, nothing fetched, no script; readable on a phone, light and
/// dark, and printable.
/// </summary>
public static class DocumentHtml
{
    /// <summary>Over the parts for the engineer, folded away until asked for.</summary>
    public const string Fold = "For the engineer";

    /// <summary>The whole file.</summary>
    public static string Render(Document document, PortAtCut port, UnitSystem units = UnitSystem.UsCustomary)
    {
        ArgumentNullException.ThrowIfNull(document);
        var css = Css.Value;
        var hash = Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(css)));
        var html = new StringBuilder(300 * 1024);
        var blocks = new BlockHtml(html, port, units, document.Blocks.Select(b => b.Key).ToHashSet());
        html.Append("<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
            // Only this very style sheet and the font inside it are let in.
            .Append("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'sha256-").Append(hash).Append("'; font-src data:; base-uri 'none'; form-action 'none'\">\n")
            .Append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<meta name=\"color-scheme\" content=\"light dark\">\n");
        blocks.Element("title", null, $"{document.Title}, {document.Place}");
        html.Append("\n<style>").Append(css).Append("</style>\n</head>\n<body>\n<main>\n<header>");
        blocks.Element("h1", null, document.Title);
        blocks.Element("p", "place", document.Place);
        html.Append("</header>\n");
        for (var i = 0; i < document.Parts.Count; i++)
        {
            var part = document.Parts[i];
            if (part.For == Reader.Engineer && (i == 0 || document.Parts[i - 1].For != Reader.Engineer)) html.Append("<details><summary>").Append(Fold).Append("</summary>\n");
            html.Append("<section>");
            blocks.Element("h2", null, part.Heading);
            foreach (var block in part.Blocks) blocks.Write(block);
            html.Append("</section>\n");
            if (part.For == Reader.Engineer && (i == document.Parts.Count - 1 || document.Parts[i + 1].For != Reader.Engineer)) html.Append("</details>\n");
        }

        blocks.Values(document.TitleBlock, "values title-block");
        return html.Append("</main>\n</body>\n</html>\n").ToString();
    }

    /// <summary>One block, for a page with a style sheet of its own: classes <c>values</c>, <c>table</c>, <c>caution</c>, <c>finding</c>, <c>figure</c>, <c>mark</c>, <c>note</c>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A kind of block that is not known here.</exception>
    public static string Fragment(Block block, PortAtCut port, UnitSystem units)
    {
        var html = new StringBuilder();
        new BlockHtml(html, port, units, new HashSet<string>()).Write(block);
        return html.ToString();
    }

    private static readonly Lazy<string> Css = new(() =>
        Svg.FontFaces([Weight.Regular, Weight.SemiBold]) + Colours(":root", Theme.Paper)
        + "@media (prefers-color-scheme:dark){" + Colours(":root", Theme.Lamp) + "}"
        + "@media print{" + Colours(":root", Theme.White) + "}"
        + Svg.StyleSheet + Encoding.UTF8.GetString(Typeface.File("sheet.css")!));

    private static string Colours(string selector, Theme theme) =>
        selector + "{" + string.Concat(Enum.GetValues<Role>().Select(r => $"--{r.ToString().ToLowerInvariant()}:{theme.Of(r)};")) + "}";
}
