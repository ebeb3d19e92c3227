using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace Portwright.Bench;

/// <summary>What was measured, kept by processor and day in <c>bench/history</c>.</summary>
internal static partial class History
{
    /// <summary>Name and family, as the machine gives them: the name alone is that of several generations.</summary>
    public static string Processor { get; } = File.Exists("/proc/cpuinfo")
        ? $"{Said("model name")}, family {Said("cpu family")}"
        : Environment.GetEnvironmentVariable("PROCESSOR_IDENTIFIER") ?? "processor not noted";

    /// <summary>Takes <c>--history</c> out of the arguments; true where it stood there.</summary>
    public static bool Asked(ref string[] args)
    {
        var others = Array.FindAll(args, a => a != "--history");
        var asked = others.Length < args.Length;
        args = others;
        return asked;
    }

    /// <summary>Adds a section to today's file of this processor and returns the file's name.</summary>
    public static string Keep(string heading, string text)
    {
        var day = DateTime.Now.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        var folder = Path.Combine(Folder(), NotPlain().Replace(Processor, "-").Trim('-').ToLowerInvariant());
        Directory.CreateDirectory(folder);
        var file = Path.Combine(folder, day + ".md");
        var page = new StringBuilder(File.Exists(file) ? "" : $"# {day}, {Processor}\n").Append(CultureInfo.InvariantCulture, $"\n## {heading}\n\n{text.Trim()}\n");
        File.AppendAllText(file, page.ToString().ReplaceLineEndings("\n"));
        return file;
    }

    private static string Folder()
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
            if (File.Exists(Path.Combine(at.FullName, "Portwright.slnx"))) return Path.Combine(at.FullName, "bench", "history");
        throw new DirectoryNotFoundException($"No Portwright.slnx lies above {AppContext.BaseDirectory}: there is no history to add to.");
    }

    private static string Said(string name) => File.ReadLines("/proc/cpuinfo").FirstOrDefault(l => l.StartsWith(name, StringComparison.Ordinal))?.Split(':')[1].Trim() ?? "unknown";

    [GeneratedRegex("[^A-Za-z0-9]+")] private static partial Regex NotPlain();
}

/// <summary>Hears what is printed until it is disposed, and keeps it then.</summary>
internal sealed class Overheard : TextWriter
{
    private readonly TextWriter _aloud = Console.Out;
    private readonly StringBuilder _heard = new();
    private readonly string _heading;

    public Overheard(string heading)
    {
        _heading = heading;
        Console.SetOut(this);
    }

    public override Encoding Encoding => _aloud.Encoding;

    public override void Write(char value)
    {
        _aloud.Write(value);
        _heard.Append(value);
    }

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            Console.SetOut(_aloud);
            Console.WriteLine(History.Keep(_heading, $"```text\n{_heard.ToString().Trim()}\n```"));
        }

        base.Dispose(disposing);
    }
}
