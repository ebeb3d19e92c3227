using MathNet.Numerics;

namespace Portwright.Physics.Statistics;

/// <summary>How many points a chart shows, on average, before one lies beyond its limits.</summary>
public static class AverageRunLength
{
    /// <summary>1/p of a chart with limits alone, p from both normal tails. 370.4 without a shift at 3 sigma. No unit.</summary>
    /// <param name="shiftSigma">Shift of the mean, in standard deviations, no unit.</param>
    /// <param name="limitSigma">Limits, in standard deviations, above 0, no unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">The limits are not above 0.</exception>
    public static double Of(double shiftSigma, double limitSigma = 3)
    {
        if (!(limitSigma > 0))
            throw new ArgumentOutOfRangeException(nameof(limitSigma), limitSigma, "Limits must be above 0 standard deviations.");
        var p = UpperTail(limitSigma - shiftSigma) + UpperTail(limitSigma + shiftSigma);
        return 1 / p;
    }

    private static double UpperTail(double z) => SpecialFunctions.Erfc(z / Constants.Sqrt2) / 2;
}
