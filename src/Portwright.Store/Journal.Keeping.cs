using Microsoft.Data.Sqlite;

namespace Portwright.Store;

/// <summary>Looking after the record: checking, backing up.</summary>
public sealed partial class Journal
{
    /// <summary>Looks through the whole record: SQLite's integrity check, every entry's hash, every picture. Reading and saving go on meanwhile.</summary>
    public RecordHealth Check() => Reading(connection =>
    {
        using var moment = connection.BeginTransaction(deferred: true);
        return Inspection.Of(connection);
    });

    /// <summary>
    /// Writes a compact copy of the record as it is at this moment, opens it, checks every entry in it against the record, and only
    /// then gives it its name. Saving goes on meanwhile.
    /// </summary>
    /// <param name="toFile">A file that does not exist yet, in a folder that does. While it is being made it is called the same with <c>.part</c> behind.</param>
    /// <returns>What was written. A record that is not sound is backed up as it is, as far as it can be read: look at <see cref="BackupResult.Health"/>.</returns>
    /// <exception cref="RecordProblem">The file exists, cannot be written, or did not come out as the record is; no file is left.</exception>
    public BackupResult Backup(string toFile) => Backup(toFile, written: null);

    /// <param name="written">Called with the unchecked file; a test damages it there.</param>
    internal BackupResult Backup(string toFile, Action<string>? written)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(toFile);
        var target = Path.GetFullPath(toFile);
        var part = target + ".part";
        if (System.IO.File.Exists(target) || Directory.Exists(target))
        {
            throw new RecordProblem(
                RecordProblemKind.Refused, $"{target} exists already; it was left as it is.", "Give the backup another name, with the date in it.");
        }

        if (!Directory.Exists(Path.GetDirectoryName(target)))
        {
            throw new RecordProblem(
                RecordProblemKind.CannotOpen, $"The folder of {target} does not exist.", "Make it first, or choose another.");
        }

        try
        {
            DurableFile.DeleteDatabase(part);
            RecordContents before;
            long through;
            using (var live = Database.Open(_paths.Live))
            {
                through = Database.Number(live, "SELECT coalesce(max(sequence), 0) FROM entries");
                before = RecordContents.Of(live, through);
                SchemaChange.CopyInto(live, part);
            }

            written?.Invoke(part);
            var health = VerifyBackup(part, before, through);
            DurableFile.Flush(part);
            DurableFile.Rename(part, target, replace: false);
            return new BackupResult(target, new FileInfo(target).Length, DurableFile.Fingerprint(target), health);
        }
        catch (Exception error) when (error is SqliteException or IOException or UnauthorizedAccessException or RecordProblem)
        {
            DeletePart(part);
            if (error is RecordProblem)
            {
                throw;
            }

            throw RecordProblem.From(error, part);
        }
    }

    private RecordHealth VerifyBackup(string part, RecordContents before, long through)
    {
        using var copy = Database.Open(part);
        RecordFile.SchemaOf(copy, part, Schema.Today);
        var health = Inspection.Of(copy);
        // Entries saved while the copy was made may be in it; every one from before must be, with its hash.
        var then = RecordContents.Of(copy, through);
        var news = health.Faults.Count == 0 ? [] : health.Faults.Except(Check().Faults).ToList();
        if (news.Count > 0 || then.Digest != before.Digest || then.Attachments < before.Attachments)
        {
            throw new RecordProblem(
                RecordProblemKind.Damaged,
                $"The backup {part} did not come out as the record is, so it was removed. {string.Join(" ", news.Take(3))}",
                "Make the backup on another disk. If it fails there too, restore the latest good one.");
        }

        return health;
    }

    private static void DeletePart(string part)
    {
        try
        {
            DurableFile.DeleteDatabase(part);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            // The first problem is the one worth telling; a later backup to the same name removes the part.
        }
    }
}

/// <summary>A backup that was written, opened and checked.</summary>
/// <param name="Size">Bytes.</param>
/// <param name="Fingerprint">SHA-256 of the file, lower-case hexadecimal, to compare a copy of it with.</param>
/// <param name="Health">What the check of the written file found.</param>
public sealed record BackupResult(string File, long Size, string Fingerprint, RecordHealth Health);
