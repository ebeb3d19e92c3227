using System.ComponentModel;
using System.Diagnostics;
using System.Runtime.InteropServices;

namespace Portwright.Bench.Gas;

/// <summary>The same scheme in C++, compiled here and now for this machine and called in this process.</summary>
internal static unsafe class Twin
{
    private const string Flags = "-O3 -march=native -std=c++17 -fPIC -shared";

    /// <summary>The twins by name; none where there is no g++.</summary>
    public static IReadOnlyDictionary<string, nint> Build(out string compiler)
    {
        compiler = "no g++ here: C# alone";
        var found = new Dictionary<string, nint>();
        try
        {
            compiler = Run("--version").Split('\n')[0] + " " + Flags;
            var folder = Directory.CreateTempSubdirectory("gas-twin-").FullName;
            foreach (var (file, names) in new[] { ("plain", new[] { "plain" }), ("vectors", ["vectors4", "vectors8"]) })
            {
                var library = Path.Combine(folder, file + ".so");
                Run($"{Flags} -o {library} {Path.Combine(AppContext.BaseDirectory, "twin", file + ".cpp")}");
                var handle = NativeLibrary.Load(library);
                foreach (var name in names)
                    if (NativeLibrary.TryGetExport(handle, name, out var entry)) found[name] = entry;
            }
        }
        catch (Win32Exception)
        {
            // No compiler on this machine.
        }

        return found;
    }

    private static string Run(string arguments)
    {
        using var process = Process.Start(new ProcessStartInfo("g++", arguments) { RedirectStandardOutput = true })!;
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode == 0 ? output : throw new InvalidOperationException($"g++ {arguments} failed with {process.ExitCode}.");
    }
}
