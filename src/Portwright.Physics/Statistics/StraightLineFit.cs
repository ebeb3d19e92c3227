using Portwright.Physics.Uncertainty;

namespace Portwright.Physics.Statistics;

/// <summary>Ordinary least squares straight line y = intercept + slope x, scatter in y only.</summary>
/// <remarks>Sums are taken about the means (two passes). Checked against NIST StRD, Norris.</remarks>
/// <param name="Points">Number of points, at least 3.</param>
/// <param name="MeanX">Mean of x, in the unit of x.</param>
/// <param name="MeanY">Mean of y, in the unit of y.</param>
/// <param name="SumOfSquaresX">Sum of squares of x about its mean, in the unit of x squared.</param>
/// <param name="Slope">In units of y per unit of x.</param>
/// <param name="ResidualSumOfSquares">Sum of squares of y about the line, in the unit of y squared.</param>
/// <param name="LowestX">Where the tested range begins, in the unit of x.</param>
/// <param name="HighestX">Where it ends, in the unit of x.</param>
public sealed record StraightLineFit(
    int Points, double MeanX, double MeanY, double SumOfSquaresX, double Slope, double ResidualSumOfSquares, double LowestX, double HighestX)
{
    public int DegreesOfFreedom => Points - 2;

    /// <summary>In the unit of y.</summary>
    public double Intercept => MeanY - Slope * MeanX;

    /// <summary>Scatter of single points about the line, in the unit of y.</summary>
    public double ResidualStandardDeviation => Math.Sqrt(ResidualSumOfSquares / DegreesOfFreedom);

    /// <summary>In units of y per unit of x.</summary>
    public double StandardUncertaintyOfSlope => ResidualStandardDeviation / Math.Sqrt(SumOfSquaresX);

    /// <summary>In the unit of y.</summary>
    public double StandardUncertaintyOfIntercept =>
        ResidualStandardDeviation * Math.Sqrt(1.0 / Points + MeanX * MeanX / SumOfSquaresX);

    /// <summary>
    /// The line at x with its uncertainty, as two causes that are independent: the level at the mean of x, and the slope.
    /// Readings of two places on the line share both (JCGM 100:2008, H.3).
    /// </summary>
    /// <param name="x">Within the tested range, in the unit of x.</param>
    /// <param name="source">Name of the fit, such as "calibration of range middle, 2 May".</param>
    /// <exception cref="ArgumentOutOfRangeException">x is outside the tested range.</exception>
    public Estimate At(double x, string source, ContributionKind kind = ContributionKind.Calibration)
    {
        if (!(x >= LowestX && x <= HighestX))
            throw new ArgumentOutOfRangeException(nameof(x), x, $"The line was fitted from {LowestX} to {HighestX}.");
        var level = ResidualStandardDeviation / Math.Sqrt(Points);
        var tilt = (x - MeanX) * StandardUncertaintyOfSlope;
        return new(MeanY + Slope * (x - MeanX),
        [
            new($"{source} level", level, DegreesOfFreedom, kind, source),
            new($"{source} slope", tilt, DegreesOfFreedom, kind, source),
        ]);
    }

    /// <param name="x">Any unit, at least 3 and not all alike.</param>
    /// <param name="y">Any unit, as many.</param>
    /// <exception cref="ArgumentException">Lengths differ, fewer than 3 points, or all x alike.</exception>
    public static StraightLineFit Of(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        if (x.Length != y.Length) throw new ArgumentException($"{x.Length} values of x need as many of y.", nameof(y));
        if (x.Length < 3) throw new ArgumentException("A line with its scatter needs at least 3 points.", nameof(x));
        var (meanX, meanY) = (RepeatScatter.Mean(x), RepeatScatter.Mean(y));
        double xx = 0, xy = 0, low = x[0], high = x[0];
        for (var i = 0; i < x.Length; i++)
        {
            xx += (x[i] - meanX) * (x[i] - meanX);
            xy += (x[i] - meanX) * (y[i] - meanY);
            low = Math.Min(low, x[i]);
            high = Math.Max(high, x[i]);
        }
        if (!(xx > 0)) throw new ArgumentException("A line needs points at more than one x.", nameof(x));
        var slope = xy / xx;
        var residual = 0.0;
        for (var i = 0; i < x.Length; i++)
        {
            var off = y[i] - meanY - slope * (x[i] - meanX);
            residual += off * off;
        }
        return new(x.Length, meanX, meanY, xx, slope, residual, low, high);
    }
}
