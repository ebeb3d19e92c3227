namespace Portwright.Store.Tests;

/// <summary>A folder of its own for one test, removed afterwards.</summary>
public sealed class TemporaryFolder : IDisposable
{
    public TemporaryFolder() => Path = Directory.CreateTempSubdirectory("portwright-").FullName;

    public string Path { get; }

    public string Record => File("record.db");

    public string File(string name) => System.IO.Path.Combine(Path, name);

    /// <summary>Names of the files there are, without the lock.</summary>
    public IReadOnlyList<string> Files() =>
        [.. Directory.GetFiles(Path).Select(f => System.IO.Path.GetFileName(f)).Where(f => f != "record.lock").Order(StringComparer.Ordinal)];

    public void Dispose()
    {
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(Path, recursive: true);
    }
}
