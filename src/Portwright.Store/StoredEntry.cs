using System.Buffers.Binary;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Microsoft.Data.Sqlite;
using Portwright.Shop.Record;

namespace Portwright.Store;

/// <summary>An entry as it lies in the record: text fields and the hash over them.</summary>
internal sealed record StoredEntry(
    string Number,
    string Subject,
    string? Job,
    string At,
    string Hand,
    string Source,
    string Kind,
    string? Replaces,
    string? Reason,
    string Body,
    byte[] Hash)
{
    /// <summary>The columns <see cref="Read"/> expects, in its order.</summary>
    public const string Columns = "sequence, number, subject, job, at, hand, source, kind, replaces, reason, body, hash";

    private static readonly Dictionary<Type, string> Kinds =
        RecordJson.Default.Fact.PolymorphismOptions!.DerivedTypes.ToDictionary(d => d.DerivedType, d => (string)d.TypeDiscriminator!);

    // What is hashed begins with this, so that a hash of something else is never taken for an entry's.
    private static readonly byte[] Seal = "portwright entry 1"u8.ToArray();

    /// <exception cref="RecordProblem">A text has a NUL character, which no field can hold.</exception>
    public static StoredEntry Of(Entry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        var body = JsonSerializer.SerializeToUtf8Bytes(entry.Fact, RecordJson.Default.Fact);
        var stored = new StoredEntry(
            Text(entry.Number),
            Text(entry.Subject),
            entry.Job is { } job ? Text(job) : null,
            entry.At.ToString("O", CultureInfo.InvariantCulture),
            Plain(entry.Hand, "hand"),
            Plain(entry.Source, "source"),
            KindOf(entry.Fact),
            entry.Replaces is { } replaces ? Text(replaces) : null,
            entry.Reason is null ? null : Plain(entry.Reason, "reason"),
            Encoding.UTF8.GetString(body),
            []);
        return stored with { Hash = stored.ComputeHash() };
    }

    public static StoredEntry Read(SqliteDataReader row) => new(
        row.GetString(1),
        row.GetString(2),
        row.IsDBNull(3) ? null : row.GetString(3),
        row.GetString(4),
        row.GetString(5),
        row.GetString(6),
        row.GetString(7),
        row.IsDBNull(8) ? null : row.GetString(8),
        row.IsDBNull(9) ? null : row.GetString(9),
        row.GetString(10),
        row.GetFieldValue<byte[]>(11));

    public static string Text(Guid id) => id.ToString("D", CultureInfo.InvariantCulture);

    /// <summary>True where the fields are still those that were saved.</summary>
    public bool IsSound() => Hash.AsSpan().SequenceEqual(ComputeHash());

    /// <summary>The entry. Ask <see cref="IsSound"/> first.</summary>
    /// <exception cref="JsonException">The body is of a kind or form this program does not know (or <see cref="NotSupportedException"/>, where it names none).</exception>
    public Entry ToEntry() => new(
        Guid.ParseExact(Number, "D"),
        Guid.ParseExact(Subject, "D"),
        Job is null ? null : Guid.ParseExact(Job, "D"),
        DateTimeOffset.ParseExact(At, "O", CultureInfo.InvariantCulture),
        Hand,
        Source,
        JsonSerializer.Deserialize(Body, RecordJson.Default.Fact) ?? throw new JsonException("An entry that states nothing."),
        Replaces is null ? null : Guid.ParseExact(Replaces, "D"),
        Reason);

    /// <summary>True where both say the same, also when an older program wrote one of them in a shorter form.</summary>
    public bool SaysTheSameAs(StoredEntry other)
    {
        if (Hash.AsSpan().SequenceEqual(other.Hash))
        {
            return true;
        }

        try
        {
            return other.IsSound() && Of(other.ToEntry()).Hash.AsSpan().SequenceEqual(Hash);
        }
        catch (Exception error) when (error is JsonException or NotSupportedException)
        {
            return false;
        }
    }

    /// <summary>
    /// SHA-256 over the fields, each as its length in bytes (32 bits, little-endian; all ones for none) and its UTF-8, so that no two
    /// different entries give the same bytes.
    /// </summary>
    public byte[] ComputeHash()
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(Seal);
        Span<byte> length = stackalloc byte[4];
        foreach (var field in (ReadOnlySpan<string?>)[Number, Subject, Job, At, Hand, Source, Kind, Replaces, Reason, Body])
        {
            var bytes = field is null ? null : Encoding.UTF8.GetBytes(field);
            BinaryPrimitives.WriteUInt32LittleEndian(length, bytes is null ? uint.MaxValue : (uint)bytes.Length);
            hash.AppendData(length);
            hash.AppendData(bytes ?? []);
        }

        return hash.GetHashAndReset();
    }

    private static string KindOf(Fact fact) => Kinds.TryGetValue(fact.GetType(), out var kind)
        ? kind
        : throw new ArgumentException($"{fact.GetType().Name} is not listed on Fact as a kind of fact.", nameof(fact));

    private static string Plain(string text, string field) => text.Contains('\0', StringComparison.Ordinal)
        ? throw new RecordProblem(
            RecordProblemKind.Refused,
            $"The {field} of an entry has an invisible character (NUL) in it; nothing was saved.",
            "Type it again by hand instead of pasting it.")
        : text;
}
