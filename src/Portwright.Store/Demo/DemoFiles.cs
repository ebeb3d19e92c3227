using System.Reflection;
using System.Security.Cryptography;

namespace Portwright.Store.Demo;

/// <summary>The demo shop's plain files, carried inside the program so that they are there wherever it stands.</summary>
internal static class DemoFiles
{
    private const string Prefix = "demo/";

    private static readonly Lazy<string> Digest = new(() =>
    {
        using var all = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var path in Names().Select(n => n.Replace('\\', '/')).Order(StringComparer.Ordinal)) all.AppendData(Read(path[Prefix.Length..]));
        return Convert.ToHexStringLower(all.GetHashAndReset().AsSpan(0, 8));
    });

    /// <summary>Which shop this is: another one as soon as a letter of its files is another.</summary>
    public static string Edition => Digest.Value;

    /// <summary>A file of the folder <c>demo/</c>, by its path in it with <c>/</c>.</summary>
    public static byte[] Read(string path)
    {
        // The path in a resource's name has the separator of the machine the program was built on.
        var name = Array.Find(Names(), n => n.Replace('\\', '/') == Prefix + path)
            ?? throw new InvalidOperationException($"The program was built without demo/{path}.");
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(name)!;
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    private static string[] Names() => Array.FindAll(Assembly.GetExecutingAssembly().GetManifestResourceNames(), n => n.Replace('\\', '/').StartsWith(Prefix, StringComparison.Ordinal));
}
