using System.Reflection;
using System.Text.RegularExpressions;
using Portwright.Shop.Ports;

namespace Portwright.Cli.Tests;

/// <summary>Who made a sheet can be told from it years later.</summary>
public sealed partial class VersionTests
{
    private static readonly string Version = typeof(CommandLine).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion;

    [Fact]
    public void The_version_is_a_semantic_one() => Assert.Matches(Semantic(), Version);

    [Fact]
    public void The_sheet_names_the_version_the_command_prints() => Assert.Equal($"Portwright {Version.Split('+')[0]}", SheetOf.Program);

    [Fact]
    public void The_list_of_changes_has_a_heading_for_this_version()
    {
        var headings = Repository.Lines("CHANGELOG.md").Where(l => l.StartsWith("## ", StringComparison.Ordinal)).Select(l => l[3..].Trim()).ToList();
        var coming = Version.Split('+')[0].Split('-');
        // A release has its number; what is on its way to one may still stand under "Next".
        if (coming.Length == 1) Assert.Contains(coming[0], headings);
        else Assert.True(headings.Contains(coming[0]) || headings.Contains("Next"), $"CHANGELOG.md has neither \"## {coming[0]}\" nor \"## Next\".");
    }

    // https://semver.org, without a pre-release of more than identifiers parted by dots.
    [GeneratedRegex(@"^(0|[1-9]\d*)\.(0|[1-9]\d*)\.(0|[1-9]\d*)(-[0-9A-Za-z-]+(\.[0-9A-Za-z-]+)*)?(\+[0-9A-Za-z.-]+)?$")]
    private static partial Regex Semantic();
}
