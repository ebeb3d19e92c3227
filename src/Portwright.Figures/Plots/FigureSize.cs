namespace Portwright.Figures;

/// <summary>Room of a figure and the size of its letters, all in the drawing's unit (a pixel in a page, a point on paper).</summary>
/// <param name="Text">Size of the axis letters; line widths and dots follow it.</param>
public sealed record FigureSize(double Width, double Height, double Text)
{
    /// <summary>Beside or under an entry on a desk screen.</summary>
    public static FigureSize Wide { get; } = new(760, 560, 15);

    /// <summary>A phone held upright: no letter under 12.</summary>
    public static FigureSize Narrow { get; } = new(344, 400, 12.5);

    /// <summary>The width of a printed sheet.</summary>
    public static FigureSize Paper { get; } = new(523, 330, 8.5);

    /// <summary>Width of a line that would be <paramref name="width"/> on a desk screen.</summary>
    internal double Thick(double width) => Math.Round(width * Math.Max(Text, 8) / 15, 2);
}
