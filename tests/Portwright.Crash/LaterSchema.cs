using Portwright.Store;

namespace Portwright.Crash;

/// <summary>A schema after today's as one might come: a further column filled for the entries there are, and a further table.</summary>
internal static class LaterSchema
{
    public static Schema Schema { get; } = new(
    [
        .. Schema.Today.Steps,
        new SchemaStep(Schema.Today.Version + 1, """
            DROP TRIGGER entries_are_never_changed;
            ALTER TABLE entries ADD COLUMN year INTEGER NOT NULL DEFAULT 0;
            UPDATE entries SET year = CAST(substr(at, 1, 4) AS INTEGER);
            CREATE TRIGGER entries_are_never_changed BEFORE UPDATE ON entries
            BEGIN SELECT RAISE(ABORT, 'entries are never changed: a correction is a further entry'); END;
            CREATE TABLE years (year INTEGER PRIMARY KEY, entries INTEGER NOT NULL) STRICT;
            INSERT INTO years SELECT year, count(*) FROM entries GROUP BY year;
            """),
    ]);
}
