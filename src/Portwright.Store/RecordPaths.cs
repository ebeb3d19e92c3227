namespace Portwright.Store;

/// <summary>The names of the record's files in its folder.</summary>
internal sealed record RecordPaths(string Folder)
{
    /// <summary>The live record. Never opened but through SQLite while anybody has it open: closing a second handle to it drops SQLite's locks on Unix.</summary>
    public string Live => Path.Combine(Folder, "record.db");

    /// <summary>SQLite's write-ahead log of the live record: committed entries may be in it alone.</summary>
    public string LiveLog => Live + "-wal";

    public string Lock => Path.Combine(Folder, "record.lock");

    /// <summary>A copy being changed to a newer schema.</summary>
    public string Next => Path.Combine(Folder, "record.db.next");

    /// <summary>A backup being brought in.</summary>
    public string Incoming => Path.Combine(Folder, "record.db.incoming");

    /// <summary>The record as it was before the change to that schema.</summary>
    public string Before(int schema) => Path.Combine(Folder, $"record.before-{schema}.db");

    /// <summary>A free name for a record put aside.</summary>
    public string Aside(string why)
    {
        for (var n = 1; ; n++)
        {
            var path = Path.Combine(Folder, $"record.{why}-{n}.db");
            if (!File.Exists(path))
            {
                return path;
            }
        }
    }

    /// <summary>Removes what a killed change or restore left unfinished. Only while the record's lock is held, shared or alone.</summary>
    public void ClearLeftovers()
    {
        foreach (var unfinished in new[] { Next, Incoming })
        {
            DurableFile.DeleteDatabase(unfinished);
        }

        // Only names that are written while the lock is held alone: somebody may be making a backup in this folder.
        foreach (var part in Directory.EnumerateFiles(Folder, "record.before-*.part"))
        {
            File.Delete(part);
        }
    }
}
