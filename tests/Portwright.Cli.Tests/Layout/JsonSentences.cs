using System.Text.Json;
using Portwright.Shop.Words;

namespace Portwright.Cli.Tests.Layout;

/// <summary>The sentences of a document's JSON, read back piece for piece: words as they are, quantities in SI to the last digit.</summary>
internal static class JsonSentences
{
    public static IEnumerable<string> Missing(string text, Document document)
    {
        // A name used twice would hide what stood under it first.
        using var json = JsonDocument.Parse(text, new JsonDocumentOptions { AllowDuplicateProperties = false });
        var written = Of(json.RootElement).ToList();
        var at = 0;
        foreach (var sentence in document.Sentences.Where(s => !s.IsEmpty))
        {
            if (written.FindIndex(at, s => s.Equals(sentence)) is >= 0 and var found) at = found + 1;
            else yield return sentence.ToString();
        }

        var told = Named(json.RootElement, "confidence").Select(c => c.GetDouble()).ToList();
        foreach (var finding in document.Blocks.OfType<FindingSaid>().Where(f => !told.Contains(f.Confidence))) yield return $"confidence of {finding.Title}";
    }

    private static IEnumerable<Sentence> Of(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Array when element.EnumerateArray().All(e => e.ValueKind == JsonValueKind.String || IsQuantity(e) || IsTerm(e)) => [element.Deserialize<Sentence>()!],
        JsonValueKind.Array => element.EnumerateArray().SelectMany(Of),
        // A quantity alone stands without the list.
        JsonValueKind.Object when IsQuantity(element) => [JsonSerializer.Deserialize<Sentence>($"[{element.GetRawText()}]")!],
        JsonValueKind.Object => element.EnumerateObject().SelectMany(p => Of(p.Value)),
        _ => [],
    };

    private static IEnumerable<JsonElement> Named(JsonElement element, string name) => element.ValueKind switch
    {
        JsonValueKind.Array => element.EnumerateArray().SelectMany(e => Named(e, name)),
        JsonValueKind.Object => element.EnumerateObject().SelectMany(p => p.Name == name && p.Value.ValueKind == JsonValueKind.Number ? [p.Value] : Named(p.Value, name)),
        _ => [],
    };

    private static bool IsQuantity(JsonElement e) => e.ValueKind == JsonValueKind.Object && e.TryGetProperty("dimension", out var of) && of.ValueKind == JsonValueKind.String;

    private static bool IsTerm(JsonElement e) => e.ValueKind == JsonValueKind.Object && e.TryGetProperty("us", out var us) && us.ValueKind == JsonValueKind.String;
}
