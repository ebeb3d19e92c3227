namespace Portwright.Shop.Reduction;

/// <summary>Readings gathered by lift.</summary>
public static class LiftGroups
{
    /// <summary>Lifts closer than this are the same lift, m (a quarter of a thousandth of an inch).</summary>
    public const double SameLift = 6e-6;

    /// <summary>True where two lifts (m) are one setting of the lift screw.</summary>
    public static bool Same(double lift, double other) => Math.Abs(lift - other) <= SameLift;

    /// <summary>Groups in order of lift; lifts within <see cref="SameLift"/> of a group's first are one lift.</summary>
    public static List<(double Lift, List<T> Items)> Of<T>(IEnumerable<T> items, Func<T, double> liftOf)
    {
        var groups = new List<(double Lift, List<T> Items)>();
        foreach (var item in items.OrderBy(liftOf))
        {
            if (groups.Count > 0 && Same(liftOf(item), groups[^1].Lift))
            {
                groups[^1].Items.Add(item);
            }
            else
            {
                groups.Add((liftOf(item), [item]));
            }
        }

        return groups;
    }

    /// <summary>Slope of area over lift (m) at each point, by the neighbours; from the origin where a point stands alone.</summary>
    public static double[] Slopes(IReadOnlyList<(double Lift, double Area)> points)
    {
        var slopes = new double[points.Count];
        for (var i = 0; i < points.Count; i++)
        {
            var before = i > 0 ? points[i - 1] : (Lift: 0.0, Area: 0.0);
            var after = i + 1 < points.Count ? points[i + 1] : points[i];
            var run = after.Lift - before.Lift;
            slopes[i] = run > 0 ? (after.Area - before.Area) / run : 0;
        }

        return slopes;
    }
}
