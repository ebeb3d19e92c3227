namespace Portwright.Physics.Rings;

/// <summary>Readings, wall law and core field put together for one exponent: what the map is made of.</summary>
internal sealed class FittedMap
{
    /// <summary>Blocks across either side for the variance of a sum: coarse, for it is a double sum.</summary>
    private const int Blocks = 14;

    private readonly double[] x, y, speeds, shares;
    private readonly double exponent, deepest, lowestCore, highestCore;
    private readonly int lowest, highest, fastest;

    public FittedMap(double[] x, double[] y, double[] speeds, double[] distances, double deepest, double exponent, double length)
    {
        (this.x, this.y, this.speeds, this.deepest, this.exponent) = (x, y, speeds, deepest, exponent);
        shares = [.. distances.Select(d => WallLayer.Share(d, deepest, exponent))];
        var cores = speeds.Zip(shares, (v, w) => v / w).ToArray();
        Core = new CoreField(x, y, cores, length);
        (lowestCore, highestCore, HighestSpeed) = (cores.Min(), cores.Max(), speeds.Max());
        (lowest, highest, fastest) = (Array.IndexOf(cores, lowestCore), Array.IndexOf(cores, highestCore), Array.IndexOf(speeds, HighestSpeed));
    }

    public CoreField Core { get; }

    public double HighestSpeed { get; }

    /// <summary>Speed at a place, m/s.</summary>
    /// <param name="distance">To the nearest wall, m, zero or above.</param>
    public double At(double px, double py, double distance) => Speed(Core.At(px, py), WallLayer.Share(distance, deepest, exponent));

    /// <summary>Speed from core speed and wall law: no core past the readings' own, no speed past the highest reading.</summary>
    private double Speed(double core, double share) => Math.Min(HighestSpeed, Math.Clamp(core, lowestCore, highestCore) * share);

    /// <summary>A row of speeds from a row of cores and signed distances, in place of the cores; outside the wall not a number.</summary>
    public void Speeds(Span<double> cores, ReadOnlySpan<double> signed) =>
        RowOfSpeeds.Fill(cores, signed, exponent, deepest, lowestCore, highestCore, HighestSpeed);

    /// <summary>Sums over the section, one a column of <paramref name="weights"/>, each weight already times the area of its square.</summary>
    public MapSum[] Sums(SectionCells cells, params double[][] weights)
    {
        var n = x.Length;
        var values = new double[weights.Length];
        var free = Array.ConvertAll(weights, _ => new double[n]);
        var held = Array.ConvertAll(weights, _ => new double[n]);
        var freeSum = new double[weights.Length];
        var correlations = new double[n];
        var wallShares = cells.WallShares(exponent);
        for (var c = 0; c < cells.X.Length; c++)
        {
            var share = wallShares[c];
            var core = Core.At(cells.X[c], cells.Y[c]);
            var speed = Speed(core, share);
            // Which reading the speed hangs on where the map is held.
            var (reading, by) = speed >= HighestSpeed ? (fastest, 1)
                : core < lowestCore ? (lowest, share / shares[lowest])
                : core > highestCore ? (highest, share / shares[highest]) : (-1, 0);
            if (reading < 0)
            {
                Array.Clear(correlations);
                Core.AddCorrelations(cells.X[c], cells.Y[c], share, correlations);
            }
            for (var k = 0; k < weights.Length; k++)
            {
                var g = weights[k][c];
                values[k] += g * speed;
                if (reading >= 0)
                {
                    held[k][reading] += g * by;
                    continue;
                }
                freeSum[k] += g * share;
                for (var i = 0; i < n; i++) free[k][i] += g * correlations[i];
            }
        }
        var open = OpenVariances(cells, wallShares, weights);
        return
        [
            .. weights.Select((_, k) => new MapSum(values[k],
                [.. Core.Weights(free[k], freeSum[k]).Select((w, i) => w / shares[i] + held[k][i])], open[k])),
        ];
    }

    /// <summary>Speeds of all squares.</summary>
    public double[] Speeds(SectionCells cells)
    {
        var result = cells.WallShares(exponent);
        for (var c = 0; c < result.Length; c++) result[c] = Speed(Core.At(cells.X[c], cells.Y[c]), result[c]);
        return result;
    }

    private double[] OpenVariances(SectionCells cells, double[] wallShares, double[][] weights)
    {
        var (left, bottom) = (cells.X.Min(), cells.Y.Min());
        double width = cells.X.Max() - left, height = cells.Y.Max() - bottom;
        var blocks = cells.X
            .Select((px, c) => (Block: (Math.Min(Blocks - 1, (int)(Blocks * (px - left) / width)), Math.Min(Blocks - 1, (int)(Blocks * (cells.Y[c] - bottom) / height))), c))
            .GroupBy(p => p.Block, p => p.c).Select(g => g.ToArray()).ToArray();
        var centres = blocks.Select(b => (X: b.Average(c => cells.X[c]), Y: b.Average(c => cells.Y[c]))).ToArray();
        var sums = weights.Select(w => blocks.Select(b => b.Sum(c => w[c] * wallShares[c])).ToArray()).ToArray();
        var own = new double[weights.Length];
        for (var p = 0; p < blocks.Length; p++)
        {
            for (var q = 0; q <= p; q++)
            {
                var k = (p == q ? 1 : 2) * Core.Correlation(centres[p].X - centres[q].X, centres[p].Y - centres[q].Y);
                for (var s = 0; s < own.Length; s++) own[s] += k * sums[s][p] * sums[s][q];
            }
        }
        return
        [
            .. sums.Select((sum, s) =>
            {
                var correlations = new double[x.Length];
                for (var p = 0; p < blocks.Length; p++) Core.AddCorrelations(centres[p].X, centres[p].Y, sum[p], correlations);
                return Core.Variance(own[s], correlations, sum.Sum());
            }),
        ];
    }
}
