namespace Portwright.Physics.Rings;

/// <summary>How far the air between the readings leaves a sum over the section open. A double sum over places, so over blocks of squares.</summary>
internal sealed class OpenAir
{
    /// <summary>Blocks across either side.</summary>
    private const int Across = 14;

    private readonly Kriging kriging;
    private readonly int[] blockOf;
    private readonly double[] x, y;

    public OpenAir(SectionCells cells, Kriging kriging)
    {
        this.kriging = kriging;
        double left = cells.X.Min(), bottom = cells.Y.Min(), width = cells.X.Max() - left, height = cells.Y.Max() - bottom;
        static int Part(double share) => Math.Min(Across - 1, (int)(Across * share));
        blockOf = [.. cells.X.Select((px, c) => Part((px - left) / width) + Across * Part((cells.Y[c] - bottom) / height))];
        (x, y) = (Middles(cells.X), Middles(cells.Y));
    }

    /// <summary>In units of the variance of the core speed.</summary>
    /// <param name="weights">Of the core speed of each square.</param>
    public double Variance(double[] weights)
    {
        var sums = new double[Across * Across];
        for (var c = 0; c < weights.Length; c++) sums[blockOf[c]] += weights[c];
        var correlations = new double[kriging.Count];
        var own = 0.0;
        for (var p = 0; p < sums.Length; p++)
        {
            if (sums[p] == 0) continue;
            for (var i = 0; i < correlations.Length; i++) correlations[i] += sums[p] * kriging.Correlation(i, x[p], y[p]);
            for (var q = 0; q < p; q++)
            {
                if (sums[q] != 0) own += 2 * sums[p] * sums[q] * kriging.Correlation(x[p] - x[q], y[p] - y[q]);
            }
            own += sums[p] * sums[p];
        }
        return kriging.Variance(own, correlations, sums.Sum());
    }

    private double[] Middles(double[] of)
    {
        var (sums, counts) = (new double[Across * Across], new int[Across * Across]);
        for (var c = 0; c < of.Length; c++)
        {
            sums[blockOf[c]] += of[c];
            counts[blockOf[c]]++;
        }
        return [.. sums.Select((s, b) => s / Math.Max(1, counts[b]))];
    }
}
