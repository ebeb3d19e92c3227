using Portwright.Shop.Reduction;

namespace Portwright.Shop.Families;

/// <summary>Where a lift's flow should lie by its own curve: the polynomial through its neighbours, logarithm of area over logarithm of lift.</summary>
public static class CurveNeighbours
{
    /// <summary>A sound curve read a tenth of an inch apart leaves it by so much, standard deviation of the logarithm: corners where the throat takes over included. Our own choice.</summary>
    public const double Usual = 0.018;

    /// <summary>Degrees of freedom behind that figure: few, for curves differ.</summary>
    public const double Degrees = 5;

    /// <summary>Measured less expected, logarithm; null at an end of the curve, or with fewer than three neighbours.</summary>
    /// <param name="points">By lift.</param>
    /// <param name="left">Places left out besides the one looked at.</param>
    public static double? Off(IReadOnlyList<LiftPoint> points, int at, params ReadOnlySpan<int> left)
    {
        ArgumentNullException.ThrowIfNull(points);
        List<int> below = [], above = [];
        for (var n = at - 1; n >= 0 && below.Count < 2; n--)
        {
            if (!left.Contains(n)) below.Add(n);
        }

        for (var n = at + 1; n < points.Count && above.Count < 2; n++)
        {
            if (!left.Contains(n)) above.Add(n);
        }

        if (below.Count == 0 || above.Count == 0 || below.Count + above.Count < 3)
        {
            return null;
        }

        int[] neighbours = [.. below, .. above];
        var expected = 0.0;
        foreach (var n in neighbours)
        {
            var weight = 1.0;
            foreach (var m in neighbours.Where(m => m != n))
            {
                weight *= Math.Log(points[at].Lift / points[m].Lift) / Math.Log(points[n].Lift / points[m].Lift);
            }

            expected += weight * Math.Log(points[n].EffectiveArea.Value);
        }

        return Math.Log(points[at].EffectiveArea.Value) - expected;
    }
}
