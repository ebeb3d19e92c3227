using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using MathNet.Numerics.LinearAlgebra;
using Lanes = System.Numerics.Vector<double>;

namespace Portwright.Physics.Rings;

/// <summary>
/// Speed without its wall law between the readings: ordinary kriging, the best linear unbiased estimate of a field with an unknown mean and a
/// covariance that falls with distance.
/// </summary>
/// <remarks>
/// G. Matheron, Economic Geology 58 (1963) 1246-1266; N. A. C. Cressie, Statistics for Spatial Data (revised ed. 1993), section 3.2. Correlation
/// (1 + s) exp(-s), s = sqrt(3) r/L (Matern's of smoothness 3/2): a field with a slope everywhere and no more. It passes through its values
/// exactly; far from them it returns to their mean.
/// </remarks>
internal sealed class CoreField
{
    private readonly double[] x, y, weights;
    private readonly double scale;
    private readonly Matrix<double> inverse;
    private readonly double[] inverseSums;
    private readonly double inverseSum;

    /// <param name="length">Correlation length L, m.</param>
    public CoreField(double[] x, double[] y, double[] values, double length)
    {
        (this.x, this.y) = (x, y);
        scale = Math.Sqrt(3) / length;
        var n = x.Length;
        var factor = Matrix<double>.Build.Dense(n, n, (i, j) => i == j ? 1 : Correlation(i, x[j], y[j])).Cholesky();
        LogDeterminant = factor.DeterminantLn;
        inverse = factor.Solve(Matrix<double>.Build.DenseIdentity(n));
        inverseSums = inverse.RowSums().ToArray();
        inverseSum = inverseSums.Sum();
        LogDeterminant += Math.Log(inverseSum);
        Mean = Dot(inverseSums, values) / inverseSum;
        var off = values.Select(v => v - Mean).ToArray();
        weights = [.. inverse * MathNet.Numerics.LinearAlgebra.Vector<double>.Build.Dense(off)];
        SumOfSquares = Dot(off, weights);
    }

    /// <summary>Generalised least squares mean.</summary>
    public double Mean { get; }

    /// <summary>Squares of the values about their mean, correlation taken out: over the count less one it estimates the variance of the field.</summary>
    public double SumOfSquares { get; }

    /// <summary>Of the correlations and of the mean's own weight: what a likelihood of the length needs.</summary>
    public double LogDeterminant { get; }

    public double At(double px, double py)
    {
        var value = Mean;
        for (var i = 0; i < x.Length; i++) value += weights[i] * Correlation(i, px, py);
        return value;
    }

    /// <summary>The field at x0 + i step on the line y; the length of <paramref name="core"/> is a whole number of vectors.</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public void Row(double py, double x0, double step, Span<double> core)
    {
        var rows = MemoryMarshal.Cast<double, Lanes>(core);
        var px = new Lanes(x0) + step * Vector.CreateSequence(0.0, 1.0);
        var stride = new Lanes(step * Lanes.Count);
        for (var k = 0; k < rows.Length; k++)
        {
            var value = new Lanes(Mean);
            for (var i = 0; i < x.Length; i++)
            {
                var dx = px - new Lanes(x[i]);
                var dy = py - y[i];
                var s = Vector.SquareRoot(dx * dx + new Lanes(dy * dy)) * scale;
                value += (Lanes.One + s) * Vector.Exp(-s) * weights[i];
            }
            rows[k] = value;
            px += stride;
        }
    }

    /// <summary>Adds the correlations of a place with the readings, times <paramref name="times"/>.</summary>
    public void AddCorrelations(double px, double py, double times, Span<double> sums)
    {
        for (var i = 0; i < x.Length; i++) sums[i] += times * Correlation(i, px, py);
    }

    /// <summary>
    /// How much each value counts in a weighted sum over the field, from the sum's correlations with the readings and the sum of its weights:
    /// R^-1 (r + 1 (G - 1 R^-1 r)/(1 R^-1 1)).
    /// </summary>
    public double[] Weights(ReadOnlySpan<double> correlations, double sumOfWeights)
    {
        var n = x.Length;
        var rest = (sumOfWeights - Dot(inverseSums, correlations)) / inverseSum;
        var result = new double[n];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++) result[i] += inverse[i, j] * correlations[j];
            result[i] += inverseSums[i] * rest;
        }
        return result;
    }

    /// <summary>
    /// Variance of a weighted sum over the field, given the readings, in units of the field's variance: k - r R^-1 r + (G - 1 R^-1 r)^2/(1 R^-1 1)
    /// (Cressie 1993, section 3.2, block kriging).
    /// </summary>
    /// <param name="own">The sum's correlation with itself, k.</param>
    public double Variance(double own, ReadOnlySpan<double> correlations, double sumOfWeights)
    {
        var explained = 0.0;
        for (var i = 0; i < x.Length; i++)
        {
            for (var j = 0; j < x.Length; j++) explained += correlations[i] * inverse[i, j] * correlations[j];
        }
        var rest = sumOfWeights - Dot(inverseSums, correlations);
        return Math.Max(0, own - explained + rest * rest / inverseSum);
    }

    /// <summary>Correlation of two places.</summary>
    public double Correlation(double dx, double dy)
    {
        var s = Math.Sqrt(dx * dx + dy * dy) * scale;
        return (1 + s) * Math.Exp(-s);
    }

    private double Correlation(int reading, double px, double py) => Correlation(px - x[reading], py - y[reading]);

    private static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        var sum = 0.0;
        for (var i = 0; i < a.Length; i++) sum += a[i] * b[i];
        return sum;
    }
}
