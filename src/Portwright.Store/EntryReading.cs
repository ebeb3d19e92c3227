using System.Text.Json;
using Microsoft.Data.Sqlite;
using Portwright.Shop.Record;

namespace Portwright.Store;

/// <summary>The questions asked of the journal, and turning rows into entries.</summary>
internal static class EntryReading
{
    public const string OfJob = "WHERE job = $id ORDER BY sequence";
    public const string OfShop = "WHERE job IS NULL ORDER BY sequence";

    /// <summary>A job and the shop in one order: what was calibrated between two sweeps stands between them.</summary>
    public const string OfJobAndShop = """
        WHERE sequence IN (
            SELECT sequence FROM entries WHERE job IS NULL
            UNION ALL
            SELECT sequence FROM entries WHERE job = $id)
        ORDER BY sequence
        """;

    public const string OfSubject = "WHERE subject = $id ORDER BY sequence";

    /// <summary>What a job is called and whether it is hidden, without reading the jobs themselves.</summary>
    public const string OfJobs = """
        WHERE sequence IN (
            SELECT sequence FROM entries WHERE kind = 'job'
            UNION ALL
            SELECT e.sequence FROM entries AS j CROSS JOIN entries AS e ON e.subject = j.subject
            WHERE j.kind = 'job' AND e.kind IN ('hidden', 'shown'))
        ORDER BY sequence
        """;

    public static string Query(string which) => $"SELECT {StoredEntry.Columns} FROM entries {which}";

    public static EntryList All(SqliteConnection connection, string which, Guid? id = null)
    {
        using var command = connection.CreateCommand();
        command.CommandText = Query(which);
        if (id is { } wanted)
        {
            command.Parameters.AddWithValue("$id", StoredEntry.Text(wanted));
        }

        var entries = new List<Entry>();
        var unreadable = new List<UnreadableEntry>();
        using var rows = command.ExecuteReader();
        while (rows.Read())
        {
            var stored = StoredEntry.Read(rows);
            if (!stored.IsSound())
            {
                unreadable.Add(new UnreadableEntry(rows.GetInt64(0), stored.Number, stored.Kind, UnreadableCause.Damaged));
                continue;
            }

            try
            {
                entries.Add(stored.ToEntry());
            }
            catch (Exception error) when (error is JsonException or NotSupportedException)
            {
                unreadable.Add(new UnreadableEntry(rows.GetInt64(0), stored.Number, stored.Kind, UnreadableCause.NotUnderstood));
            }
        }

        return new EntryList(entries, unreadable);
    }
}
