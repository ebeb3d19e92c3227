namespace Portwright.Geometry;

public sealed partial class Outline
{
    /// <summary>True when the wall nowhere turns back: every straight line between two places of the opening stays in it.</summary>
    public bool IsConvex
    {
        get
        {
            for (var i = 0; i < _points.Length; i++)
            {
                var edge = Next(i) - _points[i];
                var after = Next(i + 1 == _points.Length ? 0 : i + 1) - Next(i);
                if (PlanePoint.Cross(edge, after) < -1e-12 * Math.Sqrt(PlanePoint.Dot(edge, edge) * PlanePoint.Dot(after, after))) return false;
            }
            return true;
        }
    }

    /// <summary>
    /// The line a distance in from the wall: the opening cut by each wall moved inwards. Null where nothing is left, and for a wall that is not convex: there the line may fall into pieces.
    /// </summary>
    /// <param name="depth">m, zero or above.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside the range given.</exception>
    public Outline? Inset(double depth)
    {
        Require.NotNegative(depth, nameof(depth), "m");
        if (!IsConvex) return null;
        var left = new List<PlanePoint>(_points);
        for (var i = 0; i < _points.Length && left.Count > 2; i++)
        {
            var edge = Next(i) - _points[i];
            var inwards = new PlanePoint(-edge.Y, edge.X) * (1 / _points[i].To(Next(i)));
            left = Cut(left, _points[i] + inwards * depth, inwards);
        }
        return TryCreate(left, out var inset, out _) ? inset : null;
    }

    /// <summary>What of a convex polygon lies on the inner side of a line (Sutherland and Hodgman 1974).</summary>
    private static List<PlanePoint> Cut(List<PlanePoint> polygon, PlanePoint on, PlanePoint inwards)
    {
        var kept = new List<PlanePoint>();
        for (var i = 0; i < polygon.Count; i++)
        {
            var a = polygon[i];
            var b = polygon[(i + 1) % polygon.Count];
            var depthA = PlanePoint.Dot(a - on, inwards);
            var depthB = PlanePoint.Dot(b - on, inwards);
            if (depthA >= 0) kept.Add(a);
            if (depthA > 0 && depthB < 0 || depthA < 0 && depthB > 0) kept.Add(a + (b - a) * (depthA / (depthA - depthB)));
        }
        return kept;
    }
}
