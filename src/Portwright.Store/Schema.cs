namespace Portwright.Store;

/// <summary>One step of the record's schema: what turns the one before into this one.</summary>
/// <param name="Version">The <c>user_version</c> it leads to, from 1.</param>
internal sealed record SchemaStep(int Version, string Sql);

/// <summary>
/// The tables of the record, as steps from nothing to today. A step once released is never edited. A new kind of fact, or a new member
/// of a fact, is a step too, even where no table changes: that number is what tells an older Portwright to leave the file alone.
/// </summary>
internal sealed record Schema(IReadOnlyList<SchemaStep> Steps)
{
    /// <summary>SQLite's <c>application_id</c> of a Portwright record: the letters PTWR.</summary>
    public const int ApplicationId = 0x50545752;

    public int Version => Steps[^1].Version;

    public static Schema Today { get; } = new([
        new SchemaStep(1, First),
        // No table changes: a sweep may state its date, a calibration its leak.
        new SchemaStep(2, ""),
        // No table changes: a set-up study states its range, test pressure, direction and air.
        // No table changes: a calibration and a check may say that they were made before the day's work, a range which instrument it is
        // read on, and a percent scale what of it was assumed.
        new SchemaStep(3, ""),
        // No table changes: a value kept against a question says so; a head says how its ports lie, a section what stands in its air.
        new SchemaStep(4, ""),
        // No table changes: a sweep may state its run step by step, a reading its pass, a check several leaks; the shop's usual runs are kept.
        new SchemaStep(5, ""),
    ]);

    /// <summary>Tables, indexes and triggers a sound record has.</summary>
    public static IReadOnlyList<string> Parts { get; } =
    [
        "entries", "attachments", "entries_by_job", "entries_by_subject", "entries_by_kind",
        "entries_are_never_changed", "entries_are_never_removed", "attachments_are_never_changed", "attachments_are_never_removed",
    ];

    // Names and times are text, so that the record can be read with any SQLite tool in twenty years.
    private const string First = """
        CREATE TABLE entries (
            sequence INTEGER PRIMARY KEY,
            number   TEXT NOT NULL UNIQUE CHECK (length(number) = 36),
            subject  TEXT NOT NULL CHECK (length(subject) = 36),
            job      TEXT CHECK (length(job) = 36),
            at       TEXT NOT NULL,
            hand     TEXT NOT NULL,
            source   TEXT NOT NULL,
            kind     TEXT NOT NULL CHECK (length(kind) > 0),
            replaces TEXT REFERENCES entries (number) DEFERRABLE INITIALLY DEFERRED,
            reason   TEXT,
            body     TEXT NOT NULL CHECK (json_valid(body)),
            hash     BLOB NOT NULL CHECK (length(hash) = 32)
        ) STRICT;
        CREATE INDEX entries_by_job ON entries (job);
        CREATE INDEX entries_by_subject ON entries (subject);
        CREATE INDEX entries_by_kind ON entries (kind, subject);
        CREATE TABLE attachments (
            content    TEXT PRIMARY KEY NOT NULL CHECK (length(content) = 64),
            media_type TEXT NOT NULL,
            bytes      BLOB NOT NULL CHECK (length(bytes) > 0)
        ) STRICT;
        CREATE TRIGGER entries_are_never_changed BEFORE UPDATE ON entries
        BEGIN SELECT RAISE(ABORT, 'entries are never changed: a correction is a further entry'); END;
        CREATE TRIGGER entries_are_never_removed BEFORE DELETE ON entries
        BEGIN SELECT RAISE(ABORT, 'entries are never removed: hiding is a further entry'); END;
        CREATE TRIGGER attachments_are_never_changed BEFORE UPDATE ON attachments
        BEGIN SELECT RAISE(ABORT, 'attachments are never changed'); END;
        CREATE TRIGGER attachments_are_never_removed BEFORE DELETE ON attachments
        BEGIN SELECT RAISE(ABORT, 'attachments are never removed'); END;
        """;
}
