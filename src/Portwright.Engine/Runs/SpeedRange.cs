namespace Portwright.Engine.Runs;

/// <summary>Engine speeds that count, and how much each does.</summary>
/// <param name="TurnsASecond">1/s, rising.</param>
/// <param name="Weights">As many, zero or above, not all zero, no unit.</param>
public sealed record SpeedRange(IReadOnlyList<double> TurnsASecond, IReadOnlyList<double> Weights)
{
    /// <summary>Speeds evenly apart from the lowest to the highest, all counting alike.</summary>
    /// <param name="lowest">1/s.</param>
    /// <param name="highest">1/s.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static SpeedRange Even(double lowest, double highest, int count = 8)
    {
        Require.Positive(lowest, nameof(lowest), "1/s");
        if (!(highest >= lowest)) Require.Refuse(highest, nameof(highest), "the lowest speed or above, in 1/s");
        var speeds = count < 2 || highest == lowest ? [highest] : Enumerable.Range(0, count).Select(i => lowest + (highest - lowest) * i / (count - 1)).ToArray();
        return new(speeds, [.. speeds.Select(_ => 1.0)]);
    }

    /// <summary>Weighted mean of a figure, one a speed, in the unit of the figures.</summary>
    /// <param name="figures">One a speed, in any unit.</param>
    /// <exception cref="ArgumentException">Not one figure a speed.</exception>
    public double Mean(IReadOnlyList<double> figures)
    {
        ArgumentNullException.ThrowIfNull(figures);
        if (figures.Count != Weights.Count) throw new ArgumentException($"{Weights.Count} speeds need as many figures.", nameof(figures));
        return figures.Select((f, i) => f * Weights[i]).Sum() / Weights.Sum();
    }

    /// <summary>One task a speed.</summary>
    public IEnumerable<EngineTask> Tasks(EngineDesign design, Settling settling) => TurnsASecond.Select(n => new EngineTask(design, n, settling));
}
