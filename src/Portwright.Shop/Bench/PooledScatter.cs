using Portwright.Physics.Uncertainty;

namespace Portwright.Shop.Bench;

/// <summary>Repeat scatter from the readings at hand together with what the bench card already knows.</summary>
public static class PooledScatter
{
    /// <summary>
    /// Repeats whose mean is less than this share of the largest say nothing of a scatter that is a share: near nothing the last digit of
    /// the scale is all there is. Our own choice.
    /// </summary>
    public const double TellingShare = 0.05;

    /// <summary>
    /// Pools the spread of the repeats at hand with the bench card's figure, each by its degrees of freedom (JCGM 100:2008 4.2.4 and
    /// H.3.6). Two or three repeats alone know their own spread too badly.
    /// </summary>
    /// <param name="groups">Groups of repeats of the same thing, in any one unit.</param>
    /// <param name="card">The bench card's standard deviation of one reading as a share.</param>
    /// <param name="cardDegrees">Its degrees of freedom; null: taken as certain, and the repeats are not asked.</param>
    /// <returns>Standard deviation of one reading as a share, and how well it is known.</returns>
    public static RepeatScatter WithCard(IEnumerable<double[]> groups, double card, double? cardDegrees)
    {
        if (cardDegrees is not { } known)
        {
            return new RepeatScatter(card, double.PositiveInfinity);
        }

        var all = groups.ToList();
        var least = TellingShare * all.Select(g => Math.Abs(g.Average())).DefaultIfEmpty(0).Max();
        var repeated = all.Where(g => g.Length > 1 && g.Average() is var mean && mean != 0 && Math.Abs(mean) >= least).ToList();
        if (repeated.Count == 0)
        {
            return new RepeatScatter(card, known);
        }

        var here = RepeatScatter.PooledRelative(repeated);
        var degrees = known + here.DegreesOfFreedom;
        var variance = (known * card * card + here.DegreesOfFreedom * here.StandardDeviation * here.StandardDeviation) / degrees;
        return new RepeatScatter(Math.Sqrt(variance), degrees);
    }
}
