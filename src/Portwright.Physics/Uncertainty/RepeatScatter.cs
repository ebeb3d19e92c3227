namespace Portwright.Physics.Uncertainty;

/// <summary>How far single readings of one set-up scatter: the experimental standard deviation (JCGM 100:2008, 4.2.2).</summary>
/// <param name="StandardDeviation">Of one reading, in the unit of the readings, or as a fraction if pooled so.</param>
/// <param name="DegreesOfFreedom">Readings less means taken, no unit.</param>
public readonly record struct RepeatScatter(double StandardDeviation, double DegreesOfFreedom)
{
    /// <summary>The mean, in the unit of the readings.</summary>
    /// <param name="readings">Any one unit.</param>
    /// <exception cref="ArgumentException">There is no reading.</exception>
    public static double Mean(ReadOnlySpan<double> readings)
    {
        if (readings.IsEmpty) throw new ArgumentException("A mean needs at least 1 reading.", nameof(readings));
        // Deviations from the first reading keep the digits that differ.
        var sum = 0.0;
        foreach (var x in readings) sum += x - readings[0];
        return readings[0] + sum / readings.Length;
    }

    /// <param name="readings">Any one unit.</param>
    /// <exception cref="ArgumentException">Fewer than 2 readings.</exception>
    public static RepeatScatter Of(params ReadOnlySpan<double> readings)
    {
        if (readings.Length < 2)
            throw new ArgumentException($"Scatter needs at least 2 readings; there is {readings.Length}.", nameof(readings));
        return new(Math.Sqrt(SumOfSquares(readings) / (readings.Length - 1)), readings.Length - 1);
    }

    /// <summary>
    /// One scatter from the repeats of several points, each about its own mean (JCGM 100:2008, 4.2.4, H.3.6 note).
    /// Points with a single reading add nothing.
    /// </summary>
    /// <param name="points">Any one unit.</param>
    /// <exception cref="ArgumentException">No point has 2 readings.</exception>
    public static RepeatScatter Pooled(IEnumerable<IReadOnlyList<double>> points) => Pooled(points, relative: false);

    /// <summary>As <see cref="Pooled(IEnumerable{IReadOnlyList{double}})"/>, each point's scatter as a fraction of its mean.</summary>
    /// <param name="points">Any one unit.</param>
    /// <exception cref="ArgumentException">No point has 2 readings, or a mean is 0.</exception>
    public static RepeatScatter PooledRelative(IEnumerable<IReadOnlyList<double>> points) => Pooled(points, relative: true);

    private static RepeatScatter Pooled(IEnumerable<IReadOnlyList<double>> points, bool relative)
    {
        double sum = 0, dof = 0;
        foreach (var point in points)
        {
            if (point.Count < 2) continue;
            double[] readings = [.. point];
            var mean = relative ? Mean(readings) : 1;
            if (mean == 0) throw new ArgumentException("A relative scatter needs means that are not 0.", nameof(points));
            sum += SumOfSquares(readings) / (mean * mean);
            dof += readings.Length - 1;
        }
        return dof > 0
            ? new(Math.Sqrt(sum / dof), dof)
            : throw new ArgumentException("A pooled scatter needs at least one point with 2 readings.", nameof(points));
    }

    private static double SumOfSquares(ReadOnlySpan<double> readings)
    {
        var mean = Mean(readings);
        var sum = 0.0;
        foreach (var x in readings) sum += (x - mean) * (x - mean);
        return sum;
    }
}
