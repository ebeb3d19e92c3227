using Portwright.Physics.Uncertainty;

namespace Portwright.Physics.Statistics;

/// <summary>How far the limits of a control chart can be trusted.</summary>
public enum LimitsBasis
{
    /// <summary>Too few values to set limits.</summary>
    None,

    /// <summary>Few values: limits widened so that the chance of a false alarm is that of settled limits.</summary>
    Provisional,

    /// <summary>Enough values, or limits stated from outside.</summary>
    Settled,
}

/// <summary>Centre line and standard deviation of a control chart; the limits are 3 of them to either side.</summary>
/// <param name="Centre">Centre line, in the unit of the readings.</param>
/// <param name="Sigma">Standard deviation, in the unit of the readings.</param>
/// <remarks>
/// From <see cref="SettledPoints"/> values on sigma is the mean moving range / d2 (<see cref="IndividualsChart"/>).
/// From <see cref="FewestPoints"/> on the limits are the interval for one further value of a normal quantity,
/// mean plus and minus t s sqrt(1 + 1/n) with t of n - 1 degrees of freedom at the coverage of 3 sigma, and sigma is a
/// third of it: the standard prediction interval, wide while little is known. The two counts (5 and 20) are common
/// practice, no source.
/// </remarks>
/// <param name="Points">Values the limits rest on; 0 where they were stated.</param>
public sealed record ChartLimits(double Centre, double Sigma, LimitsBasis Basis, int Points)
{
    /// <summary>Fewer earlier values than this set no limits.</summary>
    public const int FewestPoints = 5;

    /// <summary>From this many earlier values on limits are settled.</summary>
    public const int SettledPoints = 20;

    /// <summary>Coverage of plus and minus 3 standard deviations of a normal quantity.</summary>
    private const double ThreeSigmaLevel = 0.99730020393673981;

    /// <summary>Centre plus 3 sigma, in the unit of the readings.</summary>
    public double UpperLimit => Centre + 3 * Sigma;

    /// <summary>Centre less 3 sigma, in the unit of the readings.</summary>
    public double LowerLimit => Centre - 3 * Sigma;

    /// <summary>Standard deviations from the centre line, no unit.</summary>
    /// <param name="value">In the unit of the readings.</param>
    public double Z(double value) => Sigma > 0 ? (value - Centre) / Sigma : 0;

    /// <summary>Limits from outside, such as a bench card.</summary>
    /// <param name="centre">In the unit of the readings.</param>
    /// <param name="sigma">Above 0, in the unit of the readings.</param>
    /// <exception cref="ArgumentOutOfRangeException">The standard deviation is not above 0.</exception>
    public static ChartLimits Stated(double centre, double sigma)
    {
        if (!(sigma > 0)) throw new ArgumentOutOfRangeException(nameof(sigma), sigma, "A standard deviation must be above 0.");
        return new(centre, sigma, LimitsBasis.Settled, 0);
    }

    /// <summary>Limits from earlier values.</summary>
    /// <param name="values">In order of time; values with a known cause (a bad morning put right) left out, in the unit of the readings.</param>
    /// <param name="resolution">
    /// Smallest step the reading shows, 0 or more. Sigma is not taken below step/sqrt(12): readings that all show the same
    /// figure do not make the bench perfect. In the unit of the readings.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException">The step is below 0.</exception>
    public static ChartLimits From(ReadOnlySpan<double> values, double resolution = 0)
    {
        if (!(resolution >= 0)) throw new ArgumentOutOfRangeException(nameof(resolution), resolution, "A step is 0 or more.");
        var n = values.Length;
        if (n == 0) return new(0, 0, LimitsBasis.None, 0);
        var mean = RepeatScatter.Mean(values);
        if (n < FewestPoints) return new(mean, 0, LimitsBasis.None, n);
        var least = resolution / Math.Sqrt(12);
        if (n >= SettledPoints)
            return new(mean, Math.Max(least, IndividualsChart.Of(values).Sigma), LimitsBasis.Settled, n);
        var s = Math.Max(least, RepeatScatter.Of(values).StandardDeviation);
        var factor = Student.TwoSidedFactor(ThreeSigmaLevel, n - 1) * Math.Sqrt(1 + 1.0 / n);
        return new(mean, s * factor / 3, LimitsBasis.Provisional, n);
    }
}
