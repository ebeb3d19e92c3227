namespace Portwright.Store;

/// <summary>How far a schema change has come.</summary>
public enum SchemaStage
{
    /// <summary>What an earlier, killed change left is removed.</summary>
    Cleared,

    /// <summary>The record is copied; the copy will be changed.</summary>
    Copied,

    /// <summary>One step is done on the copy.</summary>
    Stepped,

    /// <summary>The copy is checked against the old record.</summary>
    Verified,

    /// <summary>The copy is on the disk.</summary>
    Flushed,

    /// <summary>The old record is kept under its own name.</summary>
    OldKept,

    /// <summary>The changed copy has taken the record's place.</summary>
    Replaced,
}

/// <summary>A point in a schema change.</summary>
/// <param name="From">The schema of the record as found; 0 where there was none.</param>
/// <param name="To">The schema reached so far.</param>
public sealed record SchemaPoint(SchemaStage Stage, int From, int To);
