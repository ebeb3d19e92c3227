using System.Diagnostics;

namespace Portwright.Store;

/// <summary>
/// Who may touch the record's file itself. Everybody who has the record open shares the lock; whoever exchanges the file (a schema
/// change, a restore) needs it alone. The operating system drops it when a process dies.
/// </summary>
internal sealed class FolderLock : IDisposable
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(25);
    private readonly FileStream _file;

    private FolderLock(FileStream file) => _file = file;

    public void Dispose() => _file.Dispose();

    /// <summary>Shares the record with others that have it open; waits for one that exchanges the file.</summary>
    public static FolderLock Share(RecordPaths paths, TimeSpan patience)
    {
        var waited = Stopwatch.StartNew();
        while (true)
        {
            // On Unix FileShare.None is an exclusive flock and anything else a shared one; on Windows sharing itself does the work.
            if (TryOpen(paths.Lock, FileAccess.Read, FileShare.ReadWrite) is { } file)
            {
                return new FolderLock(file);
            }

            if (waited.Elapsed > patience)
            {
                throw new RecordProblem(
                    RecordProblemKind.InUse,
                    $"Another Portwright is changing or restoring the record in {paths.Folder}.",
                    "Wait until it has finished, then start again.");
            }

            Thread.Sleep(Pause);
        }
    }

    /// <summary>Takes the record's file alone, or null when somebody has it open.</summary>
    public static FolderLock? TryAlone(RecordPaths paths) =>
        TryOpen(paths.Lock, FileAccess.ReadWrite, FileShare.None) is { } file ? new FolderLock(file) : null;

    internal static FileStream? TryOpen(string path, FileAccess access, FileShare share)
    {
        try
        {
            return new FileStream(path, FileMode.OpenOrCreate, access, share);
        }
        catch (UnauthorizedAccessException error)
        {
            throw RecordProblem.From(error, path);
        }
        catch (IOException error) when (error is DirectoryNotFoundException or FileNotFoundException or PathTooLongException)
        {
            throw RecordProblem.From(error, path);
        }
        catch (IOException)
        {
            return null;
        }
    }
}
