namespace Portwright.Geometry;

public sealed partial class Outline
{
    /// <summary>True for a point in the opening; the wall line itself counts as inside.</summary>
    public bool Contains(PlanePoint p)
    {
        if (p.X < Bounds.Left || p.X > Bounds.Right || p.Y < Bounds.Bottom || p.Y > Bounds.Top) return false;
        var inside = false;
        for (var i = 0; i < _points.Length; i++)
        {
            var a = _points[i];
            var b = Next(i);
            var cross = PlanePoint.Cross(b - a, p - a);
            if (cross == 0 && PlanePoint.Dot(p - a, p - b) <= 0) return true;
            if (a.Y > p.Y != b.Y > p.Y && cross > 0 == b.Y > a.Y) inside = !inside;
        }
        return inside;
    }

    /// <summary>The point of the wall nearest to <paramref name="p"/>.</summary>
    public PlanePoint NearestWall(PlanePoint p)
    {
        var best = _points[0];
        var least = double.PositiveInfinity;
        for (var i = 0; i < _points.Length; i++)
        {
            var a = _points[i];
            var edge = Next(i) - a;
            var along = Math.Clamp(PlanePoint.Dot(p - a, edge) / PlanePoint.Dot(edge, edge), 0, 1);
            var foot = a + edge * along;
            var gap = p - foot;
            var squared = PlanePoint.Dot(gap, gap);
            if (!(squared < least)) continue;
            least = squared;
            best = foot;
        }
        return best;
    }

    /// <summary>Distance from <paramref name="p"/> to the nearest wall, m, zero or above on either side of it.</summary>
    public double DistanceToWall(PlanePoint p) => p.To(NearestWall(p));

    /// <summary>The first wall met from <see cref="BearingCentre"/> towards a bearing.</summary>
    /// <param name="bearingHours">Clock hours, any finite number; 12 the roof, 3 the centre side, in hours.</param>
    public PlanePoint WallAt(double bearingHours)
    {
        var direction = Bearing.Direction(bearingHours);
        return BearingCentre + direction * FirstWall(BearingCentre, direction);
    }

    /// <summary>Distance from <see cref="BearingCentre"/> to the wall at a bearing, m: the depth at which the middle is reached.</summary>
    /// <param name="bearingHours">Clock as the record keeps it, in hours, any finite number.</param>
    public double DepthOfCentre(double bearingHours) => FirstWall(BearingCentre, Bearing.Direction(bearingHours));

    /// <summary>The point a distance in from the wall, on the line from the wall at a bearing to <see cref="BearingCentre"/> and on past it.</summary>
    /// <param name="bearingHours">Clock hours, any finite number, in hours.</param>
    /// <param name="depthFromWall">m, zero or above. Past the far wall the point lies outside: ask <see cref="Contains"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside the range given.</exception>
    public PlanePoint PointAt(double bearingHours, double depthFromWall)
    {
        Require.NotNegative(depthFromWall, nameof(depthFromWall), "m");
        var direction = Bearing.Direction(bearingHours);
        return BearingCentre + direction * (FirstWall(BearingCentre, direction) - depthFromWall);
    }

    /// <summary>Bearing of a point seen from <see cref="BearingCentre"/>, hours, and its depth in from the wall there, m (below zero outside).</summary>
    public (double BearingHours, double DepthFromWall) PlaceOf(PlanePoint p)
    {
        var hours = Bearing.Of(p - BearingCentre);
        return (hours, DepthOfCentre(hours) - p.To(BearingCentre));
    }

    private double FirstWall(PlanePoint from, PlanePoint direction)
    {
        var first = double.PositiveInfinity;
        for (var i = 0; i < _points.Length; i++)
        {
            var a = _points[i] - from;
            var b = Next(i) - from;
            // Which side of the ray the ends lie on; exact comparison keeps a corner from slipping between its two edges.
            var sideA = PlanePoint.Cross(direction, a);
            var sideB = PlanePoint.Cross(direction, b);
            if (sideA > 0 == sideB > 0) continue;
            var reach = PlanePoint.Dot(direction, a + (b - a) * (sideA / (sideA - sideB)));
            if (reach >= 0 && reach < first) first = reach;
        }
        // A centre on the wall itself may miss every edge by rounding: then the wall is where it stands.
        return double.IsInfinity(first) ? 0 : first;
    }

    private PlanePoint MiddleOfWidestChord()
    {
        var y = Centroid.Y;
        var crossings = new List<double>();
        for (var i = 0; i < _points.Length; i++)
        {
            var a = _points[i];
            var b = Next(i);
            if (a.Y > y != b.Y > y) crossings.Add(a.X + (b.X - a.X) * (y - a.Y) / (b.Y - a.Y));
        }
        crossings.Sort();
        var widest = (Left: crossings[0], Right: crossings[1]);
        for (var i = 2; i + 1 < crossings.Count; i += 2)
            if (crossings[i + 1] - crossings[i] > widest.Right - widest.Left) widest = (crossings[i], crossings[i + 1]);
        return new((widest.Left + widest.Right) / 2, y);
    }
}
