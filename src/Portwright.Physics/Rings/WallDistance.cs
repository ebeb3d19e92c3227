using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using Portwright.Geometry;

namespace Portwright.Physics.Rings;

/// <summary>Distances to the wall for whole rows of points at once: the edges laid out for vector arithmetic.</summary>
internal sealed class WallDistance
{
    private readonly double[] _startX, _startY, _edgeX, _edgeY, _inverseLength;

    public WallDistance(Outline outline)
    {
        var points = outline.Points;
        var n = points.Count;
        (_startX, _startY, _edgeX, _edgeY, _inverseLength) = (new double[n], new double[n], new double[n], new double[n], new double[n]);
        for (var i = 0; i < n; i++)
        {
            var edge = points[(i + 1) % n] - points[i];
            (_startX[i], _startY[i], _edgeX[i], _edgeY[i]) = (points[i].X, points[i].Y, edge.X, edge.Y);
            _inverseLength[i] = 1 / (edge.X * edge.X + edge.Y * edge.Y);
        }
    }

    /// <summary>Distance to the nearest wall, m, above zero inside and below zero outside, at x0 + i step on the line y.</summary>
    /// <param name="signed">Receives the distances; its length is a whole number of vectors.</param>
    public void Row(double y, double x0, double step, Span<double> signed)
    {
        Distances(y, x0, step, MemoryMarshal.Cast<double, Vector<double>>(signed));
        Span<double> crossings = stackalloc double[64];
        crossings = Crossings(y, crossings);
        var next = 0;
        for (var i = 0; i < signed.Length; i++)
        {
            var x = x0 + i * step;
            while (next < crossings.Length && crossings[next] <= x) next++;
            if ((next & 1) == 0) signed[i] = -signed[i];
        }
    }

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private void Distances(double y, double x0, double step, Span<Vector<double>> distances)
    {
        var x = new Vector<double>(x0) + step * Vector.CreateSequence(0.0, 1.0);
        var stride = new Vector<double>(step * Vector<double>.Count);
        ReadOnlySpan<double> ax = _startX, ay = _startY, ex = _edgeX, ey = _edgeY, inverse = _inverseLength;
        for (var i = 0; i < distances.Length; i++)
        {
            var least = new Vector<double>(double.MaxValue);
            for (var e = 0; e < ax.Length; e++)
            {
                var px = x - new Vector<double>(ax[e]);
                var py = y - ay[e];
                var along = (px * ex[e] + new Vector<double>(py * ey[e])) * inverse[e];
                along = Vector.MinNative(Vector.MaxNative(along, Vector<double>.Zero), Vector<double>.One);
                var dx = px - along * ex[e];
                var dy = new Vector<double>(py) - along * ey[e];
                least = Vector.MinNative(least, dx * dx + dy * dy);
            }
            distances[i] = Vector.SquareRoot(least);
            x += stride;
        }
    }

    /// <summary>Where the wall crosses the line y, ascending.</summary>
    private Span<double> Crossings(double y, Span<double> room)
    {
        var count = 0;
        for (var e = 0; e < _startX.Length; e++)
        {
            var from = _startY[e];
            // The end of an edge is the start of the next one, to the last figure.
            var to = _startY[e + 1 == _startY.Length ? 0 : e + 1];
            if (from > y == to > y) continue;
            if (count == room.Length) Grow(ref room);
            room[count++] = _startX[e] + _edgeX[e] * (y - from) / _edgeY[e];
        }
        room = room[..count];
        room.Sort();
        return room;
    }

    private static void Grow(ref Span<double> room)
    {
        var more = new double[2 * room.Length];
        room.CopyTo(more);
        room = more;
    }
}
