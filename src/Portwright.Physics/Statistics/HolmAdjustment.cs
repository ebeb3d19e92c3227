namespace Portwright.Physics.Statistics;

/// <summary>
/// p-values of several comparisons made at once, adjusted so that the chance of even one false alarm among them stays
/// at the level of one (S. Holm, Scandinavian Journal of Statistics 6 (1979) 65-70). Holds for dependent comparisons.
/// </summary>
public static class HolmAdjustment
{
    /// <summary>The adjusted p-values, in the order given: the k-th smallest of m times m - k + 1, never falling, at most 1. No unit.</summary>
    /// <param name="pValues">Probabilities, each 0 to 1.</param>
    public static double[] Adjust(ReadOnlySpan<double> pValues)
    {
        var m = pValues.Length;
        var order = new int[m];
        var sorted = pValues.ToArray();
        for (var i = 0; i < m; i++) order[i] = i;
        Array.Sort(sorted, order);
        var adjusted = new double[m];
        var running = 0.0;
        for (var k = 0; k < m; k++)
        {
            running = Math.Max(running, Math.Min(1, (m - k) * sorted[k]));
            adjusted[order[k]] = running;
        }
        return adjusted;
    }
}
