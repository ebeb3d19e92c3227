using Portwright.Shop.Cutting;
using Portwright.Shop.Diagnosis;
using Portwright.Shop.Findings;
using Portwright.Shop.Tests.Words;

namespace Portwright.Shop.Tests.Diagnosis;

/// <summary>The guide's page of findings says what the code does.</summary>
public sealed class FindingsPageTests
{
    /// <summary>The catalogue, and the conclusion from it.</summary>
    private static IReadOnlyList<FindingRule> All { get; } = [.. Catalogue.All, new NothingWorthCutting()];

    [Fact]
    public void The_guides_page_is_that_of_the_catalogue()
    {
        var now = FindingsPage.Text(All);
        if (now == File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Guide", "findings.md")).ReplaceLineEndings("\n"))
        {
            return;
        }

        var received = Path.Combine(AppContext.BaseDirectory, "findings.md");
        File.WriteAllText(received, now);
        Assert.Fail($"The catalogue has changed. Look at {received} and, where it is meant, copy it to docs/guide.");
    }

    [Fact]
    public void Every_finding_says_all_it_owes_and_has_a_key_of_its_own()
    {
        Assert.All(All, r => Assert.All(
            new[] { r.Evidence, r.Test, r.ElseExplains, r.LookFirst, r.Cut, r.Risk }.Select(s => s.Us()).Concat([r.Key, r.Name, r.Source]), Assert.NotEmpty));
        // Where a citation came from is marked in the code and in docs/theory/sources.md, not before the porter.
        Assert.All(All, r => Assert.DoesNotContain("from memory", r.Source, StringComparison.OrdinalIgnoreCase));
        Assert.All(All, r => Assert.Matches("^[a-z]+(-[a-z0-9]+)*$", r.Key));
        Assert.Equal(All.Count, All.Select(r => r.Key).Distinct().Count());
    }
}
