using System.Text.Json;
using System.Xml.Linq;

namespace Portwright.Cli.Tests;

/// <summary>Whose work ships with the program is said beside it.</summary>
public sealed class NoticesTests
{
    /// <summary>First two cells of each row: package and version.</summary>
    private static readonly Dictionary<string, string> Noticed = Repository.Lines("THIRD-PARTY-NOTICES.md")
        .Where(l => l.StartsWith("| ", StringComparison.Ordinal))
        .Select(l => l.Split('|'))
        .ToDictionary(c => c[1].Trim().Split(']')[0].TrimStart('['), c => c[2].Trim());

    [Fact]
    public void Every_package_that_ships_stands_in_the_notices_with_its_version()
    {
        var versions = XDocument.Load(Repository.Path("Directory.Packages.props")).Descendants("PackageVersion")
            .ToDictionary(e => e.Attribute("Include")!.Value, e => e.Attribute("Version")!.Value);
        var asked = Directory.EnumerateFiles(Repository.Path("src"), "*.csproj", SearchOption.AllDirectories)
            .SelectMany(f => XDocument.Load(f).Descendants("PackageReference"))
            .Where(e => e.Attribute("PrivateAssets")?.Value != "all")
            .Select(e => e.Attribute("Include")!.Value).Distinct().ToList();
        Assert.NotEmpty(asked);
        Assert.All(asked, p => Assert.True(Noticed.GetValueOrDefault(p) == versions[p], $"THIRD-PARTY-NOTICES.md lacks {p} {versions[p]}. Run: dotnet run tools/notices.cs"));
    }

    [Fact]
    public void So_does_what_those_packages_bring_along()
    {
        using var built = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "portwright.deps.json")));
        var brought = built.RootElement.GetProperty("libraries").EnumerateObject()
            .Where(l => l.Value.GetProperty("type").GetString() == "package").Select(l => l.Name.Split('/')).ToList();
        Assert.Contains(brought, b => b[0] == "SQLitePCLRaw.lib.e_sqlite3");
        Assert.All(brought, b => Assert.True(Noticed.GetValueOrDefault(b[0]) == b[1], $"THIRD-PARTY-NOTICES.md lacks {b[0]} {b[1]}. Run: dotnet run tools/notices.cs"));
    }

    [Fact]
    public void Licence_and_notices_lie_in_the_published_folder()
    {
        var published = XDocument.Load(Repository.Path("src/Portwright.Cli/Portwright.Cli.csproj")).Descendants("None")
            .Where(e => e.Attribute("CopyToPublishDirectory") is not null)
            .SelectMany(e => e.Attribute("Include")!.Value.Split(';')).Select(p => Path.GetFileName(p)).ToList();
        Assert.Equal(["LICENSE", "THIRD-PARTY-NOTICES.md"], published.Order(StringComparer.Ordinal));
        Assert.All(published, f => Assert.True(File.Exists(Repository.Path(f)), f));
    }
}
