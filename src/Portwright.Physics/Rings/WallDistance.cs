using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using Portwright.Geometry;

namespace Portwright.Physics.Rings;

/// <summary>Distances to the wall for whole rows of points at once: the edges laid out for vector arithmetic.</summary>
internal sealed class WallDistance
{
    private readonly double[] startX, startY, edgeX, edgeY, inverseLength;

    public WallDistance(Outline outline)
    {
        var points = outline.Points;
        var n = points.Count;
        (startX, startY, edgeX, edgeY, inverseLength) = (new double[n], new double[n], new double[n], new double[n], new double[n]);
        for (var i = 0; i < n; i++)
        {
            var edge = points[(i + 1) % n] - points[i];
            (startX[i], startY[i], edgeX[i], edgeY[i]) = (points[i].X, points[i].Y, edge.X, edge.Y);
            inverseLength[i] = 1 / (edge.X * edge.X + edge.Y * edge.Y);
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
        ReadOnlySpan<double> ax = startX, ay = startY, ex = edgeX, ey = edgeY, inverse = inverseLength;
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
        for (var e = 0; e < startX.Length; e++)
        {
            var from = startY[e];
            // The end of an edge is the start of the next one, to the last figure.
            var to = startY[e + 1 == startY.Length ? 0 : e + 1];
            if (from > y == to > y) continue;
            if (count == room.Length) Grow(ref room);
            room[count++] = startX[e] + edgeX[e] * (y - from) / edgeY[e];
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
