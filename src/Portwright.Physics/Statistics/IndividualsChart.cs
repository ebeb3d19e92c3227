using Portwright.Physics.Uncertainty;

namespace Portwright.Physics.Statistics;

/// <summary>
/// Chart of single values with limits from the moving range of neighbours (NIST/SEMATECH e-Handbook of Statistical
/// Methods, 6.3.2.2): centre plus and minus 3 mean moving ranges / d2.
/// </summary>
/// <param name="Mean">Centre line, in the unit of the readings.</param>
/// <param name="MeanMovingRange">Mean absolute difference of neighbours, in the unit of the readings.</param>
/// <param name="RangeFactor">d2 for pairs: 2/sqrt(pi), printed as 1.128. No unit.</param>
/// <param name="Points">Values the limits rest on.</param>
public sealed record IndividualsChart(double Mean, double MeanMovingRange, double RangeFactor, int Points)
{
    /// <summary>In the unit of the readings.</summary>
    public double Sigma => MeanMovingRange / RangeFactor;

    /// <summary>In the unit of the readings.</summary>
    public double UpperLimit => Mean + 3 * Sigma;

    /// <summary>In the unit of the readings.</summary>
    public double LowerLimit => Mean - 3 * Sigma;

    /// <summary>Upper limit of the moving range itself: D4 of pairs times its mean. The lower limit is 0. In the unit of the readings.</summary>
    public double UpperLimitOfRange => ShewhartFactors.For(2).D4 * MeanMovingRange;

    /// <param name="values">In order of time, at least 2, in the unit of the readings.</param>
    /// <param name="rangeFactor">Exact where not given; a handbook's rounded figure where its table is to be met, no unit.</param>
    /// <exception cref="ArgumentException">Fewer than 2 values.</exception>
    public static IndividualsChart Of(ReadOnlySpan<double> values, double? rangeFactor = null)
    {
        if (values.Length < 2) throw new ArgumentException("A moving range needs at least 2 values.", nameof(values));
        var sum = 0.0;
        for (var i = 1; i < values.Length; i++) sum += Math.Abs(values[i] - values[i - 1]);
        return new(RepeatScatter.Mean(values), sum / (values.Length - 1), rangeFactor ?? 2 / Math.Sqrt(Math.PI), values.Length);
    }
}
