using System.Text;
using System.Text.Json;
using Portwright.Engine.Runs;

namespace Portwright.Store.Runs;

/// <summary>Operating points kept in a file beside the record, a line each, so that no engine is run twice.</summary>
/// <remarks>
/// Nothing in it is of the record: every line can be worked out again, so lines that do not read are passed over and the file may be deleted at any time. Several processes may add to it; each takes in what the others
/// added. It is begun anew when it has grown past <see cref="MostBytes"/>.
/// </remarks>
public sealed class KeptRuns : IKeptPoints
{
    private const long MostBytes = 64 * 1024 * 1024;

    private readonly Lock gate = new();
    private readonly Dictionary<string, OperatingPoint> points = [];
    private readonly string path;
    private long read;

    /// <param name="folder">The record's folder; null keeps points in memory alone.</param>
    public KeptRuns(string? folder)
    {
        path = folder is null ? "" : Path.Combine(folder, "engine-runs.jsonl");
        if (path.Length > 0 && File.Exists(path) && new FileInfo(path).Length > MostBytes) File.Delete(path);
        TakeIn();
        EndTornLine();
    }

    public OperatingPoint? Find(string key)
    {
        lock (gate)
        {
            return points.GetValueOrDefault(key);
        }
    }

    public void Keep(string key, OperatingPoint point)
    {
        lock (gate)
        {
            points[key] = point;
            if (path.Length == 0) return;
            var line = Encoding.UTF8.GetBytes(JsonSerializer.Serialize(new Line(key, point)) + "\n");
            try
            {
                using var file = new FileStream(path, FileMode.Append, FileAccess.Write, FileShare.ReadWrite);
                file.Write(line);
            }
            catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
            {
                // It is known to this process; the next one works it out again.
            }
        }
    }

    /// <summary>Takes in what others have added since.</summary>
    public void TakeIn()
    {
        lock (gate)
        {
            if (path.Length == 0 || !File.Exists(path)) return;
            using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            if (file.Length < read) read = 0;
            file.Position = read;
            var bytes = new byte[file.Length - read];
            var got = file.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
            // Behind the last end of a line somebody may be writing still.
            var whole = bytes.AsSpan(0, got).LastIndexOf((byte)'\n') + 1;
            foreach (var text in Encoding.UTF8.GetString(bytes, 0, whole).Split('\n', StringSplitOptions.RemoveEmptyEntries))
            {
                if (Parse(text) is { Key.Length: > 0, Point: not null } line) points[line.Key] = line.Point;
            }

            read += whole;
        }
    }

    /// <summary>A line a process died in would spoil the one written behind it.</summary>
    private void EndTornLine()
    {
        try
        {
            if (path.Length == 0 || !File.Exists(path) || new FileInfo(path).Length == read) return;
            using var file = new FileStream(path, FileMode.Append, FileAccess.Write, FileShare.ReadWrite);
            file.WriteByte((byte)'\n');
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // Nothing is lost but the next line.
        }
    }

    private static Line? Parse(string text)
    {
        try
        {
            return JsonSerializer.Deserialize<Line>(text) is { Key: not null, Point: not null } line ? line : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private sealed record Line(string Key, OperatingPoint Point);
}
