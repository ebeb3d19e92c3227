using System.Reflection;
using System.Text.RegularExpressions;
using Portwright.Engine.Runs;
using Portwright.Geometry;
using Portwright.Physics.TestPiece;

namespace Portwright.Cli.Tests;

/// <summary>The list of formulas leads to the code it names.</summary>
public sealed partial class FormulaIndexTests
{
    private const BindingFlags Any = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.Instance;

    private static readonly string[] Rows =
        [.. Repository.Lines("docs/formulas.md").Where(l => l.StartsWith("| ", StringComparison.Ordinal) && l.Contains('`', StringComparison.Ordinal))];

    private static readonly HashSet<string> Members =
    [
        .. new[] { typeof(Outline), typeof(Nozzle), typeof(EngineRun) }.SelectMany(t => t.Assembly.GetTypes())
            .SelectMany(t => t.GetMembers(Any).Select(m => $"{t.Name.Split('`')[0]}.{m.Name}")),
    ];

    [Fact]
    public void Every_member_named_exists()
    {
        var named = Rows.SelectMany(r => Named().Matches(r).Select(m => m.Groups[1].Value)).ToList();
        Assert.True(named.Count > 100, $"{named.Count} members");
        Assert.All(named, n => Assert.Contains(n, Members));
        Assert.Equal(named.Count, named.Distinct().Count());
    }

    [Fact]
    public void Every_formula_has_a_source_and_a_page()
    {
        Assert.All(Rows, r => Assert.DoesNotContain("|  |", r, StringComparison.Ordinal));
        var pages = Rows.Where(r => !r.EndsWith("| none yet |", StringComparison.Ordinal)).ToList();
        Assert.True(pages.Count > Rows.Length - 5, $"{Rows.Length - pages.Count} formulas without a page");
        Assert.All(pages, r => Assert.True(File.Exists(Repository.Path("docs/" + Page().Match(r).Groups[1].Value)), r));
    }

    [Fact]
    public void Every_type_that_cites_a_source_is_in_the_list()
    {
        var listed = Rows.SelectMany(r => Named().Matches(r).Select(m => m.Groups[1].Value.Split('.')[0])).ToHashSet();
        var citing = new[] { "Geometry", "Physics", "Engine" }
            .SelectMany(p => Directory.EnumerateFiles(Repository.Path("src/Portwright." + p), "*.cs", SearchOption.AllDirectories))
            .Where(f => !Built().IsMatch(f) && File.ReadLines(f).Any(l => Cites().IsMatch(l)))
            .Select(f => Path.GetFileName(f).Split('.')[0]).Distinct().ToList();
        Assert.True(citing.Count > 40, $"{citing.Count} types");
        Assert.All(citing.Except(Carriers), t => Assert.Contains(t, listed));
    }

    /// <summary>What a rule's source is, and the other half of the kernel that is listed.</summary>
    private static readonly string[] Carriers = ["TargetRule", "PipeKernelPasses"];

    [GeneratedRegex(@"`(\w+\.\w+)`")] private static partial Regex Named();

    [GeneratedRegex(@"\]\((theory/[\w-]+\.md)\)")] private static partial Regex Page();

    // A comment that names an equation, or a work by its year.
    [GeneratedRegex(@"///.*(\bequations? |\beq\. |\((1[89]|20)\d\d\))")] private static partial Regex Cites();

    [GeneratedRegex(@"[/\\](bin|obj)[/\\]")] private static partial Regex Built();
}
