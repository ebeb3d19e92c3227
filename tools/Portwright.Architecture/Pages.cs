using System.Globalization;
using System.Text;

namespace Portwright.Architecture;

/// <summary>A file of the repository and what it must hold.</summary>
/// <param name="Name">From the root, with slashes.</param>
public sealed record MadeFile(string Name, string Text)
{
    public bool IsCurrent(string root) =>
        Path.Combine(root, Name) is var file && File.Exists(file) && File.ReadAllText(file).ReplaceLineEndings("\n") == Text;
}

/// <summary>The pictures and lists that are made from the source.</summary>
public static class Pages
{
    private const string Page = "docs/architecture.md", Begin = "<!-- made: {0} -->", End = "<!-- end -->";

    public static IReadOnlyList<MadeFile> Of(SourceTree tree)
    {
        ArgumentNullException.ThrowIfNull(tree);
        var (rooms, shop) = (tree.Projects(), tree.Folders("Shop"));
        var page = File.ReadAllText(Path.Combine(tree.Root, Page)).ReplaceLineEndings("\n");
        page = Between(page, "rooms", List(rooms, "room"));
        page = Between(page, "shop", List(shop, "folder") + Ties(shop));
        page = Between(page, "way", Way(tree));
        return
        [
            new("docs/pictures/rooms.svg", RoomsPicture.Of(rooms, "The rooms: each stands under those it uses")),
            new("docs/pictures/shop.svg", RoomsPicture.Of(shop, "The folders of the shop: each stands under those it uses")),
            new("docs/pictures/reading.svg", ReadingsWay.Picture(tree)),
            new(Page, page),
        ];
    }

    /// <summary>Rooms in the order of the picture, what each uses as written, what follows from others included.</summary>
    private static string List(UseGraph uses, string named)
    {
        var levels = uses.Levels();
        var list = new StringBuilder($"| {named} | uses |\n|---|---|\n");
        foreach (var room in uses.Rooms.OrderBy(r => levels[r]).ThenBy(r => r, StringComparer.Ordinal))
            list.Append(CultureInfo.InvariantCulture, $"| {room} | {(uses.UsedBy(room).Count > 0 ? string.Join(", ", uses.UsedBy(room).OrderBy(r => levels[r]).ThenBy(r => r, StringComparer.Ordinal)) : "nothing of ours")} |\n");
        return list.ToString();
    }

    private static string Ties(UseGraph uses)
    {
        var ties = uses.Ties().ToList();
        return ties.Count == 0
            ? "\nNo folder uses another that uses it in turn.\n"
            : $"\nThese use one another, so that neither stands above the other (dashed in the picture): {string.Join("; ", ties.Select(t => $"{t.One} and {t.Other}"))}.\n";
    }

    private static string Way(SourceTree tree)
    {
        var list = new StringBuilder("| step | held by | in | made by | in |\n|---|---|---|---|---|\n");
        foreach (var s in ReadingsWay.Steps) list.Append(CultureInfo.InvariantCulture, $"| {s.Step} | `{s.Carried}` | {tree.PlaceOf(s.Carried)} | `{s.By}` | {tree.PlaceOf(s.By)} |\n");
        return list.ToString();
    }

    private static string Between(string page, string name, string text)
    {
        var mark = Begin.Replace("{0}", name, StringComparison.Ordinal);
        var from = page.IndexOf(mark, StringComparison.Ordinal);
        var to = from < 0 ? -1 : page.IndexOf(End, from, StringComparison.Ordinal);
        if (to < 0) throw new InvalidOperationException($"{Page} has no \"{mark}\" with \"{End}\" after it. Put both back where the list belongs.");
        return page[..from] + mark + "\n" + text + page[to..];
    }
}
