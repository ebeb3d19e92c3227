using System.Runtime.InteropServices;
using System.Security.Cryptography;

namespace Portwright.Store;

/// <summary>Moving whole files so that a power cut leaves either the old or the new, never a part. Never for a database somebody has open.</summary>
internal static class DurableFile
{
    /// <summary>Waits until the file's bytes are on the disk.</summary>
    public static void Flush(string path)
    {
        using var file = new FileStream(path, FileMode.Open, FileAccess.ReadWrite, FileShare.None);
        file.Flush(flushToDisk: true);
    }

    /// <summary>Copies to a name that appears only once the whole copy is on the disk.</summary>
    public static void Copy(string from, string to)
    {
        var part = to + ".part";
        CopyBytes(from, part);
        Rename(part, to, replace: false);
    }

    /// <summary>Copies the bytes and waits for the disk.</summary>
    public static void CopyBytes(string from, string to)
    {
        using var source = new FileStream(from, FileMode.Open, FileAccess.Read, FileShare.Read);
        using var target = new FileStream(to, FileMode.Create, FileAccess.Write, FileShare.None);
        source.CopyTo(target, 1 << 20);
        target.Flush(flushToDisk: true);
    }

    /// <summary>Renames in one step and waits until the name is on the disk.</summary>
    public static void Rename(string from, string to, bool replace)
    {
        File.Move(from, to, replace);
        FlushFolder(Path.GetDirectoryName(Path.GetFullPath(to))!);
    }

    public static bool SameBytes(string a, string b) =>
        new FileInfo(a).Length == new FileInfo(b).Length && Fingerprint(a) == Fingerprint(b);

    /// <summary>SHA-256 of the file, lower-case hexadecimal.</summary>
    public static string Fingerprint(string path)
    {
        using var file = File.OpenRead(path);
        return Convert.ToHexStringLower(SHA256.HashData(file));
    }

    public static void DeleteDatabase(string path)
    {
        // The log first: a log without its database is harmless, a database with another's log is not.
        foreach (var suffix in new[] { "-wal", "-shm", "-journal", "" })
        {
            File.Delete(path + suffix);
        }
    }

    /// <summary>On Unix a new name is only sure to outlive a power cut once its folder is flushed; Windows journals names itself.</summary>
    private static void FlushFolder(string folder)
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        var handle = UnixOpen(folder, 0);
        if (handle >= 0)
        {
            // A file system that cannot flush folders says so here; the rename itself has happened all the same.
            _ = UnixFlush(handle);
            _ = UnixClose(handle);
        }
    }

    [DllImport("libc", EntryPoint = "open", CharSet = CharSet.Ansi, BestFitMapping = false, ThrowOnUnmappableChar = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.System32)]
    private static extern int UnixOpen([MarshalAs(UnmanagedType.LPUTF8Str)] string path, int flags);

    [DllImport("libc", EntryPoint = "fsync")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.System32)]
    private static extern int UnixFlush(int handle);

    [DllImport("libc", EntryPoint = "close")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.System32)]
    private static extern int UnixClose(int handle);
}
