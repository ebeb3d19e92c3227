using Portwright.Shop.Units;

namespace Portwright.Shop.Entering;

/// <summary>One line of the table every door asks: what a field holds, what it may be at all, and where it is expected.</summary>
/// <param name="Key">Its name in the table, small letters with a point: <c>valve.head</c>.</param>
/// <param name="Label">As a page or command names it.</param>
/// <param name="Least">Below it there is no such thing, SI.</param>
/// <param name="Most">Nor above.</param>
/// <param name="Expected">Where it lies by what is known around it: one range or several, the likeliest first, any of which will do; nothing where nobody can say.</param>
public sealed record EnteredField(string Key, string Label, Dimension Dimension, double Least, double Most, Func<Surroundings, IReadOnlyList<LikelyRange>> Expected)
{
    /// <summary>What else this field's own trade confuses with it.</summary>
    public Func<Typed, Surroundings, IEnumerable<MeantValue>> AlsoMeant { get; init; } = (_, _) => [];

    public bool IsPossible(double si) => si >= Least && si <= Most;
}
