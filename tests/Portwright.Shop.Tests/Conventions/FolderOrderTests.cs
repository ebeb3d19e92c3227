using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using Portwright.Shop.Record;

namespace Portwright.Shop.Tests.Conventions;

/// <summary>The folders of the shop stand one above the other, and nothing reaches up: data goes one way.</summary>
public sealed partial class FolderOrderTests
{
    private const string Root = "Portwright.Shop.";

    /// <summary>From the ground up; a folder may use those before it.</summary>
    private static readonly (string Folder, string Why)[] Order =
    [
        ("Units", "a typed number and its unit rest on nothing"),
        ("Words", "a sentence holds numbers with their units, whatever it is about"),
        ("Entering", "a typed value is judged by numbers around it, wherever they come from"),
        ("Judgement", "chances are worked out from numbers alone, whatever they are about"),
        ("Record", "facts are made of typed numbers, and advice taken is kept as the sentence it was"),
        ("Heads", "how the ports lie in the metal is read off the record alone"),
        ("Walls", "what is left of the metal is read off the record alone"),
        ("Sections", "an area is reduced from a section's own numbers, without the bench"),
        ("Bench", "what the bench was that day comes before anything it measured"),
        ("Reduction", "sweeps are reduced with the bench as it stood"),
        ("Plan", "the engine in full, with what the heads say of it, before any port is held against it"),
        ("Rings", "a ring is read in a section, and its air held against the bench's flow"),
        ("Balls", "a ball is read in a section by the flow it costs"),
        ("Sheets", "a sheet says what the sweeps of one cut show"),
        ("Survey", "a survey adds to the sheet what was seen in the port"),
        ("Budgets", "where a doubt comes from is said once everything a result can rest on has been reduced"),
        ("Families", "a port is held against its sisters, by their surveys"),
        ("Findings", "what a finding is and what a gain is worth, by the survey"),
        ("Findings.Rules", "each rule looks at a survey and knows of no other"),
        ("Diagnosis", "the catalogue asks every rule"),
        ("Targets", "what that engine asks is held against the survey, by the reckoning of the findings"),
        ("Runs", "the engine is run with the ports, and its sheet says the targets too"),
        ("Cutting", "what to cut next weighs findings by the engine's answer"),
        ("Ports", "one port at one cut is gathered once, and what it says is said once"),
        ("Trials", "an entry is tried with all that would be made of it"),
    ];

    [Fact]
    public void Nothing_in_the_compiled_shop_reaches_up()
    {
        using var shop = new TypesReached(typeof(Fact).Assembly.Location);
        var arrows = shop.All().ToList();
        Assert.True(arrows.Count > 500, "The compiled shop was not read.");
        None(arrows.Where(a => a.From.Space.StartsWith(Root, StringComparison.Ordinal) && a.To.Space.StartsWith(Root, StringComparison.Ordinal))
            .Where(a => Place(a.From.Space) < Place(a.To.Space)).Select(a => $"{a.From} reaches up to {a.To}"));
    }

    /// <summary>A constant leaves no trace in compiled code; the line that lets it be named does.</summary>
    [Fact]
    public void No_source_of_the_shop_opens_a_folder_above_its_own()
    {
        var files = Sources();
        Assert.True(files.Count > 100, "The sources of the shop were not found.");
        None(files.SelectMany(f => Opened().Matches(f.Text).Select(m => (f.Name, f.Space, Opens: m.Groups[1].Value)))
            .Where(u => Place(u.Space) < Place(u.Opens)).Select(u => $"{u.Name} opens {u.Opens}, which stands above it"));
    }

    [Fact]
    public void A_type_lies_in_the_folder_its_namespace_names() =>
        None(Sources().Where(f => f.Space != Root + f.Folder).Select(f => $"{f.Name} lies in {f.Folder} and says {f.Space}"));

    /// <summary>The reader of compiled code sees what it is there to see: a base, a member, a body, an attribute.</summary>
    [Fact]
    public void An_arrow_is_seen_wherever_it_leaves_the_type()
    {
        using var own = new TypesReached(typeof(FolderOrderTests).Assembly.Location);
        var seen = own.All().Where(a => a.To == new TypeName("Portwright.Shop.Tests.Conventions", nameof(Reached))).Select(a => a.From.Name).ToHashSet();
        Assert.Equal([nameof(ByAttribute), nameof(ByBase), nameof(ByBody), nameof(ByBound), nameof(ByElement), nameof(ByField), nameof(ByLambda)], seen.Where(n => n.StartsWith("By", StringComparison.Ordinal)).Order());
    }

    /// <summary>Every sentence whole, a line each.</summary>
    private static void None(IEnumerable<string> wrong)
    {
        var lines = wrong.Order(StringComparer.Ordinal).ToList();
        Assert.True(lines.Count == 0, string.Join('\n', lines));
    }

    private static int Place(string space)
    {
        var at = Array.FindIndex(Order, f => Root + f.Folder == space);
        return at >= 0 ? at : throw new InvalidOperationException($"{space} has no place in the order of folders. Give it one, with its reason.");
    }

    private static List<(string Name, string Folder, string Space, string Text)> Sources([CallerFilePath] string here = "")
    {
        var up = new DirectoryInfo(Path.GetDirectoryName(here)!);
        while (up is not null && !File.Exists(Path.Combine(up.FullName, "Portwright.slnx"))) up = up.Parent;
        var root = Path.Combine(up?.FullName ?? "", "src", "Portwright.Shop");
        return [.. Directory.EnumerateFiles(root, "*.cs", SearchOption.AllDirectories)
            .Select(f => (Path: Path.GetRelativePath(root, f), Text: File.ReadAllText(f)))
            .Where(f => !f.Path.StartsWith("obj", StringComparison.Ordinal) && !f.Path.StartsWith("bin", StringComparison.Ordinal))
            .Select(f => (f.Path, Path.GetDirectoryName(f.Path)!.Replace(Path.DirectorySeparatorChar, '.'), Own().Match(f.Text).Groups[1].Value, f.Text))];
    }

    [GeneratedRegex(@"^using (?:static |\w+ = )?(Portwright\.Shop\.(?:Findings\.Rules|\w+))[.;]?", RegexOptions.Multiline)]
    private static partial Regex Opened();

    [GeneratedRegex(@"^namespace ([\w.]+);", RegexOptions.Multiline)]
    private static partial Regex Own();
}

internal class Reached
{
    public static int Nothing() => 0;
}

internal sealed class ByBase : Reached;

internal sealed class ByField
{
    public Reached? Of { get; set; }
}

internal sealed class ByElement
{
    public IReadOnlyList<(int, Reached[])> All => [];
}

internal sealed class ByBody
{
    public static int Call() => Reached.Nothing();
}

internal sealed class ByLambda
{
    public static Func<int, object> Make() => n => n > 0 ? new Reached() : new object();
}

internal sealed class ByBound
{
    public static T Same<T>(T of) where T : Reached => of;
}

[AttributeUsage(AttributeTargets.Class)]
internal sealed class NamesAttribute(Type of) : Attribute
{
    public Type Of => of;
}

[Names(typeof(Reached))]
internal sealed class ByAttribute;
