namespace Portwright.Shop.Judgement;

/// <summary>Readings about nought that vary together: what all others say of one, and how far each lies off what they say.</summary>
/// <remarks>
/// Conditional normal by the inverse covariance; a reading left out and one that counts less are changes of rank one (M. S. Bartlett, Annals of Mathematical Statistics 22
/// (1951) 107; C. E. Rasmussen and C. K. I. Williams, Gaussian Processes for Machine Learning (2006), section 5.4.2, leaving one out; from memory).
/// </remarks>
public sealed class JointNormal
{
    private readonly double[,] _inverse;
    private readonly double[] _values;
    private readonly bool[] _out;

    private readonly double _logDeterminant;

    private JointNormal(double[,] inverse, double logDeterminant, double[] values, bool[] left) => (_inverse, _logDeterminant, _values, _out) = (inverse, logDeterminant, values, left);

    /// <param name="covariance">Symmetric, positive definite: each reading's own doubt stands in its diagonal.</param>
    /// <param name="values">The readings, in the unit whose square the covariance has.</param>
    public static JointNormal Of(double[,] covariance, double[] values)
    {
        ArgumentNullException.ThrowIfNull(covariance);
        ArgumentNullException.ThrowIfNull(values);
        var (inverse, logDeterminant) = Inverse(covariance);
        return new JointNormal(inverse, logDeterminant, values, new bool[values.Length]);
    }

    /// <summary>The same without some of the readings.</summary>
    public JointNormal Without(IEnumerable<int> left)
    {
        ArgumentNullException.ThrowIfNull(left);
        var (inverse, gone, determinant) = ((double[,])_inverse.Clone(), (bool[])_out.Clone(), _logDeterminant);
        foreach (var i in left)
        {
            determinant += Math.Log(inverse[i, i]);
            Change(inverse, i, -1 / inverse[i, i]);
            gone[i] = true;
        }

        return new JointNormal(inverse, determinant, _values, gone);
    }

    /// <summary>The same where readings that lie further off what the others say than so many standard deviations count as no further off.</summary>
    public JointNormal DrawnIn(double deviations)
    {
        var now = new JointNormal((double[,])_inverse.Clone(), _logDeterminant, _values, _out);
        for (var pass = 0; pass < _values.Length; pass++)
        {
            var (furthest, most) = (-1, deviations * deviations * 1.0001);
            for (var i = 0; i < _values.Length; i++)
            {
                if (!_out[i] && now.Off(i) is var (off, variance) && off * off / variance > most)
                {
                    (furthest, most) = (i, off * off / variance);
                }
            }

            if (furthest < 0)
            {
                break;
            }

            var (far, scatter) = now.Off(furthest);
            var more = far * far / (deviations * deviations) - scatter;
            var less = 1 + more * now._inverse[furthest, furthest];
            Change(now._inverse, furthest, -more / less);
            now = new JointNormal(now._inverse, now._logDeterminant + Math.Log(less), _values, _out);
        }

        return now;
    }

    /// <summary>The same where some readings share one more part of their own.</summary>
    /// <param name="together">Which of them.</param>
    /// <param name="variance">Of that part, in the square of the readings' unit.</param>
    public JointNormal Loosened(IReadOnlyList<int> together, double variance)
    {
        ArgumentNullException.ThrowIfNull(together);
        var n = _values.Length;
        double[] row = [.. Enumerable.Range(0, n).Select(i => together.Sum(j => _inverse[i, j]))];
        var less = 1 + variance * together.Sum(i => row[i]);
        var inverse = (double[,])_inverse.Clone();
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                inverse[i, j] -= variance / less * row[i] * row[j];
            }
        }

        return new JointNormal(inverse, _logDeterminant + Math.Log(less), _values, _out);
    }

    /// <summary>The same readings, each moved by so much.</summary>
    public JointNormal Moved(double[] by)
    {
        ArgumentNullException.ThrowIfNull(by);
        return new JointNormal(_inverse, _logDeterminant, [.. _values.Zip(by, (v, b) => v + b)], _out);
    }

    /// <summary>Logarithm of the likelihood of all readings that are not left out, but for a constant.</summary>
    public double LogLikelihood => -(_logDeterminant + Product([.. _values.Select((v, i) => _out[i] ? 0 : v)], _values)) / 2;

    /// <summary>Mean of something that has these covariances with the readings.</summary>
    public double Mean(double[] with) => Product(with, _values);

    /// <summary>What the readings take from the covariance of two such things.</summary>
    public double Taken(double[] with, double[] and) => Product(with, and);

    /// <summary>How far a reading lies off what all others say, in standard deviations of that, at least 0.</summary>
    public double Deviations(int of)
    {
        var (off, variance) = Off(of);
        return Math.Abs(off) / Math.Sqrt(variance);
    }

    /// <summary>How far a reading lies off what all others say, and the variance of that.</summary>
    private (double Off, double Variance) Off(int i)
    {
        var variance = 1 / _inverse[i, i];
        var sum = 0.0;
        for (var j = 0; j < _values.Length; j++)
        {
            sum += _inverse[i, j] * _values[j];
        }

        return (sum * variance, variance);
    }

    private double Product(double[] left, double[] right)
    {
        ArgumentNullException.ThrowIfNull(left);
        ArgumentNullException.ThrowIfNull(right);
        var sum = 0.0;
        for (var i = 0; i < left.Length; i++)
        {
            if (left[i] == 0 || _out[i])
            {
                continue;
            }

            for (var j = 0; j < right.Length; j++)
            {
                sum += left[i] * _inverse[i, j] * right[j];
            }
        }

        return sum;
    }

    private static void Change(double[,] inverse, int of, double weight)
    {
        var n = inverse.GetLength(0);
        double[] row = [.. Enumerable.Range(0, n).Select(j => inverse[of, j])];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                inverse[i, j] += weight * row[i] * row[j];
            }
        }
    }

    /// <summary>By Gauss and Jordan; a positive definite matrix needs no pivot.</summary>
    private static (double[,] Inverse, double LogDeterminant) Inverse(double[,] of)
    {
        var (n, determinant) = (of.GetLength(0), 0.0);
        var a = (double[,])of.Clone();
        for (var k = 0; k < n; k++)
        {
            determinant += Math.Log(a[k, k]);
            var pivot = 1 / a[k, k];
            a[k, k] = 1;
            for (var j = 0; j < n; j++)
            {
                a[k, j] *= pivot;
            }

            for (var i = 0; i < n; i++)
            {
                if (i == k || a[i, k] is not (not 0 and var factor))
                {
                    continue;
                }

                a[i, k] = 0;
                for (var j = 0; j < n; j++)
                {
                    a[i, j] -= factor * a[k, j];
                }
            }
        }

        return (a, determinant);
    }
}
