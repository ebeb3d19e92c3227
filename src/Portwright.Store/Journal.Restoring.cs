using Microsoft.Data.Sqlite;

namespace Portwright.Store;

/// <summary>A record that was brought back.</summary>
/// <param name="Health">What the check of the backup found.</param>
/// <param name="KeptOld">Where the record that was there before is kept; null where there was none.</param>
public sealed record RestoreResult(RecordHealth Health, string? KeptOld);

/// <summary>How far a restore has come.</summary>
internal enum RestoreStage
{
    Copied,
    Verified,
    OldKept,
    Replaced,
}

public sealed partial class Journal
{
    /// <summary>
    /// Looks through a record's file that nobody has open: a backup, before it is trusted.
    /// </summary>
    /// <exception cref="RecordProblem">It is not a record, or from a newer Portwright, or cannot be read.</exception>
    public static RecordHealth CheckFile(string file)
    {
        var path = Path.GetFullPath(file);
        MustBeOneFile(path);
        try
        {
            using var connection = Database.Open(path, SqliteOpenMode.ReadOnly);
            RecordFile.SchemaOf(connection, path, Schema.Today);
            return Inspection.Of(connection);
        }
        catch (SqliteException error)
        {
            throw RecordProblem.From(error, path);
        }
    }

    /// <summary>
    /// Puts a backup in the record's place. It is copied into the folder and checked there first; the record that was there is kept as
    /// <c>record.before-restore-N.db</c>. Killed at any moment, the folder holds either the old record or the backup, whole.
    /// </summary>
    /// <param name="evenIfDamaged">Restores a backup that is not sound, as far as it can be opened at all: the best there is, where no better is left.</param>
    /// <exception cref="RecordProblem">The backup cannot be used, or a Portwright has the record open; the record is as it was.</exception>
    public static RestoreResult Restore(string backupFile, string dataFolder, bool evenIfDamaged = false) =>
        Restore(backupFile, dataFolder, evenIfDamaged, stages: null);

    internal static RestoreResult Restore(string backupFile, string dataFolder, bool evenIfDamaged, Action<RestoreStage>? stages)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(backupFile);
        var backup = Path.GetFullPath(backupFile);
        MustBeOneFile(backup);
        var paths = new RecordPaths(DataFolder.Make(dataFolder));
        using var alone = FolderLock.TryAlone(paths) ?? throw new RecordProblem(
            RecordProblemKind.InUse,
            $"A Portwright has the record in {paths.Folder} open; it was left as it is.",
            "Close the workbench, then restore again.");
        try
        {
            paths.ClearLeftovers();
            DurableFile.CopyBytes(backup, paths.Incoming);
            stages?.Invoke(RestoreStage.Copied);
            // What is checked is the copy, so that what is checked is what is used.
            var health = CheckIncoming(paths.Incoming, backup, evenIfDamaged);
            DurableFile.Flush(paths.Incoming);
            stages?.Invoke(RestoreStage.Verified);
            var kept = KeepLive(paths);
            stages?.Invoke(RestoreStage.OldKept);
            DurableFile.Rename(paths.Incoming, paths.Live, replace: true);
            stages?.Invoke(RestoreStage.Replaced);
            return new RestoreResult(health, kept);
        }
        catch (Exception error) when (error is SqliteException or IOException or UnauthorizedAccessException or RecordProblem)
        {
            DeletePart(paths.Incoming);
            if (error is RecordProblem)
            {
                throw;
            }

            throw RecordProblem.From(error, paths.Live);
        }
    }

    private static void MustBeOneFile(string file)
    {
        if (!System.IO.File.Exists(file))
        {
            throw new RecordProblem(RecordProblemKind.CannotOpen, $"There is no file {file}.", "Check the name of the backup.");
        }

        if (new FileInfo(file).Length == 0)
        {
            throw new RecordProblem(RecordProblemKind.Damaged, $"The file {file} is empty.", "Choose another backup.");
        }

        if (new FileInfo(file + "-wal") is { Exists: true, Length: > 0 })
        {
            throw new RecordProblem(
                RecordProblemKind.Refused,
                $"{file} is a record in use and not a backup: entries may be in its log alone.",
                "Make a backup of it first: portwright backup FILE.");
        }
    }

    private static RecordHealth CheckIncoming(string incoming, string backup, bool evenIfDamaged)
    {
        using var connection = Database.Open(incoming);
        RecordHealth health;
        try
        {
            RecordFile.SchemaOf(connection, backup, Schema.Today);
            Database.MakeOneFile(connection);
            health = Inspection.Of(connection);
        }
        catch (SqliteException error)
        {
            throw RecordProblem.From(error, backup);
        }

        if (!health.IsSound && !evenIfDamaged)
        {
            throw new RecordProblem(
                RecordProblemKind.Damaged,
                $"In the backup {backup} not everything is as it was saved; the record was left as it is. {string.Join(" ", health.Words.Take(3))}",
                "Choose another backup, or restore this one all the same with --even-if-damaged.");
        }

        return health;
    }

    private static string? KeepLive(RecordPaths paths)
    {
        if (!System.IO.File.Exists(paths.Live))
        {
            DurableFile.DeleteDatabase(paths.Live);
            return null;
        }

        try
        {
            using var live = Database.Open(paths.Live);
            Database.MakeOneFile(live);
        }
        catch (SqliteException error) when (error.SqliteErrorCode is 10 or 11 or 26)
        {
            // Too damaged for SQLite: kept byte for byte with its log, for whoever may rescue something from it.
        }

        var kept = paths.Aside("before-restore");
        if (System.IO.File.Exists(paths.LiveLog))
        {
            DurableFile.Copy(paths.LiveLog, kept + "-wal");
        }

        DurableFile.Copy(paths.Live, kept);
        // A log of the old record must never meet the new one.
        System.IO.File.Delete(paths.LiveLog);
        System.IO.File.Delete(paths.Live + "-shm");
        return kept;
    }
}
