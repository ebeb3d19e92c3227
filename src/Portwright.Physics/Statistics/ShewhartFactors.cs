using System.Collections.Concurrent;
using MathNet.Numerics;
using MathNet.Numerics.Integration;

namespace Portwright.Physics.Statistics;

/// <summary>
/// Factors of Shewhart's charts for averages, ranges and standard deviations of groups of n readings, computed from
/// their definitions (NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2).
/// </summary>
/// <param name="N">Readings in a group.</param>
/// <param name="C4">Mean of the standard deviation of n standard normal values, no unit.</param>
/// <param name="D2">Mean of their range (lower case d2 in the tables), no unit.</param>
/// <param name="D3Range">Standard deviation of their range (lower case d3 in the tables), no unit.</param>
public sealed record ShewhartFactors(int N, double C4, double D2, double D3Range)
{
    private static readonly ConcurrentDictionary<int, ShewhartFactors> Known = new();

    /// <summary>Averages, from the mean range: 3 / (d2 sqrt(n)). No unit.</summary>
    public double A2 => 3 / (D2 * Math.Sqrt(N));

    /// <summary>Averages, from the mean standard deviation: 3 / (c4 sqrt(n)). No unit.</summary>
    public double A3 => 3 / (C4 * Math.Sqrt(N));

    /// <summary>Lower limit of standard deviations, no unit.</summary>
    public double B3 => Math.Max(0, 1 - SpreadOfDeviation);

    /// <summary>Upper limit of standard deviations, no unit.</summary>
    public double B4 => 1 + SpreadOfDeviation;

    /// <summary>Lower limit of ranges (capital D3), no unit.</summary>
    public double D3 => Math.Max(0, 1 - 3 * D3Range / D2);

    /// <summary>Upper limit of ranges (capital D4), no unit.</summary>
    public double D4 => 1 + 3 * D3Range / D2;

    private double SpreadOfDeviation => 3 / C4 * Math.Sqrt(1 - C4 * C4);

    /// <param name="n">2 to 100 readings in a group.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not 2 to 100 readings.</exception>
    public static ShewhartFactors For(int n)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(n, 2);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(n, 100);
        return Known.GetOrAdd(n, Compute);
    }

    private static ShewhartFactors Compute(int n)
    {
        var c4 = Math.Sqrt(2.0 / (n - 1)) * Math.Exp(SpecialFunctions.GammaLn(n / 2.0) - SpecialFunctions.GammaLn((n - 1) / 2.0));
        // Mean and mean square of the range W from its distribution: E W = int (1 - F), E W^2 = int 2 w (1 - F).
        const double widest = 18;
        var mean = GaussLegendreRule.Integrate(w => RangeExceeds(w, n), 0, widest, 128);
        var square = GaussLegendreRule.Integrate(w => 2 * w * RangeExceeds(w, n), 0, widest, 128);
        return new(n, c4, mean, Math.Sqrt(square - mean * mean));
    }

    /// <summary>
    /// 1 - n int phi(x) (Phi(x + w) - Phi(x))^(n-1) dx. The plain sum over even steps is exact to rounding for an
    /// integrand that dies away like a normal density at both ends.
    /// </summary>
    private static double RangeExceeds(double w, int n)
    {
        const double step = 0.125;
        var sum = 0.0;
        for (var x = -9.0 - w; x <= 9; x += step)
        {
            var within = 0.5 * (SpecialFunctions.Erf((x + w) / Constants.Sqrt2) - SpecialFunctions.Erf(x / Constants.Sqrt2));
            sum += Math.Exp(-x * x / 2) / Constants.Sqrt2Pi * Math.Pow(within, n - 1);
        }
        return 1 - n * step * sum;
    }
}
