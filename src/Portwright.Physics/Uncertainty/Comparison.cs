using System.Runtime.InteropServices;
using Portwright.Physics.Statistics;

namespace Portwright.Physics.Uncertainty;

/// <summary>
/// Whether a difference of two results is more than the noise. Causes both results share cancel; set-up scatter of two
/// set-ups does not.
/// </summary>
/// <remarks>
/// The difference over its combined standard uncertainty is judged with Student's t at the effective degrees of freedom
/// (JCGM 100:2008, annex G). Readings added because a difference is not yet real, and judged again and again, find a
/// difference that is not there more often than the level says: fix their number beforehand.
/// </remarks>
public static class Comparison
{
    /// <summary>With fewer effective degrees of freedom than this the scatter itself is a guess (common practice, no source).</summary>
    public const double FewestDegreesOfFreedom = 3;

    /// <summary>Up to this many more repeats a point a difference counts as not decided rather than as noise.</summary>
    public const int WorthRepeating = 5;

    /// <summary>More repeats than this are not proposed.</summary>
    public const int MostReadings = 50;

    /// <summary>Compares two results.</summary>
    /// <param name="level">Confidence level, above 0 and below 1: real where the two-sided p is at most 1 - level.</param>
    /// <exception cref="ArgumentOutOfRangeException">The level is not above 0 and below 1.</exception>
    public static Difference Compare(Estimate before, Estimate after, double level = 0.95)
    {
        if (!(level > 0 && level < 1))
            throw new ArgumentOutOfRangeException(nameof(level), level, "A confidence level must be above 0 and below 1.");
        var difference = after.Subtract(before);
        return Judge(difference, HasOwnScatter(before, after), level);
    }

    /// <summary>The same difference among several made at once, with its p-value adjusted for them.</summary>
    internal static Difference Adjusted(Difference single, double adjustedP) => IsJudged(single)
        ? Decide(single with { AdjustedPValue = adjustedP })
        : single;

    /// <summary>Whether the scatter is known well enough for the p-value to mean something.</summary>
    internal static bool IsJudged(Difference difference) =>
        difference.Verdict != Verdict.NotEnoughReadings || difference.MoreReadings is <= WorthRepeating && HasDegrees(difference.Of);

    private static Difference Judge(Estimate difference, bool scatterKnown, double level)
    {
        var u = difference.StandardUncertainty;
        if (!scatterKnown || u == 0)
        {
            // A result compared with itself is no difference; two results without known scatter are no comparison.
            var same = difference.Value == 0 && u == 0 && !difference.Contributions.IsEmpty;
            return new(difference, 0.5, 1, 1, same ? Verdict.InsideTheNoise : Verdict.NotEnoughReadings, null, level);
        }
        var (t, dof) = (difference.Value / u, difference.EffectiveDegreesOfFreedom);
        var p = Student.TwoSidedP(t, dof);
        var judged = new Difference(difference, Student.Cdf(t, dof), p, p, Verdict.NotEnoughReadings, null, level);
        return HasDegrees(difference)
            ? Decide(judged)
            : judged with { MoreReadings = ReadingsToDecide(judged) };
    }

    private static Difference Decide(Difference difference)
    {
        if (difference.AdjustedPValue <= 1 - difference.Level)
            return difference with { Verdict = Verdict.Real, MoreReadings = null };
        var more = ReadingsToDecide(difference);
        return difference with
        {
            Verdict = more <= WorthRepeating ? Verdict.NotEnoughReadings : Verdict.InsideTheNoise,
            MoreReadings = more,
        };
    }

    private static bool HasDegrees(Estimate difference) =>
        // The formula returns 2.9999999999999996 for three equal shares.
        difference.EffectiveDegreesOfFreedom >= FewestDegreesOfFreedom * (1 - 1e-12);

    /// <summary>A cause that moved only one of the two, without which nothing is known of their scatter.</summary>
    private static bool HasOwnScatter(Estimate before, Estimate after)
    {
        var (a, b) = (before.Contributions, after.Contributions);
        for (int i = 0, j = 0; i < a.Length || j < b.Length;)
        {
            var order = i == a.Length ? 1 : j == b.Length ? -1 : string.CompareOrdinal(a[i].Source, b[j].Source);
            if (order < 0 && a[i].Amount != 0 || order > 0 && b[j].Amount != 0) return true;
            if (order <= 0) i++;
            if (order >= 0) j++;
        }
        return false;
    }

    /// <summary>Repeats to add until the same difference would be real, the scatter staying as it is.</summary>
    private static int? ReadingsToDecide(Difference difference)
    {
        var contributions = difference.Of.Contributions;
        if (difference.Of.Value == 0 || !contributions.Any(c => c.Kind == ContributionKind.Repeat && c.Amount != 0)) return null;
        var allowed = (1 - difference.Level) * (difference.AdjustedPValue > 0 ? difference.PValue / difference.AdjustedPValue : 1);
        var with = new List<Contribution>(contributions.Length);
        for (var more = 1; more <= MostReadings; more++)
        {
            with.Clear();
            foreach (var c in contributions) with.Add(c.Kind == ContributionKind.Repeat ? WithMore(c, more) : c);
            var u = Math.Sqrt(with.Sum(c => c.Amount * c.Amount));
            var dof = WelchSatterthwaite.EffectiveDegreesOfFreedom(CollectionsMarshal.AsSpan(with));
            if (dof >= FewestDegreesOfFreedom && Student.TwoSidedP(difference.Of.Value / u, dof) <= allowed) return more;
        }
        return null;
    }

    private static Contribution WithMore(Contribution c, int more) => c with
    {
        Amount = c.Amount * Math.Sqrt((double)c.Readings / (c.Readings + more)),
        DegreesOfFreedom = c.DegreesOfFreedom + more,
        Readings = c.Readings + more,
    };
}
