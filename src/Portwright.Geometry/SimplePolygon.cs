using System.Globalization;

namespace Portwright.Geometry;

/// <summary>What makes a list of points a wall line: three or more apart, enclosing something, not crossing itself.</summary>
internal static class SimplePolygon
{
    /// <summary>Thinner than this share of its longest side squared, an outline encloses nothing a tool could enter.</summary>
    private const double LeastArea = 1e-9;

    private const string NothingEnclosed = "The outline encloses no area: its points lie on one line. Add points around the wall.";

    /// <summary>Returns null and the points counter-clockwise without repeats, or the sentence that says what is wrong.</summary>
    public static string? Accept(IEnumerable<PlanePoint> given, out PlanePoint[] accepted)
    {
        accepted = [];
        var kept = new List<PlanePoint>();
        foreach (var p in given)
        {
            if (!double.IsFinite(p.X) || !double.IsFinite(p.Y))
                return string.Create(CultureInfo.InvariantCulture, $"Point {kept.Count + 1} of the outline is not a number. Type it again.");
            if (kept.Count == 0 || kept[^1] != p) kept.Add(p);
        }
        while (kept.Count > 1 && kept[^1] == kept[0]) kept.RemoveAt(kept.Count - 1);
        if (kept.Count < 3)
            return string.Create(CultureInfo.InvariantCulture, $"The outline has {kept.Count} different points. It takes three or more around the wall.");

        var area = AreaMoments.Of(kept).Area;
        var bounds = Bounds.Around(kept);
        var size = Math.Max(bounds.Width, bounds.Height);
        if (!double.IsFinite(size * size)) return "The outline is larger than can be worked with. Check the unit of the points.";
        var far = kept.MaxBy(p => p.To(kept[0]));
        if (kept.All(p => Math.Abs(PlanePoint.Cross(far - kept[0], p - kept[0])) <= LeastArea * size * size)) return NothingEnclosed;
        if (FirstCrossing(kept) is var (i, j) && i >= 0)
        {
            return string.Create(CultureInfo.InvariantCulture,
                $"The outline crosses itself: the wall from point {i + 1} to {(i + 1) % kept.Count + 1} meets the wall from point {j + 1} to {(j + 1) % kept.Count + 1}. Put the points in order around the wall.");
        }
        if (!(Math.Abs(area) > LeastArea * size * size)) return NothingEnclosed;
        if (area < 0) kept.Reverse();
        accepted = [.. kept];
        return null;
    }

    private static (int First, int Second) FirstCrossing(List<PlanePoint> points)
    {
        var count = points.Count;
        for (var i = 0; i < count; i++)
        {
            var a = points[i];
            var b = points[(i + 1) % count];
            // The neighbour shares a corner: it crosses only by running straight back over the wall just drawn.
            var c = points[(i + 2) % count];
            if (PlanePoint.Cross(b - a, c - b) == 0 && PlanePoint.Dot(b - a, c - b) < 0) return (i, (i + 1) % count);
            for (var j = i + 2; j < count; j++)
            {
                if (i == 0 && j == count - 1) continue;
                if (Meet(a, b, points[j], points[(j + 1) % count])) return (i, j);
            }
        }
        return (-1, -1);
    }

    private static bool Meet(PlanePoint a, PlanePoint b, PlanePoint c, PlanePoint d)
    {
        if (Math.Max(a.X, b.X) < Math.Min(c.X, d.X) || Math.Max(c.X, d.X) < Math.Min(a.X, b.X)
            || Math.Max(a.Y, b.Y) < Math.Min(c.Y, d.Y) || Math.Max(c.Y, d.Y) < Math.Min(a.Y, b.Y))
        {
            return false;
        }

        var c1 = Math.Sign(PlanePoint.Cross(b - a, c - a));
        var c2 = Math.Sign(PlanePoint.Cross(b - a, d - a));
        var c3 = Math.Sign(PlanePoint.Cross(d - c, a - c));
        var c4 = Math.Sign(PlanePoint.Cross(d - c, b - c));
        return c1 * c2 <= 0 && c3 * c4 <= 0;
    }
}
