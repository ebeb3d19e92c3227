namespace Portwright.Geometry.Sums;

/// <summary>
/// Integrals from values at rising places, not evenly spaced (Newton-Cotes rules, any text of numerical analysis). Places and values in any units that belong together.
/// </summary>
public static class RuleOfSum
{
    /// <summary>Straight between places: sum of (a + b)/2 x step. In units of place times value.</summary>
    /// <param name="places">Rising, in any unit.</param>
    /// <param name="values">As many, in any unit.</param>
    /// <exception cref="ArgumentException">The rows differ in length, or there are fewer than 2 places.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The places do not rise.</exception>
    public static double MeanOfEnds(IReadOnlyList<double> places, IReadOnlyList<double> values) =>
        Steps(places, values, (a, b) => (a + b) / 2);

    /// <summary>Each step a frustum of a pyramid or cone: sum of (a + b + sqrt(a b))/3 x step. For areas, zero or above; exact where the section keeps its shape and tapers straight. In units of place times value.</summary>
    /// <param name="places">Rising, in any unit.</param>
    /// <param name="areas">As many, in any unit, zero or above.</param>
    /// <exception cref="ArgumentException">The rows differ in length, or there are fewer than 2 places.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The places do not rise.</exception>
    public static double Frustum(IReadOnlyList<double> places, IReadOnlyList<double> areas) =>
        Steps(places, areas, (a, b) => (a + b + Math.Sqrt(a * b)) / 3);

    /// <summary>A parabola through each three places (Simpson's rule for uneven steps); an odd last step takes the parabola of the last three. Two places: straight. In units of place times value.</summary>
    /// <param name="places">Rising, in any unit.</param>
    /// <param name="values">As many, in any unit.</param>
    /// <exception cref="ArgumentException">The rows differ in length, or there are fewer than 2 places.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The places do not rise.</exception>
    public static double Simpson(IReadOnlyList<double> places, IReadOnlyList<double> values)
    {
        Check(places, values);
        if (places.Count == 2) return MeanOfEnds(places, values);
        var sum = 0.0;
        var last = places.Count - 1;
        var i = 0;
        for (; i + 2 <= last; i += 2)
        {
            double h = places[i + 1] - places[i], k = places[i + 2] - places[i + 1], whole = h + k;
            sum += whole / 6 * ((2 - k / h) * values[i] + whole * whole / (h * k) * values[i + 1] + (2 - h / k) * values[i + 2]);
        }
        if (i == last) return sum;
        double before = places[last - 1] - places[last - 2], step = places[last] - places[last - 1];
        return sum
            + values[last] * (2 * step * step + 3 * before * step) / (6 * (before + step))
            + values[last - 1] * (step * step + 3 * step * before) / (6 * before)
            - values[last - 2] * step * step * step / (6 * before * (before + step));
    }

    private static double Steps(IReadOnlyList<double> places, IReadOnlyList<double> values, Func<double, double, double> mean)
    {
        Check(places, values);
        var sum = 0.0;
        for (var i = 1; i < places.Count; i++) sum += mean(values[i - 1], values[i]) * (places[i] - places[i - 1]);
        return sum;
    }

    private static void Check(IReadOnlyList<double> places, IReadOnlyList<double> values)
    {
        ArgumentNullException.ThrowIfNull(places);
        ArgumentNullException.ThrowIfNull(values);
        if (places.Count != values.Count || places.Count < 2) throw new ArgumentException("It takes two places or more and as many values.", nameof(values));
        for (var i = 1; i < places.Count; i++)
            if (!(places[i] > places[i - 1])) Require.Refuse(places[i], nameof(places), "above the place before it");
    }
}
