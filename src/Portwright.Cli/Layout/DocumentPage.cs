using Portwright.Cli.Terminal;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Cli.Layout;

/// <summary>A document laid out as plain text at 80 columns, every block of it; a drawing by its sentence.</summary>
internal sealed class DocumentPage(TextWriter output, UnitSystem units)
{
    private readonly Page _page = new(output);

    public void Write(Document document)
    {
        _page.Title($"{In(document.Title)}");
        _page.Paragraph(In(document.Place));
        foreach (var part in document.Parts)
        {
            _page.Line();
            _page.Line(In(part.Heading).ToUpperInvariant());
            foreach (var block in part.Blocks) Write(block);
        }

        _page.Line();
        foreach (var field in document.TitleBlock) _page.Pair(In(field.Name), In(field.Value));
    }

    private void Write(Block block)
    {
        switch (block)
        {
            case Paragraph paragraph: _page.Paragraph(In(paragraph.Text), 2); break;
            case Caution caution: _page.Paragraph("! " + In(caution.Text), 2, 2); break;
            case Values values:
                foreach (var row in values.Rows) _page.Pair(In(row.Name), In(row.Value));
                break;
            case Table table: TerminalTable.Write(_page, table, units); break;
            case Figure figure: _page.Paragraph(In(figure.Instead), 2); break;
            case FindingSaid finding:
                _page.Paragraph($"- {In(finding.Title)}, {In(finding.Odds)}. {In(finding.Says)}", 2, 2);
                foreach (var sentence in finding.Then) _page.Paragraph(In(sentence), 4);
                break;
            default: throw new InvalidOperationException($"The terminal has no layout for {block.GetType().Name}.");
        }
    }

    private string In(Sentence sentence) => sentence.In(units);
}
