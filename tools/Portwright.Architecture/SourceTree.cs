using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Portwright.Architecture;

/// <summary>What the source says of itself: which project refers to which, which folder uses which, where a type lives.</summary>
/// <param name="Root">The folder of the solution.</param>
public sealed partial record SourceTree(string Root)
{
    private readonly Dictionary<string, string> _code = [];

    private string Source => Path.Combine(Root, "src");

    /// <summary>The tree a folder lies in.</summary>
    /// <exception cref="DirectoryNotFoundException">No solution lies above the folder.</exception>
    public static SourceTree Above(string folder)
    {
        for (var at = new DirectoryInfo(folder); at is not null; at = at.Parent)
            if (File.Exists(Path.Combine(at.FullName, "Portwright.slnx"))) return new(at.FullName);
        throw new DirectoryNotFoundException($"No Portwright.slnx lies above {folder}.");
    }

    /// <summary>The projects under src and their references to one another.</summary>
    public UseGraph Projects()
    {
        var uses = new UseGraph();
        foreach (var file in Directory.EnumerateFiles(Source, "*.csproj", SearchOption.AllDirectories).Order(StringComparer.Ordinal))
        {
            var room = Room(file);
            uses.Add(room);
            foreach (var reference in XDocument.Load(file).Descendants("ProjectReference"))
                uses.Add(room, Room(reference.Attribute("Include")!.Value));
        }

        return uses;
    }

    /// <summary>A project's folders and which namespaces of that project their files name; a folder is its namespace.</summary>
    public UseGraph Folders(string project)
    {
        var uses = new UseGraph();
        var root = Path.Combine(Source, "Portwright." + project);
        var folders = Directory.EnumerateDirectories(root).Where(d => Files(d).Any()).Select(d => Path.GetFileName(d)).ToHashSet(StringComparer.Ordinal);
        foreach (var folder in folders.Order(StringComparer.Ordinal))
        {
            uses.Add(folder);
            var named = Files(Path.Combine(root, folder)).SelectMany(f => Named(project).Matches(Code(f)).Select(m => m.Groups[1].Value));
            foreach (var other in named.Where(n => n != folder && folders.Contains(n))) uses.Add(folder, other);
        }

        return uses;
    }

    /// <summary>Project and folder of the file that declares a type, as <c>Shop/Units</c>; the first where it has several parts.</summary>
    /// <exception cref="InvalidOperationException">No file or more than one folder declares it.</exception>
    public string PlaceOf(string type)
    {
        var declared = new Regex($@"\b(?:class|record|struct|interface|enum) {type}\b(?!\.)");
        var places = Files(Source).Where(f => declared.IsMatch(Code(f))).Select(f => Path.GetRelativePath(Source, Path.GetDirectoryName(f)!)["Portwright.".Length..].Replace('\\', '/')).Distinct().ToList();
        return places.Count == 1
            ? places[0]
            : throw new InvalidOperationException($"The way of a reading names {type}, which {(places.Count == 0 ? "nothing declares" : "stands in " + string.Join(" and ", places))}. Name the type that took its place in ReadingsWay.cs.");
    }

    private static IEnumerable<string> Files(string folder) =>
        Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories).Where(f => !Built().IsMatch(f)).Order(StringComparer.Ordinal);

    private static string Room(string project) => Path.GetFileNameWithoutExtension(project.Replace('\\', '/'))["Portwright.".Length..];

    // What a comment names is not used.
    private string Code(string file) => _code.TryGetValue(file, out var read) ? read : _code[file] = Comment().Replace(File.ReadAllText(file), "");

    private static Regex Named(string project) => new($@"\bPortwright\.{project}\.(\w+)");

    [GeneratedRegex(@"//[^\n]*")] private static partial Regex Comment();

    [GeneratedRegex(@"[/\\](bin|obj)[/\\]")] private static partial Regex Built();
}
