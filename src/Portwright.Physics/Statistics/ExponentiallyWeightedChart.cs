using System.Collections.Immutable;

namespace Portwright.Physics.Statistics;

/// <summary>
/// Exponentially weighted moving average (NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.4): sees a slow drift
/// sooner than single values do.
/// </summary>
/// <param name="Averages">The starting value, then one average a value, in the unit of the readings.</param>
/// <param name="Start">Centre line, in the unit of the readings.</param>
/// <param name="Sigma">Standard deviation of single values, in the unit of the readings.</param>
/// <param name="Lambda">Weight of the newest value, above 0 to 1, no unit.</param>
/// <param name="K">Limits in standard deviations of the average, no unit.</param>
public sealed record ExponentiallyWeightedChart(ImmutableArray<double> Averages, double Start, double Sigma, double Lambda, double K)
{
    /// <summary>Limits after many values: start plus and minus k sigma sqrt(lambda/(2 - lambda)). In the unit of the readings.</summary>
    public double UpperLimit => Start + Reach;

    /// <summary>In the unit of the readings.</summary>
    public double LowerLimit => Start - Reach;

    private double Reach => K * Sigma * Math.Sqrt(Lambda / (2 - Lambda));

    /// <summary>Half width of the limits at the n-th value, narrower at the start: times sqrt(1 - (1 - lambda)^(2n)). In the unit of the readings.</summary>
    /// <param name="point">Counted from 1; 0 is the start.</param>
    /// <exception cref="ArgumentOutOfRangeException">The point is below 0.</exception>
    public double HalfWidthAt(int point)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(point);
        return Reach * Math.Sqrt(1 - Math.Pow(1 - Lambda, 2 * point));
    }

    /// <summary>Whether the newest average lies beyond the limits that hold at its place.</summary>
    public bool Signals => Averages.Length > 1 && Math.Abs(Averages[^1] - Start) > HalfWidthAt(Averages.Length - 1);

    /// <param name="values">In order of time, in the unit of the readings.</param>
    /// <param name="start">The target, or the mean of earlier values, in the unit of the readings.</param>
    /// <param name="sigma">Standard deviation of single values, 0 or more, in the unit of the readings.</param>
    /// <param name="lambda">Above 0 to 1; 0.2 to 0.3 are usual (6.3.2.4), no unit.</param>
    /// <param name="k">Limits in standard deviations of the average, no unit, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The weight, the standard deviation or the limits are outside the range given.</exception>
    public static ExponentiallyWeightedChart Of(ReadOnlySpan<double> values, double start, double sigma, double lambda = 0.3, double k = 3)
    {
        if (!(lambda > 0 && lambda <= 1))
            throw new ArgumentOutOfRangeException(nameof(lambda), lambda, "The weight must be above 0 and at most 1.");
        if (!(sigma >= 0)) throw new ArgumentOutOfRangeException(nameof(sigma), sigma, "A standard deviation is 0 or more.");
        if (!(k > 0)) throw new ArgumentOutOfRangeException(nameof(k), k, "Limits must be above 0 standard deviations.");
        var averages = ImmutableArray.CreateBuilder<double>(values.Length + 1);
        averages.Add(start);
        foreach (var value in values) averages.Add(lambda * value + (1 - lambda) * averages[^1]);
        return new(averages.MoveToImmutable(), start, sigma, lambda, k);
    }
}
