using System.Globalization;
using System.Text.Json;
using Portwright.Shop.Record;

namespace Portwright.Store.Export;

/// <summary>Writes a job document as JSON, and reads it back under limits.</summary>
public static class JobDocumentFile
{
    /// <summary>The largest file read, bytes.</summary>
    public const int LargestFile = 256 * 1024 * 1024;

    /// <summary>The most entries read.</summary>
    public const int MostEntries = 200_000;

    private const int Deepest = 32;

    /// <summary>The file's bytes: UTF-8 without a byte-order mark, indented.</summary>
    public static byte[] Write(JobDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes, new JsonWriterOptions { Indented = true, NewLine = "\n", MaxDepth = Deepest }))
        {
            json.WriteStartObject();
            json.WriteString("format", JobDocument.FormatName);
            json.WriteNumber("version", JobDocument.FormatVersion);
            json.WriteStartArray("entries");
            foreach (var entry in document.Entries) JsonSerializer.Serialize(json, entry, RecordJson.Default.Entry);
            json.WriteEndArray();
            json.WriteStartArray("pictures");
            foreach (var picture in document.Pictures)
            {
                json.WriteStartObject();
                json.WriteString("content", picture.Content);
                json.WriteString("mediaType", picture.MediaType);
                json.WriteBase64String("bytes", picture.Bytes);
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteEndObject();
        }
        return bytes.ToArray();
    }

    /// <summary>Reads a document; on failure <paramref name="problem"/> says in a sentence what is wrong. Nothing of a file is taken unless all of it is sound.</summary>
    public static bool TryRead(byte[] bytes, string fileName, out JobDocument document, out string problem)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        ArgumentNullException.ThrowIfNull(fileName);
        document = null!;
        var name = Import.TableFile.ShownName(fileName);
        problem = Problem(bytes, name, out var read);
        if (read is null) return false;
        document = read;
        return true;
    }

    private static string Problem(byte[] bytes, string name, out JobDocument? document)
    {
        document = null;
        if (bytes.Length == 0) return $"{name} is empty. Export the job again.";
        if (bytes.Length > LargestFile) return $"{name} is larger than {LargestFile / (1024 * 1024)} MB, more than is read here.";
        ReadOnlyMemory<byte> content = bytes.AsMemory(bytes.AsSpan().StartsWith("\uFEFF"u8) ? 3 : 0);
        try
        {
            using var json = JsonDocument.Parse(content, new JsonDocumentOptions { MaxDepth = Deepest });
            var root = json.RootElement;
            if (root.ValueKind != JsonValueKind.Object || !root.TryGetProperty("format", out var format) || format.ValueKind != JsonValueKind.String || format.GetString() != JobDocument.FormatName)
                return $"{name} is not a Portwright job. Choose a file that Portwright exported as JSON.";
            if (!root.TryGetProperty("version", out var version) || version.ValueKind != JsonValueKind.Number || !version.TryGetInt32(out var number) || number < 1)
                return $"{name} does not say its version. Export the job again.";
            if (number > JobDocument.FormatVersion)
                return $"{name} was written by a newer Portwright (version {number.ToString(CultureInfo.InvariantCulture)} of the format; this one reads up to {JobDocument.FormatVersion}). Bring Portwright up to date and import it again.";
            if (!root.TryGetProperty("entries", out var list) || list.ValueKind != JsonValueKind.Array || list.GetArrayLength() == 0)
                return $"{name} holds no entries. Export the job again.";
            if (list.GetArrayLength() > MostEntries) return $"{name} holds more than {MostEntries} entries, more than are read here.";
            if (Entries(list, name, out var entries) is { } badEntry) return badEntry;
            if (Pictures(root, name, out var pictures) is { } badPicture) return badPicture;
            document = new JobDocument(entries, pictures);
            return "";
        }
        catch (JsonException e)
        {
            return e.LineNumber is { } line
                ? string.Create(CultureInfo.InvariantCulture, $"{name} is damaged or cut short: it cannot be read after line {line + 1}. Export the job again.")
                : $"{name} is damaged or cut short. Export the job again.";
        }
        // Text that is not UTF-8 is found only when it is read.
        catch (InvalidOperationException)
        {
            return $"{name} is damaged: a text in it is not UTF-8. Export the job again.";
        }
    }

    private static string? Entries(JsonElement list, string name, out List<Entry> entries)
    {
        entries = new List<Entry>(Math.Min(list.GetArrayLength(), 1024));
        var numbers = new HashSet<Guid>();
        foreach (var item in list.EnumerateArray())
        {
            var place = (entries.Count + 1).ToString(CultureInfo.InvariantCulture);
            try
            {
                var entry = item.Deserialize(RecordJson.Default.Entry);
                if (entry is null or { Fact: null }) return $"{name}, entry {place}: states nothing. Export the job again.";
                if (!numbers.Add(entry.Number)) return $"{name}, entry {place}: its number {entry.Number} is there twice. Export the job again.";
                entries.Add(entry);
            }
            // Serialisers and the records' own checks throw several kinds; each means the entry is not one this program knows.
            catch (Exception e) when (e is JsonException or NotSupportedException or ArgumentException or InvalidOperationException or FormatException or OverflowException)
            {
                return $"{name}, entry {place}: is damaged, or of a kind this Portwright does not know. Export the job again, or bring Portwright up to date.";
            }
        }
        return null;
    }

    private static string? Pictures(JsonElement root, string name, out List<Attachment> pictures)
    {
        pictures = [];
        if (!root.TryGetProperty("pictures", out var list)) return null;
        if (list.ValueKind != JsonValueKind.Array) return $"{name}: its pictures are damaged. Export the job again.";
        foreach (var item in list.EnumerateArray())
        {
            if (item.ValueKind != JsonValueKind.Object || Text(item, "content") is not { } content || Text(item, "mediaType") is not { } type
                || !item.TryGetProperty("bytes", out var base64) || base64.ValueKind != JsonValueKind.String || !base64.TryGetBytesFromBase64(out var bytes)
                || Attachment.ContentOf(bytes) != content || Attachment.MediaTypeOf(bytes) != type || bytes.Length > Attachment.LargestSize)
            {
                return $"{name}, picture {(pictures.Count + 1).ToString(CultureInfo.InvariantCulture)}: is damaged, or no picture or clip the record keeps, of at most 20 MB. Export the job again.";
            }

            pictures.Add(new Attachment(content, type, bytes));
        }
        return null;
    }

    private static string? Text(JsonElement item, string property) => item.TryGetProperty(property, out var value) && value.ValueKind == JsonValueKind.String ? value.GetString() : null;
}
