using System.Collections.Immutable;

namespace Portwright.Figures;

/// <summary>
/// A finished figure as a list of marks: the same list is shown in a page, saved as a picture and printed on paper, and can be asked
/// questions, such as whether two labels lie over each other.
/// </summary>
/// <param name="Title">What it is, in a few words: the figure's accessible name.</param>
/// <param name="Description">What it shows, in a sentence or two, for those who do not see it.</param>
public sealed record Drawing(double Width, double Height, string Title, string Description, ImmutableArray<Mark> Marks)
{
    /// <summary>Every mark that is always seen, those inside touchable groups included.</summary>
    public IEnumerable<Mark> Seen() => Flat(Marks);

    /// <summary>The texts always seen.</summary>
    public IEnumerable<Text> Texts() => Seen().OfType<Text>();

    /// <summary>The groups that answer a finger or the keyboard.</summary>
    public IEnumerable<Touchable> Touchables() => Marks.OfType<Touchable>();

    private static IEnumerable<Mark> Flat(ImmutableArray<Mark> marks) =>
        marks.SelectMany(m => m is Touchable t ? Flat(t.Marks) : m is Named n ? Flat(n.Marks) : [m]);
}
