namespace Portwright.Physics.Rings;

/// <summary>How far the air between the readings leaves a sum over the section open. A double sum over places, so over blocks of squares.</summary>
internal sealed class OpenAir
{
    /// <summary>Blocks across either side.</summary>
    private const int Across = 14;

    private readonly Kriging _kriging;
    private readonly int[] _blockOf;
    private readonly double[] _x, _y;
    private readonly double[][] _between;

    public OpenAir(SectionCells cells, Kriging kriging)
    {
        this._kriging = kriging;
        double left = cells.X.Min(), bottom = cells.Y.Min(), width = cells.X.Max() - left, height = cells.Y.Max() - bottom;
        static int Part(double share) => Math.Min(Across - 1, (int)(Across * share));
        _blockOf = [.. cells.X.Select((px, c) => Part((px - left) / width) + Across * Part((cells.Y[c] - bottom) / height))];
        (_x, _y) = (Middles(cells.X), Middles(cells.Y));
        _between = Between();
    }

    /// <summary>Variance of a sum, in units of the variance of the core speed.</summary>
    /// <param name="weights">Of the core speed of each square.</param>
    public double Variance(double[] weights)
    {
        var (sums, correlations) = Blocks(weights);
        var own = 0.0;
        for (var p = 0; p < sums.Length; p++)
        {
            if (sums[p] == 0) continue;
            var (with, row) = (0.0, _between[p]);
            for (var q = 0; q < sums.Length; q++) with += sums[q] * row[q];
            own += sums[p] * with;
        }
        var whole = sums.Sum();
        return Math.Max(0, _kriging.Covariance(own, correlations, whole, correlations, whole));
    }

    /// <summary>
    /// The place whose reading would take most from the variance of a sum, and what would be left of it: variance less the square of the
    /// covariance of sum and place over the variance of the place.
    /// </summary>
    /// <param name="weights">Of the core speed of each square.</param>
    /// <param name="places">Squares to choose from, at least one.</param>
    public (int Square, double Left) Next(SectionCells cells, double[] weights, IEnumerable<int> places)
    {
        var (sums, correlations) = Blocks(weights);
        var whole = sums.Sum();
        var at = new double[_kriging.Count];
        var (best, most) = (-1, double.NegativeInfinity);
        foreach (var c in places)
        {
            for (var i = 0; i < at.Length; i++) at[i] = _kriging.Correlation(i, cells.X[c], cells.Y[c]);
            var open = _kriging.Covariance(1, at, 1, at, 1);
            // On a reading already taken nothing is open.
            if (open < 1e-6) continue;
            var shared = _kriging.Covariance(Own(sums, cells.X[c], cells.Y[c]), correlations, whole, at, 1);
            if (shared * shared / open > most) (best, most) = (c, shared * shared / open);
        }
        return (best, Math.Max(0, Variance(weights) - most));
    }

    private (double[] Sums, double[] Correlations) Blocks(double[] weights)
    {
        var sums = new double[Across * Across];
        for (var c = 0; c < weights.Length; c++) sums[_blockOf[c]] += weights[c];
        var correlations = new double[_kriging.Count];
        for (var p = 0; p < sums.Length; p++)
        {
            if (sums[p] == 0) continue;
            for (var i = 0; i < correlations.Length; i++) correlations[i] += sums[p] * _kriging.Correlation(i, _x[p], _y[p]);
        }
        return (sums, correlations);
    }

    /// <summary>Correlation of a sum with a place.</summary>
    private double Own(double[] sums, double px, double py)
    {
        var own = 0.0;
        for (var q = 0; q < sums.Length; q++)
        {
            if (sums[q] != 0) own += sums[q] * _kriging.Correlation(px - _x[q], py - _y[q]);
        }
        return own;
    }

    /// <summary>Correlations of the blocks with each other: the same for every sum.</summary>
    private double[][] Between()
    {
        var between = Array.ConvertAll(_x, _ => new double[_x.Length]);
        for (var p = 0; p < _x.Length; p++)
        {
            for (var q = 0; q <= p; q++) between[p][q] = between[q][p] = _kriging.Correlation(_x[p] - _x[q], _y[p] - _y[q]);
        }
        return between;
    }

    private double[] Middles(double[] of)
    {
        var (sums, counts) = (new double[Across * Across], new int[Across * Across]);
        for (var c = 0; c < of.Length; c++)
        {
            sums[_blockOf[c]] += of[c];
            counts[_blockOf[c]]++;
        }
        return [.. sums.Select((s, b) => s / Math.Max(1, counts[b]))];
    }
}
