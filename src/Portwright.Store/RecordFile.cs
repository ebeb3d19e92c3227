using System.Globalization;
using System.Security.Cryptography;
using Microsoft.Data.Sqlite;

namespace Portwright.Store;

/// <summary>What a file says of itself before anything in it is believed.</summary>
internal static class RecordFile
{
    /// <summary>The schema number of an existing record, from 1.</summary>
    /// <exception cref="RecordProblem">Not a record, newer than <paramref name="schema"/>, damaged, or not to be opened.</exception>
    public static int SchemaOf(string path, Schema schema)
    {
        // Asked of the file system, not by opening the file: see RecordPaths.Live.
        if (new FileInfo(path) is { Exists: true, Length: 0 })
        {
            throw new RecordProblem(RecordProblemKind.Damaged, $"The record {path} is empty: it was cut short.", RecordProblem.RestoreCure);
        }

        try
        {
            using var connection = Database.Open(path);
            return SchemaOf(connection, path, schema);
        }
        catch (SqliteException error)
        {
            throw RecordProblem.From(error, path);
        }
    }

    public static int SchemaOf(SqliteConnection connection, string path, Schema schema)
    {
        var version = Database.Number(connection, "PRAGMA user_version");
        if (Database.Number(connection, "PRAGMA application_id") != Schema.ApplicationId || version < 1)
        {
            throw new RecordProblem(
                RecordProblemKind.NotARecord,
                $"The file {path} was not made by Portwright. Nothing was changed.",
                "Choose another folder with --data DIR, or move that file away.");
        }

        if (version > schema.Version)
        {
            throw new RecordProblem(
                RecordProblemKind.Newer,
                $"The record {path} was made by a newer Portwright (form {version}; this one knows forms up to {schema.Version}). Nothing was changed.",
                "Start the newer Portwright, or update this one.");
        }

        return (int)version;
    }
}

/// <summary>A fingerprint of what a record holds: how many entries and attachments, and a digest over all their hashes in order.</summary>
internal sealed record RecordContents(long Entries, long Attachments, string Digest)
{
    public static RecordContents Empty { get; } = new(0, 0, Convert.ToHexStringLower(SHA256.HashData([])));

    /// <param name="through">The last entry to count; entries saved later are left out.</param>
    public static RecordContents Of(SqliteConnection connection, long through = long.MaxValue)
    {
        using var digest = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        long entries = 0;
        using (var command = connection.CreateCommand())
        {
            command.CommandText = "SELECT sequence, number, hash FROM entries WHERE sequence <= $through ORDER BY sequence";
            command.Parameters.AddWithValue("$through", through);
            using var rows = command.ExecuteReader();
            while (rows.Read())
            {
                entries++;
                digest.AppendData(System.Text.Encoding.UTF8.GetBytes(
                    string.Create(CultureInfo.InvariantCulture, $"{rows.GetInt64(0)} {rows.GetString(1)} ")));
                digest.AppendData(rows.GetFieldValue<byte[]>(2));
            }
        }

        var attachments = Database.Number(connection, "SELECT count(*) FROM attachments");
        return new RecordContents(entries, attachments, Convert.ToHexStringLower(digest.GetHashAndReset()));
    }
}
