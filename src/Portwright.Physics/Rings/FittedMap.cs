namespace Portwright.Physics.Rings;

/// <summary>Readings, wall law and core field put together for one exponent: what the map is made of.</summary>
internal sealed class FittedMap
{
    private readonly double[] _shares;
    private readonly double _exponent, _deepest, _lowestCore, _highestCore, _highestSpeed;
    private readonly int _lowest, _highest, _fastest;

    public FittedMap(Kriging kriging, double[] speeds, double[] distances, double deepest, double exponent)
    {
        (this._deepest, this._exponent) = (deepest, exponent);
        _shares = [.. distances.Select(d => WallLayer.Share(d, deepest, exponent))];
        var cores = speeds.Zip(_shares, (v, w) => v / w).ToArray();
        Core = new CoreField(kriging, cores);
        (_lowestCore, _highestCore, _highestSpeed) = (cores.Min(), cores.Max(), speeds.Max());
        (_lowest, _highest, _fastest) = (Array.IndexOf(cores, _lowestCore), Array.IndexOf(cores, _highestCore), Array.IndexOf(speeds, _highestSpeed));
    }

    public CoreField Core { get; }

    /// <summary>Speed at a place, m/s.</summary>
    /// <param name="distance">To the nearest wall, m, zero or above.</param>
    public double At(double px, double py, double distance) => Speed(Core.At(px, py), WallLayer.Share(distance, _deepest, _exponent));

    /// <summary>A row of speeds from a row of cores and signed distances, in place of the cores; outside the wall not a number.</summary>
    public void Speeds(Span<double> cores, ReadOnlySpan<double> signed) =>
        RowOfSpeeds.Fill(cores, signed, _exponent, _deepest, _lowestCore, _highestCore, _highestSpeed);

    /// <summary>Speeds of all squares of the section.</summary>
    public double[] Speeds(SectionCells cells, double[][] correlations)
    {
        var speeds = Core.Over(correlations);
        var wall = cells.WallShares(_exponent);
        for (var c = 0; c < speeds.Length; c++) speeds[c] = Speed(speeds[c], wall[c]);
        return speeds;
    }

    /// <summary>Sums over the section, one a list of <paramref name="weights"/>, each weight already times the area of its square.</summary>
    public MapSum[] Sums(SectionCells cells, double[][] correlations, params double[][] weights)
    {
        var core = Core.Over(correlations);
        var wall = cells.WallShares(_exponent);
        var open = new OpenAir(cells, Core.Kriging);
        return Array.ConvertAll(weights, w => Sum(w, core, wall, correlations, open));
    }

    private MapSum Sum(double[] weights, double[] core, double[] wall, double[][] correlations, OpenAir open)
    {
        var (value, freeSum) = (0.0, 0.0);
        var free = new double[weights.Length];
        var held = new double[_shares.Length];
        for (var c = 0; c < weights.Length; c++)
        {
            var speed = Speed(core[c], wall[c]);
            value += weights[c] * speed;
            // Which reading the speed hangs on where the map is held.
            if (speed >= _highestSpeed) held[_fastest] += weights[c];
            else if (core[c] < _lowestCore) held[_lowest] += weights[c] * wall[c] / _shares[_lowest];
            else if (core[c] > _highestCore) held[_highest] += weights[c] * wall[c] / _shares[_highest];
            else freeSum += free[c] = weights[c] * wall[c];
        }
        var sums = Array.ConvertAll(correlations, of => Dot(free, of));
        double[] sensitivities = [.. Core.Kriging.Weights(sums, freeSum).Select((s, i) => s / _shares[i] + held[i])];
        return new(value, sensitivities, open.Variance([.. weights.Zip(wall, (g, w) => g * w)]));
    }

    /// <summary>Speed from core speed and wall law: no core past the readings' own, no speed past the highest reading.</summary>
    private double Speed(double core, double share) => Math.Min(_highestSpeed, Math.Clamp(core, _lowestCore, _highestCore) * share);

    private static double Dot(double[] a, double[] b)
    {
        var sum = 0.0;
        for (var i = 0; i < a.Length; i++) sum += a[i] * b[i];
        return sum;
    }
}
