using Portwright.Physics.Statistics;

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

    /// <summary>
    /// A further sound member of a family whose common value is itself known beforehand, to a doubt: the mean is drawn to <paramref name="usually"/> by how few the sisters are, so that one
    /// sister who is at fault does not carry her fault over.
    /// </summary>
    /// <param name="sisters">Their values, none at least.</param>
    /// <param name="usually">Mean before any reading.</param>
    /// <param name="open">Standard deviation of what all share about it, above zero.</param>
    /// <param name="own">Standard deviation of each member's own, above zero.</param>
    /// <param name="degrees">How well those two are known.</param>
    /// <remarks>Normal about normal (Gelman and others, section 2.5; from memory).</remarks>
    public static Family Sharing(IReadOnlyList<double> sisters, double usually, double open, double own, double degrees)
    {
        ArgumentNullException.ThrowIfNull(sisters);
        var middle = sisters.Count == 0 ? usually : Median(sisters);
        var weight = 1 / (open * open) + sisters.Count / (own * own);
        var mean = (usually / (open * open) + sisters.Sum(s => middle + Math.Clamp(s - middle, -DrawnIn * own, DrawnIn * own)) / (own * own)) / weight;
        return new Family(mean, Math.Sqrt(1 / weight + own * own), degrees, sisters.Count);
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

    /// <summary>The same of each size of the step by itself, in its order.</summary>
    internal IReadOnlyList<double> BySize(double value, Step step) => [.. step.BySize(value - Mean, Deviation, Degrees).Select(s => s.Ratio)];

    /// <summary>
    /// Chance that a member truly lies below its sisters by more than a limit: by a fault of its own, or as one of a family that differs so much. What it reads lower by no more than its
    /// own doubt is not there.
    /// </summary>
    /// <param name="value">As read.</param>
    /// <param name="doubt">Standard uncertainty of that reading: what does not come back when it is read anew.</param>
    /// <param name="limit">Above zero: less than that below is as good as its sisters.</param>
    /// <param name="prior">Chance of a fault of its own before any reading, 0 to 1.</param>
    /// <param name="fault">How far a fault moves it.</param>
    /// <returns>0 to <see cref="Court.Surest"/>.</returns>
    /// <remarks>
    /// Sisters truly differ by what is left of <see cref="Deviation"/> once the readings' doubt is taken off; what a reading lies off these very sisters is drawn in by the share of the two
    /// variances (Gelman and others, section 2.5; from memory), about the fault's size where there is one.
    /// </remarks>
    public double Below(double value, double doubt, double limit, double prior, Step fault)
    {
        ArgumentNullException.ThrowIfNull(fault);
        if (!(Deviation > 0) || !double.IsFinite(value))
        {
            return 0;
        }

        double[] doubts = [doubt / DoubtWithin, doubt, doubt * DoubtWithin];
        var family = this;
        return Math.Min(Court.Surest, doubts.Average(d => family.TrulyBelow(value - family.Mean, d, limit, prior, fault)));
    }

    private double TrulyBelow(double off, double doubt, double limit, double prior, Step fault)
    {
        // One member's variance counts once for it, once over the sisters' number for their mean: what it truly lies off them by, and what both readings owe to doubt, alike.
        var (one, both) = (Deviation * Deviation * Members / (Members + 1.0), (Members + 1.0) / Members);
        var own = Math.Max(LeastOwn * one, one - doubt * doubt);
        var (drawn, degrees) = (own / one, Degrees);
        var open = Math.Sqrt(own * both * (1 - drawn));
        double Past(double left, double size) => Student.Cdf((-limit - (size + left * drawn)) / open, degrees);
        double lies = (1 - prior) * Past(off, 0), weight = 1 - prior;
        foreach (var (size, left, ratio) in fault.BySize(off, Deviation, Degrees))
        {
            var share = prior / fault.Sizes.Count * ratio;
            // Past the largest class the size is what was read.
            lies += share * Past(left, left == 0 ? off : size);
            weight += share;
        }

        return lies / weight;
    }

    /// <summary>A stated doubt is itself known to about this factor; judgement.</summary>
    private const double DoubtWithin = 1.35;

    /// <summary>Sound members never agree better than by this share of their variance; our own choice.</summary>
    private const double LeastOwn = 0.1;

    internal static double Median(IReadOnlyList<double> values)
    {
        double[] sorted = [.. values.Order()];
        return sorted.Length % 2 == 1 ? sorted[sorted.Length / 2] : (sorted[sorted.Length / 2 - 1] + sorted[sorted.Length / 2]) / 2;
    }
}
