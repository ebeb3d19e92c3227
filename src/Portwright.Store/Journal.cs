using Microsoft.Data.Sqlite;
using Portwright.Shop.Record;

namespace Portwright.Store;

/// <summary>
/// The record of a shop: one journal of entries that only grows, in one SQLite file. Safe to use from many threads: one writes at a
/// time, reading never waits for writing. Several processes may have the same record open.
/// </summary>
public sealed partial class Journal : IDisposable
{
    private readonly RecordPaths _paths;
    private readonly FolderLock _lock;
    private readonly SqliteConnection _writer;
    private readonly Lock _writing = new();
    private long _versionSeen;

    private Journal(RecordPaths paths, FolderLock held, SqliteConnection writer)
    {
        _paths = paths;
        _lock = held;
        _writer = writer;
        _versionSeen = Database.Number(writer, "PRAGMA data_version");
    }

    /// <summary>
    /// Raised after entries are safely saved through this journal, once for each job concerned (null: entries of the shop). Raised on
    /// the thread that saved; what a listener throws is dropped, because the entry is saved whatever a page makes of it.
    /// </summary>
    public event Action<Guid?>? Changed;

    /// <summary>The file on the disk. Never to be opened, copied or hashed as a file while anybody has the record open.</summary>
    public string File => _paths.Live;

    internal SqliteConnection Writer => _writer;

    /// <summary>
    /// Opens the record in a folder, makes both where they are missing, and brings an older record to today's form on a copy, keeping
    /// the old one as <c>record.before-N.db</c>.
    /// </summary>
    /// <param name="points">Told how far a schema change has come, on this thread.</param>
    /// <exception cref="RecordProblem">
    /// The file is not a record, is from a newer Portwright, is damaged, cannot be written, or is just being exchanged by another process.
    /// </exception>
    public static Journal Open(string dataFolder, IProgress<SchemaPoint>? points = null) => Open(dataFolder, Schema.Today, points);

    internal static Journal Open(string dataFolder, Schema schema, IProgress<SchemaPoint>? points = null, int patience = Database.Patience)
    {
        var paths = new RecordPaths(DataFolder.Make(dataFolder));
        SqliteConnection? writer = null;
        FolderLock? held = null;
        try
        {
            held = ShareCurrent(paths, schema, points);
            // Nobody exchanges the file while the lock is shared, so what is unfinished now was left by a process that was killed.
            paths.ClearLeftovers();
            writer = Database.Open(paths.Live, patience: patience);
            if (Database.Text(writer, "PRAGMA journal_mode = WAL") != "wal")
            {
                throw new RecordProblem(
                    RecordProblemKind.CannotOpen,
                    $"The disk of {paths.Folder} does not let several programs share a file safely.",
                    "Keep the record on a disk of this machine, not on a network folder: --data DIR.");
            }

            return new Journal(paths, held, writer);
        }
        catch (Exception error) when (error is SqliteException or IOException or UnauthorizedAccessException or RecordProblem)
        {
            writer?.Dispose();
            held?.Dispose();
            if (error is RecordProblem)
            {
                throw;
            }

            throw RecordProblem.From(error, paths.Live);
        }
    }

    /// <summary>Saves one entry: on the disk before this returns.</summary>
    /// <returns>False when the same entry was saved before and nothing had to be done.</returns>
    /// <exception cref="RecordProblem">It could not be saved; or another entry has its number, or it corrects an entry that is not there.</exception>
    public bool Append(Entry entry) => Append([entry]) == 1;

    /// <summary>Saves all of them or none: on the disk before this returns. Entries saved before are passed over.</summary>
    /// <returns>How many were new.</returns>
    /// <exception cref="RecordProblem">As for one entry; nothing was saved.</exception>
    public int Append(IReadOnlyList<Entry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        var stored = entries.Select(StoredEntry.Of).ToList();
        var added = 0;
        lock (_writing)
        {
            try
            {
                using var all = _writer.BeginTransaction();
                using var insert = Insertion(all);
                foreach (var entry in stored)
                {
                    added += Insert(insert, entry, all);
                }

                all.Commit();
            }
            catch (SqliteException error) when (error.SqliteExtendedErrorCode == 787)
            {
                throw new RecordProblem(
                    RecordProblemKind.Refused,
                    "An entry corrects one that the record does not have; nothing was saved.",
                    "Save the entry it corrects first, or import the whole job.",
                    error);
            }
            catch (SqliteException error)
            {
                throw RecordProblem.From(error, _paths.Live);
            }
        }

        if (added > 0)
        {
            Tell(entries.Select(e => e.Job).Distinct());
        }

        return added;
    }

    /// <summary>
    /// True where another process has saved something since this was last asked (or since opening): <see cref="Changed"/> does not
    /// tell of those. Cheap enough to ask every second.
    /// </summary>
    public bool ChangedElsewhere()
    {
        lock (_writing)
        {
            // SQLite counts, for each connection, the commits of all others.
            var version = Database.Number(_writer, "PRAGMA data_version");
            var changed = version != _versionSeen;
            _versionSeen = version;
            return changed;
        }
    }

    public void Dispose()
    {
        lock (_writing)
        {
            // Pooled readers keep the file open, which on Windows would stop it from being moved.
            using (var reader = new SqliteConnection(ReaderString))
            {
                SqliteConnection.ClearPool(reader);
            }

            _writer.Dispose();
            _lock.Dispose();
        }
    }

    private static FolderLock ShareCurrent(RecordPaths paths, Schema schema, IProgress<SchemaPoint>? points)
    {
        var patience = TimeSpan.FromSeconds(10);
        var waited = System.Diagnostics.Stopwatch.StartNew();
        while (true)
        {
            var shared = FolderLock.Share(paths, patience);
            try
            {
                if (IsCurrent(paths, schema))
                {
                    return shared;
                }
            }
            catch
            {
                shared.Dispose();
                throw;
            }

            shared.Dispose();
            using (var alone = FolderLock.TryAlone(paths))
            {
                // Another process may have made the change in between: look again with nobody else about.
                if (alone is not null && !IsCurrent(paths, schema))
                {
                    SchemaChange.Run(paths, schema, points);
                }
            }

            if (waited.Elapsed > patience)
            {
                throw new RecordProblem(
                    RecordProblemKind.InUse,
                    $"The record in {paths.Folder} must be brought to this Portwright's form, and another Portwright has it open.",
                    "Close the other one, then start again.");
            }

            Thread.Sleep(10);
        }
    }

    private static bool IsCurrent(RecordPaths paths, Schema schema)
    {
        if (System.IO.File.Exists(paths.Live))
        {
            return RecordFile.SchemaOf(paths.Live, schema) == schema.Version;
        }

        if (Directory.Exists(paths.Live))
        {
            throw new RecordProblem(
                RecordProblemKind.CannotOpen,
                $"{paths.Live} is a folder; the record would be a file of that name.",
                "Move that folder away, or choose another place with --data DIR.");
        }

        if (new FileInfo(paths.LiveLog) is { Exists: true, Length: > 0 })
        {
            throw new RecordProblem(
                RecordProblemKind.Damaged,
                $"The record {paths.Live} is gone, and its log {paths.LiveLog} is still there. Nothing was changed.",
                "Put record.db back beside its log, or move the log away and restore the latest backup: portwright restore FILE.");
        }

        return false;
    }

    private SqliteCommand Insertion(SqliteTransaction transaction)
    {
        var insert = _writer.CreateCommand();
        insert.Transaction = transaction;
        insert.CommandText = """
            INSERT INTO entries (number, subject, job, at, hand, source, kind, replaces, reason, body, hash)
            VALUES ($number, $subject, $job, $at, $hand, $source, $kind, $replaces, $reason, $body, $hash)
            ON CONFLICT (number) DO NOTHING
            """;
        return insert;
    }

    private int Insert(SqliteCommand insert, StoredEntry entry, SqliteTransaction transaction)
    {
        insert.Parameters.Clear();
        insert.Parameters.AddWithValue("$number", entry.Number);
        insert.Parameters.AddWithValue("$subject", entry.Subject);
        insert.Parameters.AddWithValue("$job", (object?)entry.Job ?? DBNull.Value);
        insert.Parameters.AddWithValue("$at", entry.At);
        insert.Parameters.AddWithValue("$hand", entry.Hand);
        insert.Parameters.AddWithValue("$source", entry.Source);
        insert.Parameters.AddWithValue("$kind", entry.Kind);
        insert.Parameters.AddWithValue("$replaces", (object?)entry.Replaces ?? DBNull.Value);
        insert.Parameters.AddWithValue("$reason", (object?)entry.Reason ?? DBNull.Value);
        insert.Parameters.AddWithValue("$body", entry.Body);
        insert.Parameters.AddWithValue("$hash", entry.Hash);
        if (insert.ExecuteNonQuery() == 1)
        {
            return 1;
        }

        using var same = _writer.CreateCommand();
        same.Transaction = transaction;
        same.CommandText = EntryReading.Query("WHERE number = $number");
        same.Parameters.AddWithValue("$number", entry.Number);
        using var row = same.ExecuteReader();
        if (row.Read() && entry.SaysTheSameAs(StoredEntry.Read(row)))
        {
            return 0;
        }

        throw new RecordProblem(
            RecordProblemKind.Refused,
            $"The record has entry {entry.Number} already, and it says something else; nothing was saved.",
            "To change what it says, save a correction; to bring in a changed file, give its entries new numbers.");
    }

    private void Tell(IEnumerable<Guid?> jobs)
    {
        if (Changed is not { } changed)
        {
            return;
        }

        foreach (var job in jobs)
        {
            foreach (var listener in changed.GetInvocationList().Cast<Action<Guid?>>())
            {
                try
                {
                    listener(job);
                }
#pragma warning disable CA1031 // Saying "not saved" of an entry that is saved would be the worse fault.
                catch (Exception)
#pragma warning restore CA1031
                {
                }
            }
        }
    }
}
