using System.Text.Json;
using Portwright.Cli.Terminal;
using Portwright.Shop.Words;

namespace Portwright.Cli.Layout;

/// <summary>
/// A document as JSON for other programs: the same blocks, every quantity in SI at full precision with its dimension by name. A sentence is
/// a list of words and quantities; a value or a cell that is one quantity alone stands without the list.
/// </summary>
internal static class DocumentJson
{
    public static void Write(TextWriter output, Document document, IReadOnlyList<string> leftOut) => JsonText.Write(output, json =>
    {
        json.WriteStartObject();
        json.Sentence("title", document.Title);
        json.Sentence("place", document.Place);
        foreach (var part in document.Parts)
        {
            json.WriteStartObject(part.Key);
            json.Sentence("heading", part.Heading);
            json.WriteString("for", part.For == Reader.Engineer ? "engineer" : "porter");
            foreach (var block in part.Blocks)
            {
                json.WriteStartObject(block.Key);
                Block(json, block);
                json.WriteEndObject();
            }

            json.WriteEndObject();
        }

        json.WriteStartObject("title-block");
        Rows(json, document.TitleBlock);
        json.WriteEndObject();
        json.WriteStartArray("left-out");
        foreach (var words in leftOut) json.WriteStringValue(words);
        json.WriteEndArray();
        json.WriteEndObject();
    });

    private static void Block(Utf8JsonWriter json, Block block)
    {
        switch (block)
        {
            case Paragraph paragraph:
                json.WriteString("block", "paragraph");
                json.Sentence("text", paragraph.Text);
                break;
            case Caution caution:
                json.WriteString("block", "caution");
                json.Sentence("text", caution.Text);
                break;
            case Values values:
                json.WriteString("block", "values");
                Rows(json, values.Rows);
                break;
            case Table table: Table(json, table); break;
            case Figure figure:
                json.WriteString("block", "figure");
                json.WriteString("shows", JsonNamingPolicy.KebabCaseLower.ConvertName(figure.Kind.ToString()));
                json.Sentence("text", figure.Instead);
                break;
            case FindingSaid finding:
                json.WriteString("block", "finding");
                json.WriteString("stands", finding.Kind.ToString().ToLowerInvariant());
                json.Sentence("title", finding.Title);
                json.Sentence("odds", finding.Odds);
                json.Number("confidence", finding.Confidence);
                json.Sentence("says", finding.Says);
                json.WriteStartArray("then");
                foreach (var sentence in finding.Then) Pieces(json, sentence);
                json.WriteEndArray();
                break;
            default: throw new InvalidOperationException($"JSON has no layout for {block.GetType().Name}.");
        }
    }

    private static void Rows(Utf8JsonWriter json, IReadOnlyList<NamedValue> rows)
    {
        foreach (var row in rows)
        {
            json.WriteStartObject(row.Key);
            json.Sentence("name", row.Name);
            json.Sentence("value", row.Value);
            Shape(json, row.Shape);
            json.WriteEndObject();
        }
    }

    private static void Table(Utf8JsonWriter json, Table table)
    {
        json.WriteString("block", "table");
        json.Sentence("caption", table.Caption);
        json.WriteStartObject("heads");
        foreach (var column in table.Columns) json.Sentence(column.Key, column.Head);
        json.WriteEndObject();
        json.WriteStartArray("rows");
        foreach (var row in table.Rows)
        {
            json.WriteStartObject();
            for (var i = 0; i < row.Count; i++)
            {
                if (row[i].Text.IsEmpty) continue;
                json.Sentence(table.Columns[i].Key, row[i].Text);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.Sentence("note", table.Note);
    }

    private static void Shape(Utf8JsonWriter json, VerdictShape shape)
    {
        if (shape != VerdictShape.None) json.WriteString("verdict", shape.ToString().ToLowerInvariant());
    }

    private static void Sentence(this Utf8JsonWriter json, string key, Sentence sentence)
    {
        if (sentence.IsEmpty) return;
        json.WritePropertyName(key);
        if (sentence.Pieces is [Piece.Number { Quantity: var alone }]) SentenceJson.Write(json, alone);
        else Pieces(json, sentence);
    }

    private static void Pieces(Utf8JsonWriter json, Sentence sentence) => SentenceJson.Write(json, sentence);
}
