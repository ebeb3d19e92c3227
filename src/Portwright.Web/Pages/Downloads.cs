namespace Portwright.Web.Pages;

/// <summary>What a port sheet can be taken along as.</summary>
internal static class Downloads
{
    public static IReadOnlyList<(string Kind, string Name)> Kinds { get; } =
    [
        ("svg", "Figure, SVG"),
        ("png", "Figure, PNG"),
    ];
}
