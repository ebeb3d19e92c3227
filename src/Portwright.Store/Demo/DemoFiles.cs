using System.Reflection;

namespace Portwright.Store.Demo;

/// <summary>The demo shop's plain files, carried inside the program so that they are there wherever it stands.</summary>
internal static class DemoFiles
{
    private const string Prefix = "demo/";

    /// <summary>A file of the folder <c>demo/</c>, by its path in it with <c>/</c>.</summary>
    public static byte[] Read(string path)
    {
        var assembly = Assembly.GetExecutingAssembly();
        // The path in a resource's name has the separator of the machine the program was built on.
        var name = Array.Find(assembly.GetManifestResourceNames(), n => n.Replace('\\', '/') == Prefix + path)
            ?? throw new InvalidOperationException($"The program was built without demo/{path}.");
        using var stream = assembly.GetManifestResourceStream(name)!;
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}
