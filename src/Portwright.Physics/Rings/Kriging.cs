using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using MathNet.Numerics.LinearAlgebra;
using Lanes = System.Numerics.Vector<double>;

namespace Portwright.Physics.Rings;

/// <summary>
/// Ordinary kriging from a set of places: the best linear unbiased estimate of a field with an unknown mean and a covariance that falls with distance.
/// </summary>
/// <remarks>
/// G. Matheron, Economic Geology 58 (1963) 1246-1266; N. A. C. Cressie, Statistics for Spatial Data (revised ed. 1993), section 3.2. Correlation
/// (1 + s) exp(-s), s = sqrt(3) r/L (Matern's of smoothness 3/2): a field with a slope everywhere and no more. It passes through its values
/// exactly; far from them it returns to their mean.
/// </remarks>
internal sealed class Kriging
{
    private readonly double[] _x, _y;
    private readonly double _scale;
    private readonly double[,] _inverse;
    private readonly double[] _inverseSums;
    private readonly double _inverseSum;

    /// <param name="length">Correlation length L, m.</param>
    public Kriging(double[] x, double[] y, double length)
    {
        (this._x, this._y) = (x, y);
        _scale = Math.Sqrt(3) / length;
        var n = x.Length;
        var factor = Matrix<double>.Build.Dense(n, n, (i, j) => i == j ? 1 : Correlation(x[i] - x[j], y[i] - y[j])).Cholesky();
        var solved = factor.Solve(Matrix<double>.Build.DenseIdentity(n));
        _inverse = solved.ToArray();
        _inverseSums = solved.RowSums().ToArray();
        _inverseSum = _inverseSums.Sum();
        LogDeterminant = factor.DeterminantLn + Math.Log(_inverseSum);
    }

    public int Count => _x.Length;

    /// <summary>Of the correlations and of the mean's own weight: what a likelihood of the length needs.</summary>
    public double LogDeterminant { get; }

    /// <summary>Generalised least squares mean of values at the places.</summary>
    public double MeanOf(ReadOnlySpan<double> values) => Dot(_inverseSums, values) / _inverseSum;

    /// <summary>R^-1 times values about their mean: how much each place's correlation counts in the field.</summary>
    public double[] Solve(ReadOnlySpan<double> values)
    {
        var result = new double[_x.Length];
        for (var i = 0; i < result.Length; i++)
        {
            for (var j = 0; j < result.Length; j++) result[i] += _inverse[i, j] * values[j];
        }
        return result;
    }

    /// <summary>
    /// How much each value counts in a weighted sum over the field, from the sum's correlations with the places and the sum of its weights:
    /// R^-1 (r + 1 (G - 1 R^-1 r)/(1 R^-1 1)).
    /// </summary>
    public double[] Weights(ReadOnlySpan<double> correlations, double sumOfWeights)
    {
        var rest = (sumOfWeights - Dot(_inverseSums, correlations)) / _inverseSum;
        var result = Solve(correlations);
        for (var i = 0; i < result.Length; i++) result[i] += _inverseSums[i] * rest;
        return result;
    }

    /// <summary>
    /// Covariance of two weighted sums over the field (a place is a sum of one), given the values, in units of the field's variance:
    /// k - r R^-1 q + (G - 1 R^-1 r)(H - 1 R^-1 q)/(1 R^-1 1) (Cressie 1993, section 3.2, block kriging).
    /// </summary>
    /// <param name="own">The sums' correlation with each other before any value, k.</param>
    /// <param name="r">Correlations of the first sum with the places; G the sum of its weights.</param>
    /// <param name="q">The same of the second; H its weights.</param>
    public double Covariance(double own, ReadOnlySpan<double> r, double sumOfR, ReadOnlySpan<double> q, double sumOfQ) =>
        own - Dot(r, Solve(q)) + (sumOfR - Dot(_inverseSums, r)) * (sumOfQ - Dot(_inverseSums, q)) / _inverseSum;

    /// <summary>Correlation of two places.</summary>
    public double Correlation(double dx, double dy)
    {
        var s = Math.Sqrt(dx * dx + dy * dy) * _scale;
        return (1 + s) * Math.Exp(-s);
    }

    /// <summary>Correlation of one of the places with another place.</summary>
    public double Correlation(int place, double px, double py) => Correlation(px - _x[place], py - _y[place]);

    /// <summary>Mean plus weighted correlations at x0 + i step on the line py; the length of <paramref name="field"/> is a whole number of vectors.</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public void Row(double py, double x0, double step, double mean, ReadOnlySpan<double> weights, Span<double> field)
    {
        var lanes = MemoryMarshal.Cast<double, Lanes>(field);
        var px = new Lanes(x0) + step * Vector.CreateSequence(0.0, 1.0);
        var stride = new Lanes(step * Lanes.Count);
        for (var k = 0; k < lanes.Length; k++)
        {
            var value = new Lanes(mean);
            for (var i = 0; i < _x.Length; i++) value += Correlations(px - new Lanes(_x[i]), new Lanes(py - _y[i])) * weights[i];
            lanes[k] = value;
            px += stride;
        }
    }

    /// <summary>Correlations of one of the places with many; all spans of one length.</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public void Correlations(int place, ReadOnlySpan<double> px, ReadOnlySpan<double> py, Span<double> correlations)
    {
        var whole = px.Length - px.Length % Lanes.Count;
        for (var k = 0; k < whole; k += Lanes.Count)
            Correlations(new Lanes(px[k..]) - new Lanes(_x[place]), new Lanes(py[k..]) - new Lanes(_y[place])).CopyTo(correlations[k..]);
        for (var k = whole; k < px.Length; k++) correlations[k] = Correlation(place, px[k], py[k]);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Lanes Correlations(Lanes dx, Lanes dy)
    {
        var s = Vector.SquareRoot(dx * dx + dy * dy) * _scale;
        return (Lanes.One + s) * Vector.Exp(-s);
    }

    private static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        var sum = 0.0;
        for (var i = 0; i < a.Length; i++) sum += a[i] * b[i];
        return sum;
    }
}
