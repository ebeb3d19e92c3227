using System.Globalization;
using Microsoft.Data.Sqlite;

namespace Portwright.Store;

/// <summary>Connections to a record's file with the settings the promises rest on, and the few statements everybody needs.</summary>
internal static class Database
{
    /// <summary>How long a writer waits for another process that is writing, s.</summary>
    public const int Patience = 5;

    /// <summary>A connection of its own, closed for good when disposed.</summary>
    public static SqliteConnection Open(string path, SqliteOpenMode mode = SqliteOpenMode.ReadWrite, int patience = Patience) =>
        Open(path, mode, pooled: false, patience);

    /// <summary>A pooled connection that cannot write.</summary>
    public static SqliteConnection OpenReader(string path)
    {
        var connection = Open(path, SqliteOpenMode.ReadWrite, pooled: true, Patience);
        Execute(connection, "PRAGMA query_only = ON");
        return connection;
    }

    public static void Execute(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    public static long Number(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return Convert.ToInt64(command.ExecuteScalar() ?? 0L, CultureInfo.InvariantCulture);
    }

    public static string Text(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return Convert.ToString(command.ExecuteScalar(), CultureInfo.InvariantCulture) ?? "";
    }

    public static List<string> Lines(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        using var rows = command.ExecuteReader();
        var lines = new List<string>();
        while (rows.Read())
        {
            lines.Add(rows.IsDBNull(0) ? "" : rows.GetString(0));
        }

        return lines;
    }

    /// <summary>Brings the write-ahead log into the database and leaves one single file.</summary>
    public static void MakeOneFile(SqliteConnection connection)
    {
        Execute(connection, "PRAGMA wal_checkpoint(TRUNCATE)");
        var mode = Text(connection, "PRAGMA journal_mode = DELETE");
        if (mode != "delete")
        {
            throw new SqliteException($"journal mode stayed {mode}", 5);
        }
    }

    /// <summary>Names the pool of the readers of a file.</summary>
    public static string ReaderString(string path) => ConnectionString(path, SqliteOpenMode.ReadWrite, pooled: true, Patience);

    private static string ConnectionString(string path, SqliteOpenMode mode, bool pooled, int patience) => new SqliteConnectionStringBuilder
    {
        DataSource = path,
        Mode = mode,
        Pooling = pooled,
        ForeignKeys = true,
        DefaultTimeout = patience,
    }.ToString();

    private static SqliteConnection Open(string path, SqliteOpenMode mode, bool pooled, int patience)
    {
        var connection = new SqliteConnection(ConnectionString(path, mode, pooled, patience));
        try
        {
            connection.Open();
            // FULL: a commit is on the disk before it returns. fullfsync: on macOS a plain fsync stops at the drive's cache.
            Execute(connection, $"""
                PRAGMA busy_timeout = {patience * 1000};
                PRAGMA synchronous = FULL;
                PRAGMA fullfsync = ON;
                PRAGMA trusted_schema = OFF;
                PRAGMA cell_size_check = ON;
                """);
            return connection;
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }
}
