namespace Portwright.Shop.Words;

/// <summary>Who a part is for.</summary>
public enum Reader
{
    /// <summary>The porter and the customer: what is it, what flows, what to leave alone, what to do.</summary>
    Porter,

    /// <summary>Whoever checks it: every reading, coefficients, where the doubt comes from. It stands behind a fold, and on paper on asking.</summary>
    Engineer,
}

/// <summary>Blocks under a heading.</summary>
/// <param name="Key">For programs, one a document.</param>
public sealed record Part(string Key, Sentence Heading, IReadOnlyList<Block> Blocks, Reader For = Reader.Porter);

/// <summary>What is said of one thing, once: terminal, page, HTML and PDF lay these blocks out, JSON is the same blocks in SI.</summary>
/// <param name="Title">What it is: <c>Intake 2, cut 3</c>.</param>
/// <param name="Place">Where that belongs: job, customer, head.</param>
/// <param name="TitleBlock">The fields every sheet of paper carries.</param>
public sealed record Document(Sentence Title, Sentence Place, IReadOnlyList<Part> Parts, IReadOnlyList<NamedValue> TitleBlock)
{
    public IEnumerable<Block> Blocks => Parts.SelectMany(s => s.Blocks);

    /// <summary>Every sentence in it, in order: headings, blocks, cells.</summary>
    public IEnumerable<Sentence> Sentences =>
    [
        Title, Place, .. Parts.SelectMany(s => new[] { s.Heading }.Concat(s.Blocks.SelectMany(Of))), .. TitleBlock.SelectMany(v => new[] { v.Name, v.Value }),
    ];

    /// <summary>Every sentence of a block.</summary>
    public static IEnumerable<Sentence> Of(Block block) => (block switch
    {
        Paragraph p => [p.Text],
        Caution c => [c.Text],
        Values v => v.Rows.SelectMany(r => new[] { r.Name, r.Value }),
        Table t => [t.Caption, .. t.Columns.Select(c => c.Head), .. t.Rows.SelectMany(r => r.Select(c => c.Text)), t.Note],
        Figure f => [f.Instead],
        FindingSaid f => [f.Title, f.Odds, f.Says, .. f.Then],
        _ => throw new ArgumentOutOfRangeException(nameof(block), block.GetType().Name, "A kind of block that is not known here."),
    }).Where(s => !s.IsEmpty);
}
