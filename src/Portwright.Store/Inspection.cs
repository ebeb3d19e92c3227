using Microsoft.Data.Sqlite;

namespace Portwright.Store;

/// <summary>Looks through a whole record: SQLite's own check, then every hash, because SQLite does not notice a changed byte inside a value.</summary>
internal static class Inspection
{
    public static RecordHealth Of(SqliteConnection connection)
    {
        var faults = new List<string>();
        var unreadable = new List<UnreadableEntry>();
        var damagedPictures = new List<string>();
        var missingPictures = new List<string>();
        long entries = 0, attachments = 0;
        Try(() => faults.AddRange(Database.Lines(connection, "PRAGMA integrity_check").Where(l => l != "ok")));
        Try(() =>
        {
            var there = Database.Lines(connection, "SELECT name FROM sqlite_schema");
            faults.AddRange(Schema.Parts.Except(there).Select(p => $"The record lacks its part {p}."));
        });
        Try(() => faults.AddRange(Database.Lines(connection, "SELECT DISTINCT \"table\" FROM pragma_foreign_key_check")
            .Select(t => $"In {t} a correction points at an entry that is not there.")));
        Try(() =>
        {
            entries = Database.Number(connection, "SELECT count(*) FROM entries");
            var last = Database.Number(connection, "SELECT coalesce(max(sequence), 0) FROM entries");
            if (last != entries)
            {
                faults.Add(FormattableString.Invariant($"{last - entries} of {last} entries are gone."));
            }
        });
        Try(() => unreadable.AddRange(EntryReading.All(connection, "ORDER BY sequence").Unreadable));
        Try(() => attachments = LookAtPictures(connection, damagedPictures));
        Try(() => missingPictures.AddRange(Database.Lines(connection, """
            SELECT DISTINCT body ->> 'content' FROM entries
            WHERE kind = 'photo' AND body ->> 'content' NOT IN (SELECT content FROM attachments)
            """)));
        return new RecordHealth(entries, attachments, [.. faults.Distinct()], unreadable, damagedPictures, missingPictures);

        // A damaged page stops one look and not the others.
        void Try(Action look)
        {
            try
            {
                look();
            }
            catch (SqliteException error)
            {
                faults.Add(RecordProblem.From(error, connection.DataSource).Message);
            }
            catch (InvalidCastException)
            {
                faults.Add("A field of the record is of another kind than it was saved as.");
            }
        }
    }

    private static long LookAtPictures(SqliteConnection connection, List<string> damaged)
    {
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT content, media_type, bytes FROM attachments";
        using var rows = command.ExecuteReader();
        long count = 0;
        while (rows.Read())
        {
            count++;
            var bytes = rows.GetFieldValue<byte[]>(2);
            if (Attachment.ContentOf(bytes) != rows.GetString(0) || Attachment.MediaTypeOf(bytes) != rows.GetString(1))
            {
                damaged.Add(rows.GetString(0));
            }
        }

        return count;
    }
}
