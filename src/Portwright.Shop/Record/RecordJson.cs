using System.Text.Json;
using System.Text.Json.Serialization;

namespace Portwright.Shop.Record;

/// <summary>How entries are written as JSON, in the record and in a job document: one way, everywhere.</summary>
[JsonSourceGenerationOptions(
    JsonSerializerDefaults.Web,
    NumberHandling = JsonNumberHandling.Strict,
    UseStringEnumConverter = true,
    RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true)]
[JsonSerializable(typeof(Entry))]
[JsonSerializable(typeof(Fact))]
[JsonSerializable(typeof(IReadOnlyList<Entry>))]
public sealed partial class RecordJson : JsonSerializerContext
{
}
