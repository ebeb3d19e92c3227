using System.Text.Json;
using System.Text.Json.Serialization;
using Portwright.Shop.Units;

namespace Portwright.Shop.Words;

/// <summary>
/// A sentence as the record keeps it: a list of words and of quantities, <c>["Open the throat to ", {"value": 0.0457, "dimension":
/// "length"}, "."]</c>. Meaning is kept, not form: the dimension by its name, the value in SI.
/// </summary>
/// <remarks>A sentence kept before quantities had names is a text with marks in it; <see cref="MarkedText"/> reads those.</remarks>
public sealed class SentenceJson : JsonConverter<Sentence>
{
    private static readonly Dictionary<string, Dimension> Dimensions = Enum.GetValues<Dimension>().ToDictionary(NameOf, d => d);

    /// <summary>The dimension's name in the record: <c>volume-flow</c>.</summary>
    public static string NameOf(Dimension dimension) => JsonNamingPolicy.KebabCaseLower.ConvertName(dimension.ToString());

    /// <inheritdoc/>
    public override Sentence Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        if (reader.TokenType == JsonTokenType.String) return MarkedText.Read(reader.GetString()!);
        if (reader.TokenType != JsonTokenType.StartArray) throw new JsonException("A sentence is a text, or a list of words and quantities.");
        var pieces = new List<Piece>();
        while (reader.Read() && reader.TokenType != JsonTokenType.EndArray)
        {
            pieces.Add(reader.TokenType switch
            {
                JsonTokenType.String => new Piece.Plain(reader.GetString()!),
                JsonTokenType.StartObject => Object(ref reader),
                _ => throw new JsonException("A piece of a sentence is a text or a quantity."),
            });
        }

        return new(pieces);
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, Sentence value, JsonSerializerOptions options) => Write(writer, value);

    /// <summary>A sentence as the list of its pieces.</summary>
    public static void Write(Utf8JsonWriter writer, Sentence value)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(value);
        writer.WriteStartArray();
        foreach (var piece in value.Pieces)
        {
            switch (piece)
            {
                case Piece.Plain plain: writer.WriteStringValue(plain.Text); break;
                case Piece.Number number: Write(writer, number.Quantity); break;
                case Piece.Word word:
                    writer.WriteStartObject();
                    writer.WriteString("us", word.Term.Us);
                    writer.WriteString("si", word.Term.Si);
                    writer.WriteEndObject();
                    break;
            }
        }

        writer.WriteEndArray();
    }

    /// <summary>One quantity: value and doubt in SI, the dimension by name. What is not finite is null.</summary>
    public static void Write(Utf8JsonWriter writer, Quantity quantity)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(quantity);
        writer.WriteStartObject();
        if (double.IsFinite(quantity.Si)) writer.WriteNumber("value", quantity.Si);
        else writer.WriteNull("value");
        writer.WriteString("dimension", NameOf(quantity.Dimension));
        if (quantity.Expanded > 0) writer.WriteNumber("expanded", quantity.Expanded);
        if (quantity.Figures > 0) writer.WriteNumber("figures", quantity.Figures);
        if (quantity.Signed) writer.WriteBoolean("signed", true);
        if (quantity.WithoutUnit) writer.WriteBoolean("withoutUnit", true);
        if (quantity.Budget.Length > 0) writer.WriteString("budget", quantity.Budget);
        writer.WriteEndObject();
    }

    private static Piece Object(ref Utf8JsonReader reader)
    {
        using var document = JsonDocument.ParseValue(ref reader);
        var of = document.RootElement;
        if (of.TryGetProperty("us", out var us)) return new Piece.Word(new Term(us.GetString()!, of.GetProperty("si").GetString()!));
        if (!of.TryGetProperty("dimension", out var named) || !Dimensions.TryGetValue(named.GetString() ?? "", out var dimension))
            throw new JsonException("A quantity names its dimension: " + string.Join(", ", Dimensions.Keys) + ".");
        return new Piece.Number(new Quantity(
            of.TryGetProperty("value", out var value) && value.ValueKind == JsonValueKind.Number ? value.GetDouble() : double.NaN,
            dimension,
            of.TryGetProperty("expanded", out var doubt) ? doubt.GetDouble() : 0,
            of.TryGetProperty("figures", out var figures) ? figures.GetInt32() : 0,
            of.TryGetProperty("signed", out var signed) && signed.GetBoolean(),
            of.TryGetProperty("withoutUnit", out var bare) && bare.GetBoolean(),
            of.TryGetProperty("budget", out var budget) ? budget.GetString()! : ""));
    }
}
