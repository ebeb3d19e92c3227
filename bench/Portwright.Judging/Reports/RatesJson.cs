using System.Text.Json;
using System.Text.Json.Serialization;
using Portwright.Judging.Trial;

namespace Portwright.Judging.Reports;

/// <summary>The rates as JSON.</summary>
public static class RatesJson
{
    private static readonly JsonSerializerOptions Form = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase) },
    };

    public static void Write(string file, Run run, Rates rates)
    {
        ArgumentNullException.ThrowIfNull(run);
        File.WriteAllText(file, JsonSerializer.Serialize(
            new { run.Extent.Seed, Heads = run.Healthy.Count, Faulty = run.Faulty.Count, Minutes = Math.Round(run.Took.TotalMinutes, 1), rates }, Form) + "\n");
    }
}
