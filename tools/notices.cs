// Writes THIRD-PARTY-NOTICES.md from the packages the restored program takes with it.
//   dotnet run tools/notices.cs               writes it
//   dotnet run tools/notices.cs -- --check    ends with 1 where it is not current
// Needs a restore before: dotnet restore src/Portwright.Cli. Ends with 1 at a licence that has no text in tools/licences.
using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Xml.Linq;

var root = Path.GetDirectoryName((string)AppContext.GetData("EntryPointFileDirectoryPath")!)!;
var assets = Path.Combine(root, "src/Portwright.Cli/obj/project.assets.json");
if (!File.Exists(assets)) return Fail("Nothing is restored. Run: dotnet restore src/Portwright.Cli");

using var restored = JsonDocument.Parse(File.ReadAllText(assets));
var kept = restored.RootElement.GetProperty("packageFolders").EnumerateObject().Select(f => f.Name).ToList();
var framework = restored.RootElement.GetProperty("project").GetProperty("frameworks").EnumerateObject().First();
var direct = framework.Value.GetProperty("dependencies").EnumerateObject().ToList();
// A package of the build alone does not ship; one the SDK adds has the SDK's version, which differs from machine to machine.
var ofTheSdk = Named("autoReferenced", v => v.GetBoolean());
var ofTheBuild = Named("suppressParent", v => v.GetString() == "All").Except(ofTheSdk).ToHashSet();

var packages = new List<Package>();
foreach (var library in restored.RootElement.GetProperty("libraries").EnumerateObject().Where(l => l.Value.GetProperty("type").GetString() == "package"))
{
    var (name, version) = (library.Name.Split('/')[0], library.Name.Split('/')[1]);
    if (ofTheBuild.Contains(name)) continue;
    var at = kept.Select(f => Path.Combine(f, library.Value.GetProperty("path").GetString()!)).First(Directory.Exists);
    var metadata = XDocument.Load(Directory.GetFiles(at, "*.nuspec").Single()).Root!.Elements().Single(e => e.Name.LocalName == "metadata");
    string? Said(string element) => metadata.Elements().FirstOrDefault(e => e.Name.LocalName == element)?.Value.Trim();
    var licence = Said("license") ?? "none stated";
    packages.Add(new Package(name, ofTheSdk.Contains(name) ? "the SDK's" : version, licence, Said("copyright") ?? $"Copyright {Said("authors")}", Said("projectUrl") ?? ""));
}

packages.Sort((a, b) => string.CompareOrdinal(a.Name.ToUpperInvariant(), b.Name.ToUpperInvariant()));
// Where a package lets one choose, the first one with a text here is taken.
string? Taken(Package p) => p.Licence.Split(" OR ").FirstOrDefault(l => File.Exists(Text(l)));
if (packages.Find(p => Taken(p) is null) is { } unknown)
    return Fail($"{unknown.Name} {unknown.Version} is under \"{unknown.Licence}\", which has no text in tools/licences. Permissive? Then add the text.");

var page = new StringBuilder();
page.Append("""
    # Notices of others' work

    Portwright itself is under the [MIT licence](LICENSE). Its program folders hold the work of others, all under permissive licences. Made by
    `dotnet run tools/notices.cs` from the packages' own words.

    | package | version | licence | whose |
    |---|---|---|---|

    """);
foreach (var p in packages)
    page.Append(CultureInfo.InvariantCulture, $"| {(p.Url.Length > 0 ? $"[{p.Name}]({p.Url})" : p.Name)} | {p.Version} | {p.Licence}{(p.Licence == Taken(p) ? "" : $" (taken under {Taken(p)})")} | {p.Copyright} |\n");
page.Append("""

    The typeface IBM Plex Sans Condensed is inside the program under the SIL Open Font License 1.1, below. SQLite, inside SQLitePCLRaw.lib.e_sqlite3, is in the public
    domain. Skia and the libraries inside it, the .NET runtime and ASP.NET Core bring long notices of their own: the folder `notices` beside the
    published program holds them as their makers ship them.

    """);
foreach (var licence in packages.Select(p => Taken(p)!).Distinct().Order(StringComparer.Ordinal)) Quote(licence, Text(licence));
Quote("IBM Plex Sans Condensed: OFL-1.1", Path.Combine(root, "src/Portwright.Figures/Fonts/OFL.txt"));

var notices = Path.Combine(root, "THIRD-PARTY-NOTICES.md");
var now = page.ToString();
if (args.Contains("--check"))
    return File.Exists(notices) && File.ReadAllText(notices).ReplaceLineEndings("\n") == now ? 0 : Fail("THIRD-PARTY-NOTICES.md is not current. Run: dotnet run tools/notices.cs");
File.WriteAllText(notices, now);
return 0;

HashSet<string> Named(string flag, Func<JsonElement, bool> holds) =>
    [.. direct.Where(d => d.Value.TryGetProperty(flag, out var said) && holds(said)).Select(d => d.Name)];

string Text(string licence) => Path.Combine(root, "tools/licences", licence + ".txt");

void Quote(string heading, string file) =>
    page.Append(CultureInfo.InvariantCulture, $"\n## {heading}\n\n```text\n{File.ReadAllText(file).ReplaceLineEndings("\n").Trim('\n')}\n```\n");

static int Fail(string why)
{
    Console.Error.WriteLine(why);
    return 1;
}

internal sealed record Package(string Name, string Version, string Licence, string Copyright, string Url);
