using Microsoft.Data.Sqlite;

namespace Portwright.Store;

/// <summary>
/// Brings a record to today's schema on a copy that takes the record's place only when it is finished, checked and on the disk. Killed
/// at any moment, either the old record or the new one is there whole, and the next start clears up and goes on. Making a new record is
/// the same change, from nothing.
/// </summary>
internal static class SchemaChange
{
    /// <summary>Runs the missing steps. The caller holds the record's lock alone.</summary>
    public static void Run(RecordPaths paths, Schema schema, IProgress<SchemaPoint>? points)
    {
        paths.ClearLeftovers();
        var from = File.Exists(paths.Live) ? RecordFile.SchemaOf(paths.Live, schema) : 0;
        var reached = from;
        Report(SchemaStage.Cleared);

        var before = RecordContents.Empty;
        if (from > 0)
        {
            using var live = Database.Open(paths.Live);
            Database.MakeOneFile(live);
            before = RecordContents.Of(live);
            CopyInto(live, paths.Next);
        }

        Report(SchemaStage.Copied);
        using (var next = Database.Open(paths.Next, SqliteOpenMode.ReadWriteCreate))
        {
            // A step may rebuild a table; what refers to what is checked as a whole afterwards.
            Database.Execute(next, "PRAGMA foreign_keys = OFF");
            foreach (var step in schema.Steps.Where(s => s.Version > from))
            {
                using var all = next.BeginTransaction();
                Database.Execute(next, step.Sql);
                Database.Execute(next, $"PRAGMA application_id = {Schema.ApplicationId}; PRAGMA user_version = {step.Version}");
                all.Commit();
                reached = step.Version;
                Report(SchemaStage.Stepped);
            }

            Verify(next, before, paths);
        }

        Report(SchemaStage.Verified);
        DurableFile.Flush(paths.Next);
        Report(SchemaStage.Flushed);
        if (from > 0)
        {
            KeepOld(paths, reached);
        }

        Report(SchemaStage.OldKept);
        // MakeOneFile left no log; one that is there all the same belongs to the old file and must not meet the new one.
        if (File.Exists(paths.LiveLog))
        {
            throw new RecordProblem(
                RecordProblemKind.InUse,
                $"Another program has opened the record in {paths.Folder} while it was being changed.",
                "Close it, then start Portwright again.");
        }

        DurableFile.Rename(paths.Next, paths.Live, replace: true);
        Report(SchemaStage.Replaced);

        void Report(SchemaStage stage) => points?.Report(new SchemaPoint(stage, from, reached));
    }

    /// <summary>A compact copy of one moment of an open database. The target must not exist.</summary>
    public static void CopyInto(SqliteConnection source, string target)
    {
        using var copy = source.CreateCommand();
        copy.CommandText = "VACUUM INTO $target";
        copy.CommandTimeout = 0;
        copy.Parameters.AddWithValue("$target", target);
        copy.ExecuteNonQuery();
    }

    private static void Verify(SqliteConnection next, RecordContents before, RecordPaths paths)
    {
        var complaints = Database.Lines(next, "PRAGMA integrity_check").Where(l => l != "ok")
            .Concat(Database.Lines(next, "PRAGMA foreign_key_check"))
            .ToList();
        if (complaints.Count == 0 && RecordContents.Of(next) == before)
        {
            return;
        }

        throw new RecordProblem(
            RecordProblemKind.Damaged,
            $"The record in {paths.Folder} could not be brought to this Portwright's form; it was left as it was. {string.Join("; ", complaints.Take(3))}",
            RecordProblem.RestoreCure);
    }

    private static void KeepOld(RecordPaths paths, int reached)
    {
        var kept = paths.Before(reached);
        if (!File.Exists(kept))
        {
            DurableFile.Copy(paths.Live, kept);
        }
        else if (!DurableFile.SameBytes(paths.Live, kept))
        {
            // Kept by an earlier change, before an older backup was restored: both are worth keeping.
            DurableFile.Copy(paths.Live, paths.Aside($"before-{reached}"));
        }
    }
}
