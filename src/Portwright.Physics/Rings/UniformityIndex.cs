namespace Portwright.Physics.Rings;

/// <summary>How evenly air fills a section: 1 where it moves alike everywhere, a where all of it moves in the share a of the area.</summary>
/// <remarks>
/// 1 - sum(|v_i - v_mean| A_i)/(2 v_mean A): H. Weltens, H. Bressler, F. Terres, H. Neumaier, D. Rammoser, Optimisation of Catalytic Converter Gas
/// Flow Distribution by CFD Prediction, SAE 930780 (1993).
/// </remarks>
public static class UniformityIndex
{
    /// <summary>Area-weighted mean, in the unit of the speeds.</summary>
    /// <param name="speeds">Any one unit.</param>
    /// <param name="areas">Any one unit, none below zero, not all zero.</param>
    /// <exception cref="ArgumentException">There is none, the lists differ in length, or the areas are no areas.</exception>
    public static double Mean(ReadOnlySpan<double> speeds, ReadOnlySpan<double> areas)
    {
        if (speeds.IsEmpty || speeds.Length != areas.Length)
            throw new ArgumentException($"{speeds.Length} speeds need as many areas, at least 1; there are {areas.Length}.", nameof(areas));
        double flow = 0, area = 0;
        for (var i = 0; i < speeds.Length; i++)
        {
            if (!(areas[i] >= 0)) throw new ArgumentException("An area must be zero or above.", nameof(areas));
            flow += speeds[i] * areas[i];
            area += areas[i];
        }
        return area > 0 ? flow / area : throw new ArgumentException("The areas must not all be zero.", nameof(areas));
    }

    /// <summary>The index, 0 to 1 for speeds of one sign, no unit.</summary>
    /// <param name="speeds">Any one unit.</param>
    /// <param name="areas">Any one unit, none below zero, not all zero.</param>
    /// <exception cref="ArgumentException">As for <see cref="Mean"/>, or the mean is zero: air at rest has no distribution.</exception>
    public static double Of(ReadOnlySpan<double> speeds, ReadOnlySpan<double> areas)
    {
        var mean = Mean(speeds, areas);
        if (mean == 0) throw new ArgumentException("The mean speed must not be zero.", nameof(speeds));
        double off = 0, area = 0;
        for (var i = 0; i < speeds.Length; i++)
        {
            off += Math.Abs(speeds[i] - mean) * areas[i];
            area += areas[i];
        }
        return 1 - off / (2 * Math.Abs(mean) * area);
    }
}
