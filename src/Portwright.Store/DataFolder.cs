namespace Portwright.Store;

/// <summary>The folder that holds a shop's record.</summary>
public static class DataFolder
{
    /// <summary>
    /// The place by the platform's convention: <c>%LOCALAPPDATA%\Portwright</c> on Windows, <c>~/Library/Application
    /// Support/Portwright</c> on macOS, else <c>$XDG_DATA_HOME/portwright</c> or <c>~/.local/share/portwright</c>.
    /// </summary>
    /// <exception cref="RecordProblem">The platform names no such place (no home folder).</exception>
    public static string Default
    {
        get
        {
            // DoNotVerify: the folder need not exist yet.
            var root = Environment.GetFolderPath(
                Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify);
            if (root.Length == 0)
            {
                throw new RecordProblem(
                    RecordProblemKind.CannotOpen,
                    "This machine names no folder for a program's data.",
                    "Say where the record shall live with --data DIR.");
            }

            return Path.Combine(root, OperatingSystem.IsLinux() || OperatingSystem.IsFreeBSD() ? "portwright" : "Portwright");
        }
    }

    /// <summary>The folder given with <c>--data</c> as a full path, or <see cref="Default"/> where none is given.</summary>
    public static string Resolve(string? given) => string.IsNullOrWhiteSpace(given) ? Default : Path.GetFullPath(given);

    /// <summary>Makes the folder where it is missing; on Unix only its owner may enter it.</summary>
    /// <returns>Its full path.</returns>
    /// <exception cref="RecordProblem">It cannot be made.</exception>
    public static string Make(string folder)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(folder);
        var full = Path.GetFullPath(folder);
        try
        {
            if (OperatingSystem.IsWindows())
            {
                Directory.CreateDirectory(full);
            }
            else
            {
                Directory.CreateDirectory(full, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
            }
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new RecordProblem(
                RecordProblemKind.CannotOpen,
                $"The folder {full} cannot be made: {error.Message}",
                "Check the path, or choose another with --data DIR.",
                error);
        }

        return full;
    }

    /// <summary>
    /// Takes the folder for one workbench. A second one that tries the same is told of the first. Importing and exporting from the
    /// command line needs no hold: SQLite keeps two writers apart.
    /// </summary>
    /// <exception cref="RecordProblem"><see cref="RecordProblemKind.InUse"/>, with the first one's address where it is known.</exception>
    public static HeldFolder Hold(string folder) => HeldFolder.Take(Make(folder));

    /// <summary>The address a running workbench has announced for this folder; null when none runs or it has not announced one.</summary>
    public static string? AddressOfHolder(string folder) => HeldFolder.AddressIn(Path.GetFullPath(folder));
}
