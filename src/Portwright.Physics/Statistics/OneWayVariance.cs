namespace Portwright.Physics.Statistics;

/// <summary>
/// One-way analysis of variance: how much of the scatter lies between groups (set-ups) and how much within them (repeats).
/// </summary>
/// <remarks>
/// Sums of squares are taken about means of deviations from the first reading, so readings that agree in many leading
/// digits lose none. Variance components by the mean squares (Searle, Casella, McCulloch, Variance Components, 1992).
/// </remarks>
/// <param name="Groups">Number of groups.</param>
/// <param name="Readings">Number of readings in all.</param>
/// <param name="SumOfSquaresBetween">In the unit of the readings squared.</param>
/// <param name="SumOfSquaresWithin">In the unit of the readings squared.</param>
/// <param name="RepeatsPerGroup">The repeats of each group; for unequal groups the equivalent number n0, no unit.</param>
public sealed record OneWayVariance(
    int Groups, int Readings, double SumOfSquaresBetween, double SumOfSquaresWithin, double RepeatsPerGroup)
{
    public int DegreesOfFreedomBetween => Groups - 1;

    public int DegreesOfFreedomWithin => Readings - Groups;

    /// <summary>In the unit of the readings squared.</summary>
    public double MeanSquareBetween => SumOfSquaresBetween / DegreesOfFreedomBetween;

    /// <summary>In the unit of the readings squared.</summary>
    public double MeanSquareWithin => SumOfSquaresWithin / DegreesOfFreedomWithin;

    /// <summary>Ratio of the mean squares; infinite where the groups show no scatter within.</summary>
    public double F => MeanSquareBetween / MeanSquareWithin;

    /// <summary>Chance of an F this large when the groups do not differ; 1 where there is no scatter at all.</summary>
    public double PValue => double.IsNaN(F) ? 1 : Fisher.UpperTail(F, DegreesOfFreedomBetween, DegreesOfFreedomWithin);

    /// <summary>Share of the sum of squares that lies between the groups.</summary>
    public double RSquared => SumOfSquaresBetween / (SumOfSquaresBetween + SumOfSquaresWithin);

    /// <summary>Variance of one reading within a group, in the unit of the readings squared.</summary>
    public double VarianceWithin => MeanSquareWithin;

    /// <summary>In the unit of the readings.</summary>
    public double StandardDeviationWithin => Math.Sqrt(MeanSquareWithin);

    /// <summary>Variance between groups beyond what the repeats explain; 0 where the estimate is negative, in the unit of the readings squared.</summary>
    public double VarianceBetween => Math.Max(0, (MeanSquareBetween - MeanSquareWithin) / RepeatsPerGroup);

    /// <summary>The set-up scatter: standard deviation between groups. In the unit of the readings.</summary>
    public double StandardDeviationBetween => Math.Sqrt(VarianceBetween);

    /// <summary>
    /// Satterthwaite's degrees of freedom of <see cref="VarianceBetween"/> (Biometrics Bulletin 2 (1946) 110-114):
    /// (MSB - MSW)^2 / (MSB^2/(k-1) + MSW^2/(N-k)). Where the estimate is 0: k - 1.
    /// </summary>
    public double EffectiveDegreesOfFreedomBetween
    {
        get
        {
            var (between, within) = (MeanSquareBetween, MeanSquareWithin);
            if (between <= within) return DegreesOfFreedomBetween;
            return Square(between - within)
                / (Square(between) / DegreesOfFreedomBetween + Square(within) / DegreesOfFreedomWithin);
        }
    }

    /// <summary>Share of the variance of one reading that lies between groups, 0 to 1.</summary>
    public double Intraclass => VarianceBetween + VarianceWithin > 0 ? VarianceBetween / (VarianceBetween + VarianceWithin) : 0;

    /// <summary>
    /// Upper limit of the standard deviation between groups (balanced normal groups): the largest ratio of components the
    /// F test would still accept at <paramref name="level"/>, times the scatter within. Says what few set-ups cannot exclude. In the unit of the readings.
    /// </summary>
    /// <param name="level">Confidence of the one-sided limit, above 0 and below 1, no unit.</param>
    public double UpperLimitBetween(double level = 0.95)
    {
        var lowPoint = Fisher.UpperPoint(level, DegreesOfFreedomBetween, DegreesOfFreedomWithin);
        return Math.Sqrt(Math.Max(0, (MeanSquareBetween / lowPoint - MeanSquareWithin) / RepeatsPerGroup));
    }

    /// <param name="groups">At least 2 groups with a reading each, and one of them with more, in any one unit.</param>
    /// <exception cref="ArgumentException">Too few groups or repeats.</exception>
    public static OneWayVariance Of(params IReadOnlyList<IReadOnlyList<double>> groups)
    {
        var readings = groups.Sum(g => g.Count);
        if (groups.Count < 2 || groups.Any(g => g.Count == 0) || readings == groups.Count)
            throw new ArgumentException("At least 2 groups are needed, each with a reading and one with repeats.", nameof(groups));
        var origin = groups[0][0];
        var grandMean = groups.Sum(g => g.Sum(x => x - origin)) / readings;
        double between = 0, within = 0;
        foreach (var group in groups)
        {
            var mean = group.Sum(x => x - origin) / group.Count;
            // The mean of what rounding left of the mean.
            mean += group.Sum(x => x - origin - mean) / group.Count;
            between += group.Count * Square(mean - grandMean);
            within += group.Sum(x => Square(x - origin - mean));
        }
        var n0 = (readings - groups.Sum(g => (double)g.Count * g.Count) / readings) / (groups.Count - 1);
        return new(groups.Count, readings, between, within, n0);
    }

    private static double Square(double x) => x * x;
}
