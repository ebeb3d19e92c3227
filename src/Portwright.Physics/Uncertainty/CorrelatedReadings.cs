using System.Collections.Immutable;

namespace Portwright.Physics.Uncertainty;

/// <summary>Inputs whose errors are correlated, turned into estimates that share independent causes.</summary>
/// <remarks>
/// The covariance matrix V is factored V = L L^T (Cholesky); column k of L is one cause "source #k". Everything computed
/// from the estimates then carries its correlations along (JCGM 100:2008, 5.2 and C.3.6; example H.2).
/// </remarks>
public static class CorrelatedReadings
{
    /// <summary>Quantities read together several times: means, with the covariance of the means (JCGM 100:2008, 5.2.3, eq. 17).</summary>
    /// <param name="source">Name of the whole set of readings.</param>
    /// <param name="quantities">One list a quantity, all of one length of 2 or more; the n-th entries were read together.</param>
    public static ImmutableArray<Estimate> FromSets(string source, params IReadOnlyList<IReadOnlyList<double>> quantities)
    {
        if (quantities.Count == 0 || quantities[0].Count < 2 || quantities.Any(q => q.Count != quantities[0].Count))
            throw new ArgumentException("Every quantity needs the same number of readings, at least 2.", nameof(quantities));
        var (n, readings) = (quantities.Count, quantities[0].Count);
        var means = quantities.Select(q => RepeatScatter.Mean([.. q])).ToArray();
        var covariance = new double[n, n];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                var sum = 0.0;
                for (var k = 0; k < readings; k++) sum += (quantities[i][k] - means[i]) * (quantities[j][k] - means[j]);
                covariance[i, j] = sum / (readings * (readings - 1.0));
            }
        }
        return FromCovariance(source, means, covariance, readings - 1, ContributionKind.Repeat, readings);
    }

    /// <summary>Values with a covariance matrix stated.</summary>
    /// <param name="covariance">Symmetric, positive semi-definite, in the units of the values.</param>
    /// <param name="degreesOfFreedom">Of the whole matrix, above 0; one estimate shared by all.</param>
    /// <exception cref="ArgumentException">The matrix has the wrong size, is not symmetric or not positive semi-definite.</exception>
    public static ImmutableArray<Estimate> FromCovariance(
        string source,
        ReadOnlySpan<double> values,
        double[,] covariance,
        double degreesOfFreedom = double.PositiveInfinity,
        ContributionKind kind = ContributionKind.Other,
        int readings = 1)
    {
        var n = values.Length;
        if (covariance.GetLength(0) != n || covariance.GetLength(1) != n)
            throw new ArgumentException($"{n} values need a covariance matrix of {n} by {n}.", nameof(covariance));
        var lower = Cholesky(covariance);
        var estimates = ImmutableArray.CreateBuilder<Estimate>(n);
        for (var i = 0; i < n; i++)
        {
            var causes = ImmutableArray.CreateBuilder<Contribution>(i + 1);
            for (var k = 0; k <= i; k++)
            {
                causes.Add(new($"{source} #{k + 1}", lower[i, k], degreesOfFreedom, kind, source, readings));
            }
            estimates.Add(new(values[i], causes.MoveToImmutable()));
        }
        return estimates.MoveToImmutable();
    }

    /// <summary>Lower factor; a pivot lost in rounding (fully correlated quantities) gives an empty column.</summary>
    private static double[,] Cholesky(double[,] covariance)
    {
        const double rounding = 1e-12;
        var n = covariance.GetLength(0);
        var lower = new double[n, n];
        for (var j = 0; j < n; j++)
        {
            var pivot = covariance[j, j];
            for (var k = 0; k < j; k++) pivot -= lower[j, k] * lower[j, k];
            if (pivot < -rounding * Math.Abs(covariance[j, j]))
                throw new ArgumentException("The covariance matrix is not positive semi-definite.", nameof(covariance));
            lower[j, j] = pivot <= rounding * covariance[j, j] ? 0 : Math.Sqrt(pivot);
            for (var i = j + 1; i < n; i++)
            {
                var scale = Math.Sqrt(Math.Abs(covariance[i, i] * covariance[j, j]));
                if (Math.Abs(covariance[i, j] - covariance[j, i]) > rounding * scale)
                    throw new ArgumentException("The covariance matrix is not symmetric.", nameof(covariance));
                var sum = covariance[i, j];
                for (var k = 0; k < j; k++) sum -= lower[i, k] * lower[j, k];
                if (lower[j, j] == 0 && Math.Abs(sum) > 1e-6 * scale)
                    throw new ArgumentException("The covariance matrix is not positive semi-definite.", nameof(covariance));
                lower[i, j] = lower[j, j] == 0 ? 0 : sum / lower[j, j];
            }
        }
        return lower;
    }
}
