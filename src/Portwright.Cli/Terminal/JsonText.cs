using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

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

    /// <summary>A number, or null where there is none: JSON has no NaN and no infinity.</summary>
    public static void Number(this Utf8JsonWriter json, string key, double value)
    {
        if (double.IsFinite(value)) json.WriteNumber(key, value);
        else json.WriteNull(key);
    }
}
