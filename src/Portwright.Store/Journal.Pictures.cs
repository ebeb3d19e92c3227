using Microsoft.Data.Sqlite;

namespace Portwright.Store;

/// <summary>Photographs and short clips, kept beside the entries under the hash of their bytes.</summary>
public sealed partial class Journal
{
    /// <summary>Keeps a picture or a clip: on the disk before this returns. The same picture again is kept once.</summary>
    /// <returns>Its name in the record, for an entry to speak of.</returns>
    /// <exception cref="RecordProblem">Larger than <see cref="Store.Attachment.LargestSize"/>, no kind the record keeps, or it could not be saved.</exception>
    public string Attach(ReadOnlySpan<byte> content)
    {
        var picture = Store.Attachment.Of(content);
        lock (_writing)
        {
            try
            {
                using var insert = _writer.CreateCommand();
                insert.CommandText = """
                    INSERT INTO attachments (content, media_type, bytes) VALUES ($content, $type, $bytes)
                    ON CONFLICT (content) DO NOTHING
                    """;
                insert.Parameters.AddWithValue("$content", picture.Content);
                insert.Parameters.AddWithValue("$type", picture.MediaType);
                insert.Parameters.AddWithValue("$bytes", picture.Bytes);
                insert.ExecuteNonQuery();
            }
            catch (SqliteException error)
            {
                throw RecordProblem.From(error, _paths.Live);
            }
        }

        return picture.Content;
    }

    /// <summary>The picture of that name, or null where there is none.</summary>
    /// <exception cref="RecordProblem">Its bytes are no longer what was saved, or the file cannot be read.</exception>
    public Attachment? Attachment(string content) => Reading(connection =>
    {
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT media_type, bytes FROM attachments WHERE content = $content";
        command.Parameters.AddWithValue("$content", content);
        using var row = command.ExecuteReader();
        if (!row.Read())
        {
            return null;
        }

        var bytes = row.GetFieldValue<byte[]>(1);
        return Store.Attachment.ContentOf(bytes) == content
            ? new Attachment(content, row.GetString(0), bytes)
            : throw new RecordProblem(
                RecordProblemKind.Damaged, $"The picture {content} is no longer what was saved.", "Attach it again, or restore the latest backup.");
    });
}
