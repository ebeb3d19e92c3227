namespace Portwright.Shop.Bench;

/// <summary>Leaks a bench may have, as areas with the chance of each before it was read: finely near nothing, coarser where they are large.</summary>
internal sealed class LeakGrid
{
    /// <summary>What a sound bench leaks on the mean, as a share of its smallest plate; larger ones are rarer, exponentially. Common practice, no source.</summary>
    public const double Usual = MeterFactor.LeakNotTested;

    /// <summary>The grid is even in the inverse hyperbolic sine of the leak over this share of the smallest plate.</summary>
    private const double Bend = 0.002;

    private const double Step = 0.07;

    /// <summary>Larger ones are considered only where one was read.</summary>
    private const double Largest = 0.2;

    private readonly double[]?[] _changed;

    private LeakGrid(double[] areas, double[] widths, double plate) => (Areas, Widths, Plate, _changed) = (areas, widths, plate, new double[]?[areas.Length]);

    /// <summary>m2.</summary>
    public IReadOnlyList<double> Areas { get; }

    /// <summary>Each one's share of the smallest plate that it stands for.</summary>
    public IReadOnlyList<double> Widths { get; }

    /// <summary>The smallest plate, m2.</summary>
    public double Plate { get; }

    /// <param name="plate">The smallest plate of the bench, m2.</param>
    /// <param name="read">The largest leak that was read, m2.</param>
    public static LeakGrid For(double plate, double read)
    {
        var count = (int)Math.Ceiling(Math.Asinh(Math.Max(Largest, 2 * read / plate) / Bend) / Step);
        double[] at = [.. Enumerable.Range(0, count).Select(i => (i + 0.5) * Step)];
        return new([.. at.Select(u => plate * Bend * Math.Sinh(u))], [.. at.Select(u => Bend * Math.Cosh(u) * Step)], plate);
    }

    /// <summary>Chance of each leak in a sound bench, before it was read.</summary>
    public double[] Sound() => [.. Areas.Select((a, i) => Math.Exp(-a / Plate / Usual) / Usual * Widths[i])];

    /// <summary>Chance of each leak in a bench whose seal changed from one that leaked the area so-many of the grid; no leak is under nothing.</summary>
    public double[] Changed(int from)
    {
        if (_changed[from] is not { } all)
        {
            all = [.. Areas.Select((a, i) => Math.Exp(-Math.Pow((a - Areas[from]) / Plate / BenchShift.MovedBy, 2) / 2) * Widths[i])];
            var sum = all.Sum();
            _changed[from] = all = [.. all.Select(c => c / sum)];
        }

        return all;
    }
}
