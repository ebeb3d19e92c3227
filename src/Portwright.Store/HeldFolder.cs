namespace Portwright.Store;

/// <summary>
/// A data folder taken by one running workbench. The hold is a lock the operating system drops when the process ends, however it ends;
/// a file left behind means nothing.
/// </summary>
public sealed class HeldFolder : IDisposable
{
    private readonly FileStream _lock;
    private readonly string _addressFile;

    private HeldFolder(FileStream held, string addressFile)
    {
        _lock = held;
        _addressFile = addressFile;
    }

    /// <summary>Lets a second workbench say where the first is to be found, once it is listening.</summary>
    public void Announce(string address) => File.WriteAllText(_addressFile, address);

    public void Dispose()
    {
        File.Delete(_addressFile);
        _lock.Dispose();
    }

    internal static HeldFolder Take(string folder)
    {
        var held = TryTake(folder);
        for (var again = 0; held is null && again < 4; again++)
        {
            // Somebody may only have looked whether it is taken.
            Thread.Sleep(20);
            held = TryTake(folder);
        }

        if (held is null)
        {
            var address = AddressIn(folder);
            throw new RecordProblem(
                RecordProblemKind.InUse,
                $"A workbench already runs on the record in {folder}.",
                address is null
                    ? "Use that one, close it first, or choose another folder with --data DIR."
                    : $"Open {address} in the browser, or choose another folder with --data DIR.");
        }

        var addressFile = Path.Combine(folder, "workbench.address");
        // What an earlier, killed workbench announced is no longer true.
        File.Delete(addressFile);
        return new HeldFolder(held, addressFile);
    }

    internal static string? AddressIn(string folder)
    {
        if (!Directory.Exists(folder))
        {
            return null;
        }

        using var free = TryTake(folder);
        var addressFile = Path.Combine(folder, "workbench.address");
        return free is null && File.Exists(addressFile) ? File.ReadAllText(addressFile) : null;
    }

    private static FileStream? TryTake(string folder) =>
        FolderLock.TryOpen(Path.Combine(folder, "workbench.lock"), FileAccess.ReadWrite, FileShare.None);
}
