using System.Numerics;
using Portwright.Geometry;

namespace Portwright.Physics.Rings;

/// <summary>A section cut into small squares for sums over its area, the squares at the wall counted with the share that lies inside.</summary>
internal sealed class SectionCells
{
    /// <summary>Squares across the shorter side.</summary>
    private const int Across = 64;

    public SectionCells(Outline outline)
    {
        var bounds = outline.Bounds;
        Step = Math.Min(bounds.Width, bounds.Height) / Across;
        var walls = new WallDistance(outline);
        int columns = (int)Math.Ceiling(bounds.Width / Step), rows = (int)Math.Ceiling(bounds.Height / Step);
        var row = new double[(columns + Vector<double>.Count - 1) / Vector<double>.Count * Vector<double>.Count];
        List<double> x = [], y = [], area = [], distance = [];
        for (var j = 0; j < rows; j++)
        {
            var yc = bounds.Bottom + (j + 0.5) * Step;
            walls.Row(yc, bounds.Left + 0.5 * Step, Step, row);
            for (var i = 0; i < columns; i++)
            {
                var share = Math.Clamp(0.5 + row[i] / Step, 0, 1);
                if (share == 0) continue;
                x.Add(bounds.Left + (i + 0.5) * Step);
                y.Add(yc);
                area.Add(share);
                distance.Add(row[i]);
            }
        }
        var total = area.Sum();
        (X, Y, Distance) = ([.. x], [.. y], [.. distance]);
        Area = [.. area.Select(a => a / total)];
        Deepest = Deepen(outline);
    }

    /// <summary>Side of a square, m.</summary>
    public double Step { get; }

    public double[] X { get; }

    public double[] Y { get; }

    /// <summary>Shares of the section's area; they add to 1.</summary>
    public double[] Area { get; }

    /// <summary>From the middle of the square to the nearest wall, m; below zero where the middle lies outside and a corner inside.</summary>
    public double[] Distance { get; }

    /// <summary>Largest distance to the wall anywhere in the section, m.</summary>
    public double Deepest { get; }

    /// <summary>
    /// Mean over each square of the share the wall law leaves: along the line to the wall the power is integrated, for at the wall it is far from its middle
    /// value.
    /// </summary>
    public double[] WallShares(double exponent)
    {
        var shares = new double[Distance.Length];
        for (var c = 0; c < shares.Length; c++)
        {
            // Three squares in, middle and mean agree to 1e-4.
            if (Distance[c] > 3 * Step || Distance[c] + Step / 2 > Deepest)
            {
                shares[c] = WallLayer.Share(Distance[c], Deepest, exponent);
            }
            else
            {
                double from = Math.Max(0, Distance[c] - Step / 2), to = Distance[c] + Step / 2;
                shares[c] = (to * WallLayer.Share(to, Deepest, exponent) - from * WallLayer.Share(from, Deepest, exponent)) / ((1 + exponent) * (to - from));
            }
        }
        return shares;
    }

    /// <summary>From the deepest square uphill to the deepest place.</summary>
    private double Deepen(Outline outline)
    {
        var at = Array.IndexOf(Distance, Distance.Max());
        var (best, place) = (Distance[at], new PlanePoint(X[at], Y[at]));
        for (var step = Step / 2; step > Step * 1e-4; step /= 2)
        {
            foreach (var (dx, dy) in ((double, double)[])[(1, 0), (-1, 0), (0, 1), (0, -1), (1, 1), (-1, 1), (1, -1), (-1, -1)])
            {
                var p = new PlanePoint(place.X + dx * step, place.Y + dy * step);
                var d = outline.Contains(p) ? outline.DistanceToWall(p) : 0;
                if (d > best) (best, place) = (d, p);
            }
        }
        return best;
    }
}
