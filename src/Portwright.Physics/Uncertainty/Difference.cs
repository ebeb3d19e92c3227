namespace Portwright.Physics.Uncertainty;

/// <summary>A difference of two results, after less before, with its verdict.</summary>
/// <param name="Of">The difference with everything in doubt about it; what both results share has cancelled.</param>
/// <param name="ProbabilityOfGain">Probability that the true difference is above 0, from Student's t; 0.5 where no scatter is known.</param>
/// <param name="PValue">Two-sided chance of a difference this large when there is none; 1 where no scatter is known.</param>
/// <param name="AdjustedPValue">The same with the number of comparisons made at once in hand; equal for a single comparison, no unit.</param>
/// <param name="Verdict">From the adjusted p-value.</param>
/// <param name="MoreReadings">
/// How many more repeats at each point of both results would make this same difference real; null where it is real, where
/// more repeats cannot (set-up scatter is in the way) or where it would take more than <see cref="Comparison.MostReadings"/>.
/// </param>
/// <param name="Level">Confidence level of the verdict.</param>
public sealed record Difference(
    Estimate Of,
    double ProbabilityOfGain,
    double PValue,
    double AdjustedPValue,
    Verdict Verdict,
    int? MoreReadings,
    double Level)
{
    /// <summary>Half width of the noise about no difference at this level, for one comparison by itself, in the unit of the result.</summary>
    public double NoiseHalfWidth => Of.Expanded(Level);
}
