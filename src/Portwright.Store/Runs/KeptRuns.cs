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

    /// <summary>Some two seconds: a line is written in far less.</summary>
    private const int MostTries = 1000;

    private readonly Lock _gate = new();
    private readonly Dictionary<string, OperatingPoint> _points = [];
    private readonly string _path;
    private long _read;

    /// <param name="folder">The record's folder; null keeps points in memory alone.</param>
    public KeptRuns(string? folder)
    {
        _path = folder is null ? "" : Path.Combine(folder, "engine-runs.jsonl");
        if (_path.Length > 0 && File.Exists(_path) && new FileInfo(_path).Length > MostBytes) File.Delete(_path);
        TakeIn();
        EndTornLine();
    }

    public OperatingPoint? Find(string key)
    {
        lock (_gate)
        {
            return _points.GetValueOrDefault(key);
        }
    }

    public void Keep(string key, OperatingPoint point)
    {
        lock (_gate)
        {
            _points[key] = point;
            if (_path.Length == 0) return;
            var line = Encoding.UTF8.GetBytes(JsonSerializer.Serialize(new Line(key, point)) + "\n");
            try
            {
                // Alone: two that append at once find the same end and write over each other.
                using var file = Open(FileMode.Append, FileAccess.Write, FileShare.None);
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
        lock (_gate)
        {
            if (_path.Length == 0 || !File.Exists(_path)) return;
            try
            {
                ReadOn();
            }
            catch (IOException)
            {
                // Another has the file for long: what it added is taken in the next time.
            }
        }
    }

    private void ReadOn()
    {
        using var file = Open(FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        if (file.Length < _read) _read = 0;
        file.Position = _read;
        var bytes = new byte[file.Length - _read];
        var got = file.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
        // Behind the last end of a line somebody may be writing still.
        var whole = bytes.AsSpan(0, got).LastIndexOf((byte)'\n') + 1;
        foreach (var text in Encoding.UTF8.GetString(bytes, 0, whole).Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            if (Parse(text) is { Key.Length: > 0, Point: not null } line) _points[line.Key] = line.Point;
        }

        _read += whole;
    }

    /// <summary>A line a process died in would spoil the one written behind it.</summary>
    private void EndTornLine()
    {
        try
        {
            if (_path.Length == 0 || !File.Exists(_path) || new FileInfo(_path).Length == _read) return;
            using var file = Open(FileMode.Append, FileAccess.Write, FileShare.None);
            file.WriteByte((byte)'\n');
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // Nothing is lost but the next line.
        }
    }

    /// <summary>Waits a moment for another who has the file.</summary>
    private FileStream Open(FileMode mode, FileAccess access, FileShare share)
    {
        for (var tries = 0; ; tries++)
        {
            try
            {
                return new FileStream(_path, mode, access, share);
            }
            catch (IOException) when (tries < MostTries && File.Exists(_path))
            {
                Thread.Sleep(2);
            }
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
