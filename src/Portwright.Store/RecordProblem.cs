using System.Diagnostics.CodeAnalysis;
using Microsoft.Data.Sqlite;

namespace Portwright.Store;

/// <summary>What stands in the way of keeping or reading the record.</summary>
public enum RecordProblemKind
{
    /// <summary>The file is something else than a Portwright record.</summary>
    NotARecord,

    /// <summary>The file was made by a newer Portwright. Nothing was changed.</summary>
    Newer,

    /// <summary>The file is damaged or cut short.</summary>
    Damaged,

    /// <summary>The folder or file cannot be opened or written.</summary>
    CannotOpen,

    /// <summary>The disk is full.</summary>
    DiskFull,

    /// <summary>The disk failed while reading or writing.</summary>
    DiskFault,

    /// <summary>Another program has the record.</summary>
    InUse,

    /// <summary>What was to be saved contradicts what the record holds already, or is nothing the record keeps.</summary>
    Refused,

    /// <summary>Anything else SQLite says.</summary>
    Other,
}

/// <summary>
/// The record cannot do what was asked. <see cref="Exception.Message"/> says what happened and what to do about it in a porter's words;
/// whatever was to be saved is not saved, not even half.
/// </summary>
[SuppressMessage("Naming", "CA1710", Justification = "Its message is read by porters; a problem is what they call it.")]
public sealed class RecordProblem : Exception
{
    public RecordProblem(RecordProblemKind kind, string what, string cure, Exception? inner = null)
        : base($"{what} {cure}", inner)
    {
        Kind = kind;
        What = what;
        Cure = cure;
    }

    public RecordProblemKind Kind { get; }

    /// <summary>What happened, one sentence.</summary>
    public string What { get; }

    /// <summary>What to do about it.</summary>
    public string Cure { get; }

    /// <summary>SQLite's error number in words. The first byte of an extended code is the plain one: 517 is a kind of 5.</summary>
    /// <param name="file">The file it happened to.</param>
    public static RecordProblem From(SqliteException error, string file) => (error.SqliteErrorCode & 0xFF) switch
    {
        3 or 8 or 14 => new(
            RecordProblemKind.CannotOpen,
            $"The record {file} cannot be opened for writing.",
            "Check that the folder is there and that you may write in it, or choose another with --data DIR.",
            error),
        5 or 6 => new(
            RecordProblemKind.InUse,
            $"Another program is busy writing to the record {file}; nothing was saved.",
            "Wait until it has finished, then do the same again.",
            error),
        10 => new(
            RecordProblemKind.DiskFault,
            $"The disk did not do its part in reading or writing the record {file}; nothing was saved.",
            "Do the same again. If it comes back, the disk or its cable is failing: make a backup on another disk.",
            error),
        11 => new(RecordProblemKind.Damaged, $"The record {file} is damaged.", RestoreCure, error),
        13 => new(
            RecordProblemKind.DiskFull,
            $"The disk that holds the record {file} is full; nothing was saved.",
            "Free some space, then do the same again.",
            error),
        26 => new(
            RecordProblemKind.NotARecord,
            $"The file {file} is not a Portwright record, or its beginning is damaged. Nothing was changed.",
            "Choose another folder with --data DIR, or restore the latest backup: portwright restore FILE.",
            error),
        _ => new(
            RecordProblemKind.Other,
            $"The record {file} could not be used: {error.Message}",
            "Make a copy of the folder before trying anything else.",
            error),
    };

    /// <summary>The file system's complaint in words.</summary>
    internal static RecordProblem From(Exception error, string file) => error switch
    {
        RecordProblem problem => problem,
        SqliteException sqlite => From(sqlite, file),
        // ENOSPC is 28 on Unix, ERROR_DISK_FULL 112 on Windows; the low 16 bits of the HResult carry either.
        IOException io when (io.HResult & 0xFFFF) is 28 or 112 => new(
            RecordProblemKind.DiskFull, $"The disk that holds {file} is full.", "Free some space, then do the same again.", io),
        _ => new(
            RecordProblemKind.CannotOpen,
            $"{file} cannot be written: {error.Message}",
            "Check that the folder is there and that you may write in it, or choose another.",
            error),
    };

    internal const string RestoreCure =
        "Restore the latest backup: portwright restore FILE. The damaged record is kept beside the restored one.";
}
