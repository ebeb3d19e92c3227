using System.Net;
using System.Text;
using Portwright.Shop.Ports;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Figures;

/// <summary>A document's blocks as elements of a page. What a person typed is escaped; nothing carries a style attribute.</summary>
/// <param name="told">Keys of the blocks that stand in the same page: a number leads to its budget only where that is there.</param>
internal sealed class BlockHtml(StringBuilder html, PortAtCut port, UnitSystem units, IReadOnlySet<string> told)
{
    public void Write(Block block)
    {
        switch (block)
        {
            case Paragraph p: Element("p", null, p.Text); break;
            case Caution c: Element("p", "caution", c.Text); break;
            case Values v: Values(v.Rows, v.Key == "headline" ? "values headline" : "values"); break;
            case Table t: Table(t); break;
            case Figure f: Figure(f); break;
            case FindingSaid f: Finding(f); break;
            default: throw new ArgumentOutOfRangeException(nameof(block), block.GetType().Name, "A kind of block that is not known here.");
        }

        html.Append('\n');
    }

    public void Element(string name, string? kind, Sentence words)
    {
        if (words.IsEmpty) return;
        html.Append('<').Append(name);
        if (kind is not null) html.Append(" class=\"").Append(kind).Append('"');
        html.Append('>');
        Say(words);
        html.Append("</").Append(name).Append('>');
    }

    public void Values(IReadOnlyList<NamedValue> rows, string kind)
    {
        html.Append("<dl class=\"").Append(kind).Append("\">");
        foreach (var row in rows)
        {
            html.Append("<div>");
            Element("dt", null, row.Name);
            html.Append("<dd>");
            Marked(row.Shape, row.Value);
            html.Append("</dd></div>");
        }

        html.Append("</dl>");
    }

    private void Figure(Figure figure)
    {
        var (wide, narrow) = SheetFigures.ForPage(port, figure, units);
        html.Append("<figure class=\"figure\">").Append(Svg.Page(wide, narrow));
        Element("figcaption", null, figure.Instead);
        html.Append("</figure>");
    }

    private void Finding(FindingSaid finding)
    {
        html.Append("<article class=\"finding ").Append(finding.Kind.ToString().ToLowerInvariant()).Append("\"><h3>");
        Say(finding.Title);
        html.Append(' ');
        Element("small", null, finding.Odds);
        html.Append("</h3>");
        Element("p", null, finding.Says);
        foreach (var then in finding.Then) Element("p", "then", then);
        html.Append("</article>");
    }

    private void Table(Table table)
    {
        // It scrolls sideways inside its own frame on a phone; the keyboard can reach and scroll it.
        html.Append("<div class=\"table\" tabindex=\"0\" id=\"").Append(table.Key).Append("\" role=\"region\" aria-label=\"").Append(E(table.Caption.In(units))).Append("\"><table>");
        Element("caption", null, table.Caption);
        html.Append("<thead><tr>");
        foreach (var column in table.Columns)
        {
            html.Append("<th scope=\"col\">").Append(E(column.Head.In(units)));
            if (column.UnitIn(units) is { Length: > 0 } unit) html.Append("<small>").Append(E(unit)).Append("</small>");
            html.Append("</th>");
        }

        html.Append("</tr></thead><tbody>");
        foreach (var row in table.Rows)
        {
            html.Append("<tr>");
            for (var i = 0; i < row.Count; i++)
            {
                var column = table.Columns[i];
                html.Append(i == 0 ? "<th scope=\"row\">" : column.Strong ? "<td class=\"strong\">" : "<td>");
                Marked(row[i].Shape, row[i].Text, column.Dimension is not null);
                html.Append(i == 0 ? "</th>" : "</td>");
            }

            html.Append("</tr>");
        }

        html.Append("</tbody></table></div>");
        Element("p", "note", table.Note);
    }

    private void Marked(VerdictShape shape, Sentence said, bool bare = false)
    {
        var words = bare ? said.BareIn(units) : said.In(units);
        if (shape != VerdictShape.None) html.Append("<span class=\"mark\" aria-hidden=\"true\">").Append(Svg.Page(VerdictMark.Draw(shape, words))).Append("</span> ");
        Say(said, bare);
    }

    /// <summary>A sentence; a number whose budget stands in the page leads there.</summary>
    private void Say(Sentence said, bool bare = false)
    {
        foreach (var piece in said.Pieces)
        {
            var one = new Sentence([piece]);
            var words = E(bare ? one.BareIn(units) : one.In(units));
            if (piece is Piece.Number { Quantity.Budget: { Length: > 0 } budget } && told.Contains(DoubtSaid.BlockOf + budget))
                html.Append("<a href=\"#").Append(DoubtSaid.BlockOf).Append(budget).Append("\">").Append(words).Append("</a>");
            else html.Append(words);
        }
    }

    private static string E(string words) => WebUtility.HtmlEncode(Lettering.Clean(words)).Replace("&#39;", "'", StringComparison.Ordinal);
}
