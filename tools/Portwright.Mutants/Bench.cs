using System.Diagnostics;
using System.Text.RegularExpressions;

namespace Portwright.Mutants;

/// <summary>A copy of the built tests in which the room under trial is written over, mutant by mutant, and the tests are run.</summary>
internal sealed partial class Bench : IDisposable
{
    /// <summary>Measured on thousands of made ports, or of the code's own order: slow, and no test of a single figure.</summary>
    private static readonly string[] Never = ["Judging", "Conventions"];

    private readonly string _folder = Directory.CreateTempSubdirectory("portwright-mutants").FullName;
    private readonly string _room, _tests;
    private readonly byte[] _sound;
    private readonly List<string> _leftOut = [];
    private TimeSpan _limit = TimeSpan.FromMinutes(10);

    public Bench(string built, string room, string tests)
    {
        foreach (var from in Directory.GetFiles(built, "*", SearchOption.AllDirectories))
        {
            var to = Path.Combine(_folder, Path.GetRelativePath(built, from));
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            File.Copy(from, to);
        }

        (_room, _tests) = (Path.Combine(_folder, room + ".dll"), tests);
        _sound = File.ReadAllBytes(_room);
    }

    /// <summary>Runs the tests on the sound room: those that fail there can kill nothing and are left out.</summary>
    /// <param name="near">Classes to run; empty: all.</param>
    public IReadOnlyList<string> Base(IReadOnlyList<string> near)
    {
        var clock = Stopwatch.StartNew();
        var (_, said) = Run(near.Count > 0 ? Classes(near) : All, stop: false);
        _leftOut.AddRange(Failed().Matches(said).Select(m => m.Groups[1].Value).Distinct());
        // A machine shared by others is slow at times; a mutant that never ends is slow for ever.
        _limit = 5 * clock.Elapsed + TimeSpan.FromSeconds(60);
        return _leftOut;
    }

    /// <summary>The near tests first, then all: the first that fails ends it.</summary>
    /// <param name="near">Classes of the tests that speak of the mutant's folder, one run each.</param>
    public Fate Try(Mutant mutant, IReadOnlyList<string> near, bool all)
    {
        var bytes = (byte[])_sound.Clone();
        mutant.Bytes.CopyTo(bytes, mutant.At);
        File.WriteAllBytes(_room, bytes);
        try
        {
            string[] left = _leftOut.Count > 0 ? ["--filter-not-method", .. _leftOut] : [];
            return near.Any(n => Fails([.. Classes([n]), .. left])) || (all && Fails([.. All, .. left])) ? Fate.Killed : Fate.Survived;
        }
        finally
        {
            File.WriteAllBytes(_room, _sound);
        }
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private string[] All => ["--filter-not-namespace", .. Never.Select(n => $"{_tests}.{n}")];

    private string[] Classes(IReadOnlyList<string> named) => ["--filter-class", .. named.Select(n => $"{_tests}.{n}")];

    // 0: all passed; 8: the filter left no test (Microsoft.Testing.Platform's exit codes). Anything else is a failure, a fall of the program too.
    private bool Fails(string[] filter) => Run(filter, stop: true).Exit is not (0 or 8);

    private (int Exit, string Said) Run(string[] filter, bool stop)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = _folder };
        foreach (var argument in (string[])[Path.Combine(_folder, _tests + ".dll"), "--progress", "off", "--no-ansi", .. stop ? (string[])["--stop-on-fail", "on"] : [], .. filter])
        {
            start.ArgumentList.Add(argument);
        }

        using var run = Process.Start(start)!;
        var (said, wrong) = (run.StandardOutput.ReadToEndAsync(), run.StandardError.ReadToEndAsync());
        if (!run.WaitForExit(_limit))
        {
            run.Kill(entireProcessTree: true);
            return (-1, "");
        }

        return (run.ExitCode, said.Result + wrong.Result);
    }

    [GeneratedRegex(@"^failed ([\w.]+)", RegexOptions.Multiline)]
    private static partial Regex Failed();
}
