using System.Text.RegularExpressions;

namespace Portwright.Cli.Calc;

/// <summary>A line cut into words as a shell does it: at spaces, and not inside quote marks.</summary>
internal static partial class ShellWords
{
    public static List<string> Split(string line) =>
        [.. Word().Matches(line).Select(m => m.Groups["quoted"].Success ? m.Groups["quoted"].Value : m.Value)];

    // A mark behind a number is inches, not the beginning of words.
    [GeneratedRegex("""(?<=^|\s)"(?<quoted>[^"]*)"(?=\s|$)|\S+""")] private static partial Regex Word();
}
