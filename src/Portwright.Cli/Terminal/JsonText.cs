using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Portwright.Physics.Uncertainty;

namespace Portwright.Cli.Terminal;

/// <summary>JSON for other programs: indented, full precision, letters as they are.</summary>
internal static class JsonText
{
    private static readonly JsonWriterOptions Options = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, NewLine = "\n" };

    public static void Write(TextWriter writer, Action<Utf8JsonWriter> write)
    {
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer, Options))
        {
            write(json);
        }
        writer.WriteLine(Encoding.UTF8.GetString(buffer.GetBuffer(), 0, (int)buffer.Length));
    }

    /// <summary>Value, standard uncertainty and expanded uncertainty, the unit in each key.</summary>
    public static void Estimate(this Utf8JsonWriter json, string key, string unit, Estimate estimate)
    {
        var full = unit.Length == 0 ? key : $"{key}_{unit}";
        json.Number(full, estimate.Value);
        json.Number("standard_uncertainty_" + full, estimate.StandardUncertainty);
        json.Number("expanded_uncertainty_95_" + full, estimate.Expanded());
    }

    /// <summary>A number, or null where there is none: JSON has no NaN and no infinity.</summary>
    public static void Number(this Utf8JsonWriter json, string key, double value)
    {
        if (double.IsFinite(value)) json.WriteNumber(key, value);
        else json.WriteNull(key);
    }
}
