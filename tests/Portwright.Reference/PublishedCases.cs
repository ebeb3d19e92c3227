using System.Text.Json;
using System.Text.Json.Nodes;

namespace Portwright.Reference;

/// <summary>One published check value, as kept in <c>Published/*.json</c>.</summary>
/// <param name="Id">The case's own name; a failing line prints it.</param>
/// <param name="Source">Where the expected figure is printed, or how it was computed.</param>
public sealed record PublishedCase(string Id, string Quantity, string Source, JsonObject Inputs, JsonObject Expected, double? Tolerance)
{
    public double In(string key) => Inputs[key]!.GetValue<double>();

    public string Text(string key) => Inputs[key]!.GetValue<string>();

    public double[] List(string key) => [.. Inputs[key]!.AsArray().Select(v => v!.GetValue<double>())];

    /// <summary>Fails with id, source, expected, got and how far off when a figure misses its tolerance.</summary>
    public void Check(string key, double got, double? tolerance = null)
    {
        var expected = Expected[key]!.GetValue<double>();
        var limit = tolerance ?? Tolerance ?? throw new InvalidOperationException($"{Id} states no tolerance");
        // Zeros have no relative error: they are compared absolutely.
        var off = expected == 0 ? Math.Abs(got) : Math.Abs(got / expected - 1);
        Assert.True(off <= limit, $"{Id} ({Source}): {key} expected {expected:R}, got {got:R}, off by {off:E2}, allowed {limit:E1}");
    }
}

/// <summary>Reads the published check values beside the test program.</summary>
public static class PublishedCases
{
    public static IReadOnlyList<PublishedCase> Read(string file, string idPrefix)
    {
        var path = Path.Combine(AppContext.BaseDirectory, "Published", file + ".json");
        var cases = JsonNode.Parse(File.ReadAllText(path))!.AsArray()
            .Select(c => c!.AsObject())
            .Where(c => c["id"]!.GetValue<string>().StartsWith(idPrefix, StringComparison.Ordinal))
            .Select(c => new PublishedCase(
                c["id"]!.GetValue<string>(),
                c["quantity"]!.GetValue<string>(),
                c["source"]!.GetValue<string>(),
                c["inputs"]!.AsObject(),
                c["expected"]!.AsObject(),
                c["tolerance_relative"] is { } t && t.GetValueKind() == JsonValueKind.Number ? t.GetValue<double>() : null))
            .ToList();
        return cases.Count > 0 ? cases : throw new InvalidOperationException($"no case '{idPrefix}…' in {file}.json");
    }
}
