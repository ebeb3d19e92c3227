namespace Portwright.Shop.Words;

/// <summary>A part of a sentence: words, a quantity, or a word that changes with the units.</summary>
public abstract record Piece
{
    private Piece()
    {
    }

    /// <summary>The same words for every reader.</summary>
    public sealed record Plain(string Text) : Piece;

    /// <summary>A number, laid out in the reader's units.</summary>
    public sealed record Number(Quantity Quantity) : Piece;

    /// <summary>A word, in the reader's spelling.</summary>
    public sealed record Word(Term Term) : Piece;
}
