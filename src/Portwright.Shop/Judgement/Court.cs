namespace Portwright.Shop.Judgement;

/// <summary>One explanation of what was read: how likely it is before any reading, and how much better than a sound port it explains the readings.</summary>
/// <param name="Prior">Chance before any reading, 0 to 1.</param>
/// <param name="Ratio">Likelihood of the readings under it over that under a sound port like its sisters, zero or above.</param>
public readonly record struct Explanation(double Prior, double Ratio);

/// <summary>The one place where evidence is combined: Bayes' rule over a sound port and what else would explain the readings.</summary>
/// <remarks>Thomas Bayes' rule as in D. S. Sivia, Data Analysis: A Bayesian Tutorial (2006), ch. 1 and 4; from memory.</remarks>
public static class Court
{
    /// <summary>No judgement on readings alone is surer than this: what nobody thought of stays possible. Our own choice.</summary>
    public const double Surest = 0.999;

    /// <summary>Chance of the first explanation, the others and a sound port being what else could be, 0 to <see cref="Surest"/>.</summary>
    public static double Chance(params ReadOnlySpan<Explanation> explanations)
    {
        double all = 0, sound = 1;
        foreach (var e in explanations)
        {
            all += e.Prior * Sound(e.Ratio);
            sound -= e.Prior;
        }

        if (double.IsPositiveInfinity(all))
        {
            return double.IsPositiveInfinity(explanations[0].Ratio) ? Surest : 0;
        }

        var first = explanations[0].Prior * Sound(explanations[0].Ratio);
        return Math.Min(Surest, first / (all + Math.Max(0, sound)));
    }

    /// <summary>
    /// A fault that sits at one of several places looked at: the prior is of the port and shared by the places, so that a port read at twenty
    /// places is not accused more often than one read at three.
    /// </summary>
    /// <param name="prior">Chance that the port has the fault anywhere, before any reading.</param>
    /// <param name="ratios">Likelihood ratio at each place.</param>
    /// <returns>Chance of each place, in their order; together at most <see cref="Surest"/>.</returns>
    public static IReadOnlyList<double> AtOneOf(double prior, IReadOnlyList<double> ratios)
    {
        ArgumentNullException.ThrowIfNull(ratios);
        if (ratios.Count == 0)
        {
            return [];
        }

        ratios = [.. ratios.Select(Sound)];
        var each = prior / ratios.Count;
        var all = 1 - prior + each * ratios.Sum();
        return double.IsPositiveInfinity(all)
            ? [.. ratios.Select(r => double.IsPositiveInfinity(r) ? Surest / ratios.Count(double.IsPositiveInfinity) : 0)]
            : [.. ratios.Select(r => Math.Min(Surest, each * r / all))];
    }

    /// <summary>Numbers that make no likelihood speak for nothing.</summary>
    private static double Sound(double ratio) => double.IsNaN(ratio) ? 1 : ratio;

    /// <summary>Chance that the fault sits at one of the places at least.</summary>
    public static double Anywhere(double prior, IReadOnlyList<double> ratios) => Math.Min(Surest, AtOneOf(prior, ratios).Sum());
}
