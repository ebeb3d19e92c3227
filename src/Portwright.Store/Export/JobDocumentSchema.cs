using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Schema;
using System.Text.Json.Serialization.Metadata;
using Portwright.Shop.Record;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Store.Export;

/// <summary>
/// The JSON Schema of a job document, made from the records themselves so that it cannot say something else than they
/// do. It is kept as <c>docs/formats/portwright-job.schema.json</c>.
/// </summary>
public static class JobDocumentSchema
{
    private sealed record JobFile(string Format, int Version, IReadOnlyList<Entry> Entries, IReadOnlyList<Attachment> Pictures);

    /// <summary>The schema (JSON Schema, draft 2020-12), indented.</summary>
    public static string Text()
    {
        var options = new JsonSerializerOptions(RecordJson.Default.Options)
        {
            TypeInfoResolver = JsonTypeInfoResolver.Combine(RecordJson.Default, new DefaultJsonTypeInfoResolver()),
        };
        var file = (JsonObject)options.GetJsonSchemaAsNode(typeof(JobFile), new JsonSchemaExporterOptions
        {
            TreatNullObliviousAsNonNullable = true,
            TransformSchemaNode = (context, node) => context.TypeInfo.Type == typeof(Sentence) ? OfSentence() : node,
        });
        var properties = (JsonObject)file["properties"]!;
        properties["format"] = new JsonObject { ["const"] = JobDocument.FormatName };
        properties["version"] = new JsonObject { ["const"] = JobDocument.FormatVersion };
        properties["entries"]!["minItems"] = 1;
        var picture = (JsonObject)properties["pictures"]!["items"]!["properties"]!;
        picture["content"] = new JsonObject { ["type"] = "string", ["pattern"] = "^[0-9a-f]{64}$", ["description"] = "SHA-256 of the bytes" };
        picture["mediaType"] = new JsonObject { ["enum"] = new JsonArray("image/jpeg", "image/png", "image/webp") };
        picture["bytes"] = new JsonObject { ["type"] = "string", ["contentEncoding"] = "base64" };
        file["required"] = new JsonArray("format", "version", "entries");
        file["type"] = "object";
        var schema = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = "Portwright job, version 1",
            ["description"] = "Every entry of one job in the order it was saved, the bench cards it was measured with, and its pictures. SI units unless an entry names its unit.",
        };
        foreach (var (key, value) in file) schema[key] = value?.DeepClone();
        return schema.ToJsonString(new JsonSerializerOptions { WriteIndented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }) + "\n";
    }

    /// <summary>A list of words and quantities; a text where an old file has one.</summary>
    private static JsonObject OfSentence() => new()
    {
        ["anyOf"] = new JsonArray(
            new JsonObject { ["type"] = "string" },
            new JsonObject
            {
                ["type"] = "array",
                ["items"] = new JsonObject
                {
                    ["anyOf"] = new JsonArray(
                        new JsonObject { ["type"] = "string" },
                        new JsonObject
                        {
                            ["type"] = "object",
                            ["properties"] = new JsonObject
                            {
                                ["value"] = new JsonObject { ["type"] = new JsonArray("number", "null") },
                                ["dimension"] = new JsonObject { ["enum"] = new JsonArray([.. Enum.GetValues<Dimension>().Select(d => (JsonNode)SentenceJson.NameOf(d))]) },
                                ["expanded"] = new JsonObject { ["type"] = "number" },
                                ["figures"] = new JsonObject { ["type"] = "integer" },
                                ["signed"] = new JsonObject { ["type"] = "boolean" },
                                ["withoutUnit"] = new JsonObject { ["type"] = "boolean" },
                            },
                            ["required"] = new JsonArray("value", "dimension"),
                        },
                        new JsonObject
                        {
                            ["type"] = "object",
                            ["properties"] = new JsonObject { ["us"] = new JsonObject { ["type"] = "string" }, ["si"] = new JsonObject { ["type"] = "string" } },
                            ["required"] = new JsonArray("us", "si"),
                        }),
                },
            }),
    };
}
