using System.Net;
using System.Security.Cryptography;
using System.Text;
using Portwright.Shop.Runs;
using Portwright.Shop.Sheets;
using Portwright.Shop.Units;

namespace Portwright.Figures;

/// <summary>
/// The port sheet as one file that opens anywhere: figures and font inside, nothing fetched, no script; readable on a phone, light and
/// dark, and printable.
/// </summary>
public static class PortSheetHtml
{
    /// <summary>The whole document.</summary>
    public static string Render(PortSheet sheet, UnitSystem units = UnitSystem.UsCustomary, PortInEngine? engine = null)
    {
        var content = SheetContent.Of(sheet, units);
        var css = Css.Value;
        var hash = Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(css)));
        var html = new StringBuilder(300 * 1024);
        html.Append("<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
            // Only this very style sheet and the font inside it are let in.
            .Append("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'sha256-").Append(hash).Append("'; font-src data:; base-uri 'none'; form-action 'none'\">\n")
            .Append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<meta name=\"color-scheme\" content=\"light dark\">\n<title>")
            .Append(E($"{content.What}, {content.Where}")).Append("</title>\n<style>").Append(css).Append("</style>\n</head>\n<body>\n<main>\n");
        html.Append("<header><h1>").Append(E(content.What)).Append("</h1><p class=\"where\">").Append(E(content.Where)).Append("</p></header>\n");
        if (content.Headline.Count > 0)
        {
            html.Append("<dl class=\"headline\">");
            foreach (var field in content.Headline) Field(html, field);
            html.Append("</dl>\n");
        }

        var plot = FlowPlot.Of(sheet, units: units);
        Figure(html, FlowOverLift.Draw(plot, FigureSize.Wide, units), FlowOverLift.Draw(plot, FigureSize.Narrow, units));
        Table(html, content);
        if (sheet.Windows.Count > 1 && sheet.Port.Fact.Valve is { } valve)
        {
            var takes = sheet.ThroatTakesOver / valve.HeadDiameter;
            Figure(html,
                DischargeCoefficients.Draw(sheet.Windows, takes, FigureSize.Wide with { Height = 380 }, units),
                DischargeCoefficients.Draw(sheet.Windows, takes, FigureSize.Narrow with { Height = 300 }, units));
        }

        foreach (var section in content.Sections)
        {
            html.Append("<section").Append(section.Caution ? " class=\"caution\"" : "").Append("><h2>").Append(E(section.Heading)).Append("</h2>");
            foreach (var sentence in section.Sentences) html.Append("<p>").Append(E(sentence)).Append("</p>");
            html.Append("</section>\n");
        }

        if (engine is not null) Engine(html, engine, units);
        html.Append("<dl class=\"block\">");
        foreach (var field in content.TitleBlock) Field(html, field);
        return html.Append("</dl>\n</main>\n</body>\n</html>\n").ToString();
    }

    private static void Engine(StringBuilder html, PortInEngine engine, UnitSystem units)
    {
        html.Append("<section><h2>").Append(E(EngineSection.Heading)).Append("</h2>");
        foreach (var sentence in EngineSection.Said(engine, units)) html.Append("<p>").Append(E(sentence)).Append("</p>");
        html.Append("</section>\n");
        if (engine.Answer is { } answer)
        {
            var speeds = EngineSpeed.Of(answer);
            Figure(html, TorqueAndPower.Of(speeds, units), TorqueAndPower.Of(speeds, units, FigureSize.Narrow));
            Figure(html, WorthOverLift.Of(answer, engine.Kind, units), WorthOverLift.Of(answer, engine.Kind, units, FigureSize.Narrow));
            html.Append("<section><p><small>").Append(E(EngineSection.Small)).Append("</small></p></section>\n");
        }

        var rows = EngineSection.Targets(engine, units);
        if (EngineSection.Met(engine) is { Length: > 0 } met) html.Append("<section><p>").Append(E(met)).Append("</p></section>\n");
        if (rows.Count == 0) return;
        html.Append("<div class=\"table\" tabindex=\"0\" role=\"region\" aria-label=\"What the engine asks of the port\"><table><thead><tr>");
        foreach (var head in EngineSection.Heads) html.Append("<th scope=\"col\">").Append(E(head)).Append("</th>");
        html.Append("</tr></thead><tbody>");
        foreach (var row in rows)
        {
            html.Append("<tr><th scope=\"row\">").Append(E(row[0])).Append("</th>");
            foreach (var cell in row.Skip(1)) html.Append("<td>").Append(E(cell)).Append("</td>");
            html.Append("</tr>");
        }

        html.Append("</tbody></table></div>\n");
    }

    private static void Figure(StringBuilder html, Drawing wide, Drawing narrow) => html.Append("<figure>").Append(Svg.Page(wide, narrow)).Append("</figure>\n");

    private static void Field(StringBuilder html, SheetField field) =>
        html.Append("<div><dt>").Append(E(field.Name)).Append("</dt><dd>").Append(E(field.Value)).Append("</dd></div>");

    private static void Table(StringBuilder html, SheetContent content)
    {
        if (content.Rows.Count == 0) return;
        var heads = SheetRow.Heads(content.Units);
        var cells = content.Rows.Select(r => r.Cells()).ToList();
        var used = Enumerable.Range(0, heads.Count).Where(c => cells.Any(r => r[c].Length > 0)).ToArray();
        // The table scrolls sideways inside its own frame on a phone; the keyboard can reach and scroll it.
        html.Append("<div class=\"table\" tabindex=\"0\" role=\"region\" aria-label=\"Readings by lift\"><table><thead><tr>");
        foreach (var c in used) html.Append("<th scope=\"col\">").Append(E(heads[c].Name)).Append("<small>").Append(E(heads[c].Unit)).Append("</small></th>");
        html.Append("</tr></thead><tbody>");
        for (var r = 0; r < cells.Count; r++)
        {
            html.Append("<tr>");
            foreach (var c in used)
            {
                if (c == 0)
                {
                    html.Append("<th scope=\"row\">").Append(E(cells[r][c])).Append("</th>");
                    continue;
                }

                html.Append(c == SheetRow.FlowColumn ? "<td class=\"flow\">" : "<td>");
                if (c == SheetRow.VerdictColumn && content.Rows[r].Verdict is { } verdict)
                    html.Append("<span class=\"mark\" aria-hidden=\"true\">").Append(Svg.Page(VerdictMark.Draw(verdict, content.Rows[r].Gain))).Append("</span> ");
                html.Append(E(cells[r][c])).Append("</td>");
            }

            html.Append("</tr>");
        }

        html.Append("</tbody></table></div>\n");
    }

    private static string E(string words) => WebUtility.HtmlEncode(Lettering.Clean(words)).Replace("&#39;", "'", StringComparison.Ordinal);

    private static readonly Lazy<string> Css = new(() =>
        Svg.FontFaces([Weight.Regular, Weight.SemiBold]) + Colours(":root", Theme.Paper)
        + "@media (prefers-color-scheme:dark){" + Colours(":root", Theme.Lamp) + "}"
        + "@media print{" + Colours(":root", Theme.White) + "}"
        + Svg.StyleSheet + Encoding.UTF8.GetString(Typeface.File("sheet.css")!));

    private static string Colours(string selector, Theme theme) =>
        selector + "{" + string.Concat(Enum.GetValues<Role>().Select(r => $"--{r.ToString().ToLowerInvariant()}:{theme.Of(r)};")) + "}";
}
