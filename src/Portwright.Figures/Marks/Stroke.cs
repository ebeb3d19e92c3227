namespace Portwright.Figures;

/// <summary>What a mark says by its colour. The theme gives the colour; nothing is said by colour alone.</summary>
public enum Role
{
    /// <summary>The page itself.</summary>
    Ground,

    /// <summary>A sheet lying on the page.</summary>
    Panel,
    Ink,
    Quiet,
    Hairline,

    /// <summary>What is being worked.</summary>
    Blue,

    /// <summary>Look here.</summary>
    Brass,

    /// <summary>Thin metal, danger to the casting.</summary>
    Thin,

    /// <summary>Blue, hardly there: the inside of a finished port.</summary>
    Wash,

    /// <summary>The grey of what cannot be told apart.</summary>
    Noise,
}

/// <summary>Line types by the names of ISO 128-2:2022. Dashes are shorter than the standard's for paper, to suit a screen.</summary>
public enum LineType
{
    /// <summary>No. 01.</summary>
    Continuous,

    /// <summary>No. 02.</summary>
    Dashed,

    /// <summary>No. 04: centrelines.</summary>
    LongDashDot,

    /// <summary>No. 07.</summary>
    Dotted,

    /// <summary>No. 05.</summary>
    LongDashDoubleDot,
}

/// <summary>How a line is drawn.</summary>
public readonly record struct Stroke(Role Role, double Width = 1, LineType Type = LineType.Continuous)
{
    /// <summary>Dashes and gaps in turn, in the drawing's unit; empty for a continuous line.</summary>
    public double[] Dashes()
    {
        // Below 1.5 wide the dashes keep the length they have at 1.5, or a thin line turns to grey.
        var d = Math.Max(Width, 1.5);
        return Type switch
        {
            LineType.Dashed => [4 * d, 2.5 * d],
            LineType.LongDashDot => [8 * d, 2.5 * d, 1 * d, 2.5 * d],
            LineType.Dotted => [1 * d, 2 * d],
            LineType.LongDashDoubleDot => [8 * d, 2 * d, 1 * d, 2 * d, 1 * d, 2 * d],
            _ => [],
        };
    }
}
