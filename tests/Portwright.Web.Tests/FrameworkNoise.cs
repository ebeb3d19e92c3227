using System.Text.RegularExpressions;

namespace Portwright.Web.Tests;

/// <summary>
/// What the framework's own script throws where a page is left, or its server killed, while its live line is open or still being set up.
/// No page can catch it. It is known by its exact words and by nothing but that script standing in its trace: the same words out of a page's
/// own script are a fault, and so is a line that was refused.
/// </summary>
internal static partial class FrameworkNoise
{
    public static bool Is(string error)
    {
        var lines = error.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        return Words().IsMatch(lines[0]) && lines.Length > 1 && lines.Skip(1).All(l => l.Contains("/_framework/blazor.web.", StringComparison.Ordinal));
    }

    // The first word of the second is a class of the framework, as short as its packing made it.
    [GeneratedRegex(@"^(Error: Circuit host not initialized\.|\w+: Failed to complete negotiation with the server: TypeError: Failed to fetch|TypeError: Failed to fetch|Error: WebSocket closed with status code: 1006 \(.*\)\.)$")]
    private static partial Regex Words();
}
