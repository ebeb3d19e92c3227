using System.Collections.Immutable;

namespace Portwright.Figures;

/// <summary>One thing on a drawing. Marks are drawn in order, later ones over earlier ones.</summary>
public abstract record Mark;

/// <summary>Straight pieces of line, each from its first to its second place; one mark, so that a hatch is one mark.</summary>
public sealed record Segments(ImmutableArray<(Place From, Place To)> Pieces, Stroke Stroke) : Mark;

/// <summary>A line through places in turn.</summary>
public sealed record Polyline(ImmutableArray<Place> Places, Stroke Stroke) : Mark;

/// <summary>A closed shape.</summary>
public sealed record Area(ImmutableArray<Place> Places, Role? Fill, Stroke? Outline = null) : Mark;

/// <summary>A circle; hollow where there is no fill.</summary>
public sealed record Circle(Place Centre, double Radius, Role? Fill, Stroke? Outline = null) : Mark;

/// <summary>A rectangle with rounded corners.</summary>
public sealed record RoundedBox(Box Box, double Radius, Role? Fill, Stroke? Outline = null) : Mark;

/// <summary>Layers of colour of a map, later over earlier, cut off at a closed line. The colours are a published map's, the same in every theme.</summary>
/// <param name="Within">Nothing is painted outside it.</param>
public sealed record Shades(ImmutableArray<Place> Within, ImmutableArray<Shade> Layers) : Mark;

/// <summary>One colour over closed lines; a line inside another leaves a hole.</summary>
/// <param name="Colour"><c>#rrggbb</c>.</param>
public sealed record Shade(ImmutableArray<ImmutableArray<Place>> Rings, string Colour);

/// <summary>Where a text is held by its place.</summary>
public enum Anchor
{
    Start,
    Middle,
    End,
}

/// <summary>Weights of the one typeface.</summary>
public enum Weight
{
    Regular = 400,
    SemiBold = 600,
    Bold = 700,
}

/// <summary>One line of text; <paramref name="At"/> lies on its baseline.</summary>
public sealed record Text(Place At, string Words, double Size, Role Role, Anchor Anchor = Anchor.Start, Weight Weight = Weight.Regular) : Mark
{
    /// <summary>The room the line takes, from the top of its tallest letter to the bottom of its deepest.</summary>
    public Box Bounds()
    {
        var width = Lettering.Width(Words, Size, Weight);
        var left = Anchor switch { Anchor.Start => At.X, Anchor.Middle => At.X - width / 2, _ => At.X - width };
        return new Box(left, At.Y - Lettering.Ascent * Size, width, (Lettering.Ascent + Lettering.Descent) * Size);
    }
}

/// <summary>Marks with a name, for a page's own script to move or colour; elsewhere drawn as they are.</summary>
public sealed record Named(string Key, ImmutableArray<Mark> Marks) : Mark;

/// <summary>Marks that can be pointed at, touched or reached by keyboard in a page, and say something when they are.</summary>
/// <param name="Title">The accessible name, and what is said.</param>
/// <param name="Marks">What is seen always.</param>
/// <param name="Hit">The room that answers a finger.</param>
/// <param name="Tip">Drawn only while pointed at; left out of pictures and paper.</param>
/// <param name="Href">Where touching leads; null where it leads nowhere.</param>
/// <param name="Key">Names the thing for a page's own use: <c>data-key</c>.</param>
/// <param name="Corner">Radius of the room's corners; half its width makes it round.</param>
public sealed record Touchable(
    string Title,
    ImmutableArray<Mark> Marks,
    Box Hit,
    ImmutableArray<Mark> Tip,
    string? Href = null,
    string? Key = null,
    double Corner = 3) : Mark;
