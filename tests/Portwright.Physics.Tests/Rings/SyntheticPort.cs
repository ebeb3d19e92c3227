using MathNet.Numerics.Distributions;
using Portwright.Geometry;
using Portwright.Physics.Rings;

namespace Portwright.Physics.Tests.Rings;

/// <summary>An invented section with a velocity field that is known everywhere, and rings sampled from it with noise.</summary>
internal sealed class SyntheticPort
{
    private readonly double _speed, _exponent, _layer, _tilt, _bias, _lazyDepth, _lazyWidth, _tornDepth, _tornHeight;
    private readonly PlanePoint _lazyAt;
    private readonly double _halfWidth, _halfHeight;

    public SyntheticPort(Random random)
    {
        double Between(double low, double high) => low + (high - low) * random.NextDouble();
        _halfWidth = Between(0.012, 0.022);
        _halfHeight = _halfWidth * Between(0.8, 1.8);
        Outline = Shape(random.Next(4), _halfWidth, _halfHeight, Between(0.3, 0.9)).Moved(Between(-0.01, 0.01), Between(-0.01, 0.01));
        // Walls from thick layers to thin ones; a thin one ends before the middle.
        _exponent = 1 / Between(5, 11);
        _layer = Between(0.5, 1);
        _speed = Between(40, 120);
        _tilt = Between(-0.2, 0.2);
        _bias = Between(-0.15, 0.15);
        var wall = Outline.WallAt(Between(0, 12));
        _lazyAt = new((wall.X + Outline.Centroid.X) / 2 + (wall.X - Outline.Centroid.X) * 0.2, (wall.Y + Outline.Centroid.Y) / 2 + (wall.Y - Outline.Centroid.Y) * 0.2);
        _lazyDepth = random.Next(2) == 0 ? 0 : Between(0.1, 0.5);
        _lazyWidth = Between(0.3, 0.7) * _halfWidth;
        _tornDepth = random.Next(3) == 0 ? Between(0.2, 0.7) : 0;
        _tornHeight = Between(0.15, 0.4) * _halfHeight;
        Deepest = Grid(60).Max(c => c.Distance);
        (Mean, Side, Roof) = Truth();
    }

    public Outline Outline { get; }

    public double Deepest { get; }

    public double Mean { get; }

    /// <summary>Centre side less cylinder-wall side.</summary>
    public double Side { get; }

    public double Roof { get; }

    public double At(PlanePoint p) => At(p, Outline.DistanceToWall(p));

    /// <summary>Centre and bearings at one depth, or two depths from nine readings on; each reading off by its own noise, all by the probe's.</summary>
    public ProbeReading[] Ring(Random random, int readings, double noise, double probeError)
    {
        var depth = (0.2 + 0.25 * random.NextDouble()) * Deepest;
        List<PlanePoint> places = [Outline.BearingCentre];
        var (outer, inner) = readings >= 9 ? ((readings - 1 + 1) / 2, (readings - 1) / 2) : (readings - 1, 0);
        var start = 12 * random.NextDouble();
        for (var i = 0; i < outer; i++) places.Add(Outline.PointAt(start + 12.0 * i / outer, depth));
        for (var i = 0; i < inner; i++) places.Add(Outline.PointAt(start + 12.0 * (i + 0.5) / inner, 0.5 * (depth + Outline.DepthOfCentre(start + 12.0 * (i + 0.5) / inner))));
        return
        [
            .. places.Select((p, i) =>
            {
                var v = At(p);
                var u = noise * Math.Max(v, 0.1 * _speed);
                return new ProbeReading(p, Math.Max(0, (v + Normal.Sample(random, 0, u)) * (1 + probeError)), u, $"reading {i + 1}");
            }),
        ];
    }

    private double At(PlanePoint p, double distance)
    {
        var (x, y) = ((p.X - Outline.Centroid.X) / _halfWidth, (p.Y - Outline.Centroid.Y) / _halfHeight);
        var (dx, dy) = ((p.X - _lazyAt.X) / _lazyWidth, (p.Y - _lazyAt.Y) / _lazyWidth);
        var core = (1 + _tilt * x + _bias * y) * (1 - _lazyDepth * Math.Exp(-0.5 * (dx * dx + dy * dy)))
            * (1 - _tornDepth * Math.Exp(-Math.Max(0, p.Y - Outline.Bounds.Bottom) / _tornHeight));
        return _speed * Math.Max(0.02, core) * Math.Pow(Math.Min(1, distance / (_layer * Deepest)), _exponent);
    }

    /// <summary>Sums over a grid of its own, apart from the map's.</summary>
    private (double Mean, double Side, double Roof) Truth()
    {
        var cells = Grid(130).Select(c => (c.Place, Speed: At(c.Place, c.Distance))).ToArray();
        double Over(Func<PlanePoint, bool> half) => cells.Where(c => half(c.Place)).Average(c => c.Speed);
        var c0 = Outline.Centroid;
        return (cells.Average(c => c.Speed), Over(p => p.X > c0.X) - Over(p => p.X < c0.X), Over(p => p.Y > c0.Y) - Over(p => p.Y < c0.Y));
    }

    private IEnumerable<(PlanePoint Place, double Distance)> Grid(int n)
    {
        var b = Outline.Bounds;
        for (var j = 0; j < n; j++)
        {
            for (var i = 0; i < n; i++)
            {
                var p = new PlanePoint(b.Left + (i + 0.5) * b.Width / n, b.Bottom + (j + 0.5) * b.Height / n);
                if (Outline.Contains(p)) yield return (p, Outline.DistanceToWall(p));
            }
        }
    }

    /// <summary>Rounded rectangle, oval, racetrack or D, of chords.</summary>
    private static Outline Shape(int kind, double halfWidth, double halfHeight, double corner)
    {
        // A superellipse of power 2 is an oval; corners of a rectangle are quarter circles.
        var r = kind switch { 0 => corner * Math.Min(halfWidth, halfHeight), _ => Math.Min(halfWidth, halfHeight) };
        IEnumerable<PlanePoint> Round(double width, double height, double radius) => Enumerable.Range(0, 64).Select(i =>
        {
            var (sin, cos) = Math.SinCos((i + 0.5) * Math.PI / 32);
            return new PlanePoint(Math.Sign(cos) * (width - radius) + radius * cos, Math.Sign(sin) * (height - radius) + radius * sin);
        });
        return new(kind switch
        {
            1 => Enumerable.Range(0, 64).Select(i => new PlanePoint(halfWidth * Math.Cos(i * Math.PI / 32), halfHeight * Math.Sin(i * Math.PI / 32))),
            // Flat floor under a round roof.
            3 => Round(halfWidth, halfHeight, r).Select(p => p.Y < 0 ? new PlanePoint(p.X * (1 + 0.08 * p.Y / -halfHeight), p.Y * 0.7) : p),
            _ => Round(halfWidth, halfHeight, r),
        });
    }
}
