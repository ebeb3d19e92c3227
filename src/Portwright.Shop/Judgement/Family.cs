namespace Portwright.Shop.Judgement;

/// <summary>What a further sound member of a family should show, by its sisters: partial pooling between what they show and what is usual.</summary>
/// <param name="Mean">In the unit of what is measured.</param>
/// <param name="Deviation">Standard deviation of a further sound member about the mean.</param>
/// <param name="Degrees">Degrees of freedom behind it.</param>
/// <param name="Members">Sisters it rests on.</param>
/// <remarks>
/// Normal members with an unknown spread whose prior is a scaled inverse chi-square: the next one follows Student's distribution (A. Gelman and others,
/// Bayesian Data Analysis, 3rd ed. (2013), sections 2.6 and 3.2; from memory). One sister that is itself at fault is drawn in to <see cref="DrawnIn"/>
/// deviations of the median first (Huber 1964; from memory).
/// </remarks>
public readonly record struct Family(double Mean, double Deviation, double Degrees, int Members)
{
    /// <summary>Deviations past which a sister counts as no further off.</summary>
    public const double DrawnIn = 2.5;

    /// <param name="sisters">Their values, one at least.</param>
    /// <param name="usual">Usual standard deviation between sound sisters, above zero.</param>
    /// <param name="degrees">How many sisters that usual figure weighs as much as.</param>
    public static Family Of(IReadOnlyList<double> sisters, double usual, double degrees)
    {
        ArgumentNullException.ThrowIfNull(sisters);
        var n = sisters.Count;
        var middle = Median(sisters);
        // The spread is told by the middle of the distances, which one bad sister in three does not move, and by what is usual.
        var apart = n < 3 ? usual : Math.Max(usual / 2, 1.4826 * Median([.. sisters.Select(s => Math.Abs(s - middle))]));
        double[] held = [.. sisters.Select(s => middle + Math.Clamp(s - middle, -DrawnIn * apart, DrawnIn * apart))];
        var mean = held.Average();
        var variance = (degrees * usual * usual + held.Sum(h => (h - mean) * (h - mean))) / (degrees + n - 1);
        return new Family(mean, Math.Sqrt(variance * (1 + 1.0 / n)), degrees + n - 1, n);
    }

    /// <summary>The same where a reading's own doubt is more than the sisters show.</summary>
    /// <param name="doubt">Standard uncertainty.</param>
    public Family AtLeast(double doubt) => this with { Deviation = Math.Max(Deviation, doubt) };

    /// <summary>Likelihood ratio of a step against a sound member.</summary>
    public double Ratio(double value, Step step)
    {
        ArgumentNullException.ThrowIfNull(step);
        return step.Ratio(value - Mean, Deviation, Degrees);
    }

    internal static double Median(IReadOnlyList<double> values)
    {
        double[] sorted = [.. values.Order()];
        return sorted.Length % 2 == 1 ? sorted[sorted.Length / 2] : (sorted[sorted.Length / 2 - 1] + sorted[sorted.Length / 2]) / 2;
    }
}
