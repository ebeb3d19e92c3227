using System.Collections.Immutable;

namespace Portwright.Figures;

/// <summary>Lines of equal value through a grid (marching squares, straight between the grid's points).</summary>
internal static class Contours
{
    /// <summary>Closed lines around all that is at or above a level. Outside the grid everything is below.</summary>
    /// <param name="values">By column and row.</param>
    /// <param name="at">Where a place of the grid (column, row) lies on the drawing.</param>
    public static ImmutableArray<ImmutableArray<Place>> Above(double[,] values, double level, Func<double, double, Place> at)
    {
        var (columns, rows) = (values.GetLength(0), values.GetLength(1));
        // One more row and column of low points all round, so that every line closes.
        double V(int i, int j) => i < 0 || j < 0 || i >= columns || j >= rows ? double.NegativeInfinity : values[i, j];
        var next = new Dictionary<(int I, int J, bool Up), (int, int, bool)>();
        for (var j = -1; j < rows; j++)
        {
            for (var i = -1; i < columns; i++)
            {
                var (a, b, c, d) = (V(i, j) >= level, V(i + 1, j) >= level, V(i + 1, j + 1) >= level, V(i, j + 1) >= level);
                var (bottom, right, top, left) = ((i, j, false), (i + 1, j, true), (i, j + 1, false), (i, j, true));
                // The high side is kept on one hand of every piece.
                switch ((a ? 1 : 0) | (b ? 2 : 0) | (c ? 4 : 0) | (d ? 8 : 0))
                {
                    case 1: next[bottom] = left; break;
                    case 2: next[right] = bottom; break;
                    case 3: next[right] = left; break;
                    case 4: next[top] = right; break;
                    case 5: next[bottom] = left; next[top] = right; break;
                    case 6: next[top] = bottom; break;
                    case 7: next[top] = left; break;
                    case 8: next[left] = top; break;
                    case 9: next[bottom] = top; break;
                    case 10: next[right] = bottom; next[left] = top; break;
                    case 11: next[right] = top; break;
                    case 12: next[left] = right; break;
                    case 13: next[bottom] = right; break;
                    case 14: next[left] = bottom; break;
                    default: break;
                }
            }
        }

        Place Crossing((int I, int J, bool Up) edge)
        {
            var (from, to) = (V(edge.I, edge.J), edge.Up ? V(edge.I, edge.J + 1) : V(edge.I + 1, edge.J));
            var share = double.IsInfinity(from) ? 1 : double.IsInfinity(to) ? 0 : (level - from) / (to - from);
            return edge.Up ? at(edge.I, edge.J + share) : at(edge.I + share, edge.J);
        }

        var rings = ImmutableArray.CreateBuilder<ImmutableArray<Place>>();
        while (next.Count > 0)
        {
            var ring = ImmutableArray.CreateBuilder<Place>();
            var edge = next.Keys.First();
            while (next.Remove(edge, out var following))
            {
                ring.Add(Crossing(edge));
                edge = following;
            }

            if (ring.Count > 2) rings.Add(ring.ToImmutable());
        }

        return rings.ToImmutable();
    }
}
