namespace Portwright.Cli.Tests;

/// <summary>The files of the repository these tests were built in.</summary>
internal static class Repository
{
    /// <summary>The folder that holds <c>Portwright.slnx</c>.</summary>
    public static string Root { get; } = Above(AppContext.BaseDirectory);

    public static string Path(string name) => System.IO.Path.Combine(Root, name);

    public static string[] Lines(string name) => File.ReadAllLines(Path(name));

    private static string Above(string folder)
    {
        for (var at = new DirectoryInfo(folder); at is not null; at = at.Parent)
            if (File.Exists(System.IO.Path.Combine(at.FullName, "Portwright.slnx"))) return at.FullName;
        throw new DirectoryNotFoundException($"No Portwright.slnx above {folder}.");
    }
}
