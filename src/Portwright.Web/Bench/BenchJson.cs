using System.Text.Json;

namespace Portwright.Web.Bench;

/// <summary>JSON between the bench page and its script.</summary>
internal static class BenchJson
{
    private static readonly JsonSerializerOptions Web = new(JsonSerializerDefaults.Web);

    public static string Write<T>(T value) => JsonSerializer.Serialize(value, Web);
}
