using System.Text.RegularExpressions;

namespace Portwright.Cli.Tests;

/// <summary>Who follows a recipe of CONTRIBUTING.md finds what it names.</summary>
public sealed partial class RecipeTests
{
    private static readonly string Recipes = string.Join('\n', Repository.Lines("CONTRIBUTING.md").SkipWhile(l => l != "## Recipes"));

    private static readonly List<string> Sources =
    [
        .. new[] { "src", "tests" }.SelectMany(d => Directory.EnumerateFiles(Repository.Path(d), "*.cs", SearchOption.AllDirectories)).Where(f => !Built().IsMatch(f)),
    ];

    [Fact]
    public void Every_file_a_recipe_names_is_there_once()
    {
        var named = NamedFile().Matches(Recipes).Select(m => m.Groups[1].Value).Distinct().ToList();
        Assert.True(named.Count > 10, $"{named.Count} files");
        Assert.All(named, n => Assert.True(Sources.Count(f => Path.GetFileName(f) == n) == 1, $"CONTRIBUTING.md names {n}."));
    }

    [Fact]
    public void Every_test_a_recipe_names_is_there()
    {
        var named = NamedTest().Matches(Recipes).Select(m => m.Groups[1].Value).Distinct().ToList();
        Assert.True(named.Count > 8, $"{named.Count} tests");
        var tests = string.Concat(Sources.Where(f => f.Contains("tests", StringComparison.Ordinal)).Select(File.ReadAllText));
        Assert.All(named, n => Assert.True(tests.Contains($" {n}(", StringComparison.Ordinal), $"CONTRIBUTING.md names the test {n}."));
    }

    [GeneratedRegex(@"`(\w+\.cs)`")] private static partial Regex NamedFile();

    [GeneratedRegex(@"`([A-Z]\w*_\w+)`")] private static partial Regex NamedTest();

    [GeneratedRegex(@"[/\\](bin|obj)[/\\]")] private static partial Regex Built();
}
