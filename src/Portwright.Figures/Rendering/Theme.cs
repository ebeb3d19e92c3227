namespace Portwright.Figures;

/// <summary>The colour of every role, for pictures and paper. A page takes its colours from its own style sheet instead.</summary>
/// <param name="Name"><c>paper</c>, <c>lamp</c> or <c>white</c>.</param>
public sealed record Theme(
    string Name,
    string Ground,
    string Panel,
    string Ink,
    string Quiet,
    string Hairline,
    string Blue,
    string Brass,
    string Thin,
    string Wash,
    string Noise)
{
    /// <summary>Light.</summary>
    public static Theme Paper { get; } = new(
        "paper", "#f3f1ea", "#fbfaf6", "#1a2227", "#5d686e", "#cfd0c9", "#1d4f91", "#9e5c0e", "#a3262a", "#e0e4ea", "#dddcd4");

    /// <summary>Dark.</summary>
    public static Theme Lamp { get; } = new(
        "lamp", "#14181b", "#1b2125", "#ece9e1", "#9aa5aa", "#363f45", "#83b4ee", "#e3a857", "#f08a7c", "#22303f", "#2d3437");

    /// <summary>The light colours on a white sheet, for the printer.</summary>
    public static Theme White { get; } = Paper with { Name = "white", Ground = "#ffffff", Panel = "#ffffff", Wash = "#e8ecf2", Noise = "#e3e3de" };

    /// <summary>The colour of a role, <c>#rrggbb</c>.</summary>
    public string Of(Role role) => role switch
    {
        Role.Ground => Ground,
        Role.Panel => Panel,
        Role.Ink => Ink,
        Role.Quiet => Quiet,
        Role.Hairline => Hairline,
        Role.Blue => Blue,
        Role.Brass => Brass,
        Role.Thin => Thin,
        Role.Wash => Wash,
        Role.Noise => Noise,
        _ => throw new ArgumentOutOfRangeException(nameof(role), role, "One of the roles."),
    };
}
