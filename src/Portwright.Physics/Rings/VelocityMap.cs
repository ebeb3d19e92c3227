using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using System.Numerics;
using Portwright.Geometry;
using Portwright.Physics.Uncertainty;

namespace Portwright.Physics.Rings;

/// <summary>Air speed over a section from a handful of probe readings.</summary>
/// <remarks>
/// Each reading is freed of the wall law (<see cref="WallLayer"/>), the core speeds are carried over the section by kriging
/// (<see cref="Kriging"/>), and the wall law is put back. The map passes through every reading; it is zero on the wall, nowhere negative, nowhere past the highest
/// reading, and its core nowhere past the readings' cores. Method, doubts and simulations: docs/theory/rings.md.
/// </remarks>
public sealed partial class VelocityMap
{
    public const int FewestReadings = 3;

    private const string ExponentSource = "wall law exponent";

    /// <summary>A probe nearer to the wall than this share of the deepest distance reads the wall, not the air (common practice, no source), no unit.</summary>
    public const double NearestShare = 0.01;

    /// <summary>Correlation lengths tried, over the radius of the circle of the section's area: the likeliest is taken.</summary>
    private static readonly double[] Lengths = [1, 1.5, 2.5, 4];

    private readonly FittedMap _fitted;
    private readonly SectionCells _cells;
    private readonly WallDistance _walls;
    private readonly double[] _speedsOfCells;
    private readonly RepeatScatter _spread;
    private readonly ProbeFactorDoubt _factor;

    private VelocityMap(Outline outline, ImmutableArray<ProbeReading> readings, ProbeFactorDoubt factor, WallLayer wall, string ring)
    {
        (Outline, Readings, Wall, this._factor) = (outline, readings, wall, factor);
        _walls = new WallDistance(outline);
        _cells = new SectionCells(outline);
        var places = new MergedReadings(outline, readings);
        FittedMap Fit(Kriging kriging, double exponent) => new(kriging, places.Speeds, places.Distances, _cells.Deepest, exponent);
        var radius = Math.Sqrt(outline.Area / Math.PI);
        _fitted = Lengths.Select(l => Fit(new Kriging(places.X, places.Y, l * radius), wall.Exponent)).MaxBy(f => CoreSpread.LogLikelihood(f.Core))!;
        var kriging = _fitted.Core.Kriging;
        var correlations = new double[kriging.Count][];
        for (var i = 0; i < correlations.Length; i++) kriging.Correlations(i, _cells.X, _cells.Y, correlations[i] = new double[_cells.X.Length]);
        _speedsOfCells = _fitted.Speeds(_cells, correlations);
        _spread = CoreSpread.Of(_fitted.Core);

        double[][] weights = [_cells.Area, Halves(_cells.X, outline.Centroid.X), Halves(_cells.Y, outline.Centroid.Y)];
        var sums = _fitted.Sums(_cells, correlations, weights);
        const double step = 0.01;
        double[] Plain(double exponent)
        {
            var speeds = Fit(kriging, exponent).Speeds(_cells, correlations);
            return Array.ConvertAll(weights, w => SumOf(w, speeds));
        }
        var (thick, thin) = (Plain(wall.Exponent + step), Plain(wall.Exponent - step));
        Estimate Whole(int k, string of)
        {
            var doubts = places.Contributions(sums[k].Sensitivities);
            // Every reading scales with the probe's factor, and so does the map.
            doubts.Add(new(factor.Source, sums[k].Value * factor.RelativeUncertainty, factor.DegreesOfFreedom, ContributionKind.Calibration));
            doubts.Add(new(ExponentSource, (thick[k] - thin[k]) / (2 * step) * wall.ExponentUncertainty, Shape: InputShape.Rectangular));
            doubts.Add(new($"{ring}: air between the readings, {of}", _spread.StandardDeviation * Math.Sqrt(sums[k].OpenVariance), _spread.DegreesOfFreedom));
            return new(sums[k].Value, doubts.DrainToImmutable());
        }
        (Mean, SideBalance, RoofBalance) = (Whole(0, "mean"), Whole(1, "side to side"), Whole(2, "roof to floor"));
    }

    public Outline Outline { get; }

    public ImmutableArray<ProbeReading> Readings { get; }

    public WallLayer Wall { get; }

    /// <summary>Area-weighted mean, m/s: with the doubt of each reading, the probe's factor, the wall law and the air between the readings.</summary>
    public Estimate Mean { get; }

    /// <summary>Mean of the centre side less mean of the cylinder-wall side, either side of the centroid, m/s.</summary>
    public Estimate SideBalance { get; }

    /// <summary>Mean of the roof half less mean of the floor half, m/s.</summary>
    public Estimate RoofBalance { get; }

    /// <summary>
    /// <see cref="Rings.UniformityIndex"/> of the map. Air is less even between the readings than any map of them: read it as an upper figure. No unit.
    /// </summary>
    public double UniformityIndex => Rings.UniformityIndex.Of(_speedsOfCells, _cells.Area);

    /// <summary>Makes a map, or says in a porter's words why the readings make none.</summary>
    /// <param name="ring">Name of the ring, unique within a job: what only this ring has in doubt is named after it.</param>
    /// <param name="wall">When not given, <see cref="WallLayer.OneSeventh"/>.</param>
    /// <exception cref="ArgumentException">The ring has no name.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The doubt of the probe's factor is below zero.</exception>
    public static bool TryCreate(Outline outline, IReadOnlyList<ProbeReading> readings, ProbeFactorDoubt factor, string ring,
        [NotNullWhen(true)] out VelocityMap? map, [NotNullWhen(false)] out string? problem, WallLayer? wall = null)
    {
        ArgumentException.ThrowIfNullOrEmpty(ring);
        Require.NotNegative(factor.RelativeUncertainty, nameof(factor), "(a fraction, not percent)");
        problem = RingProblem.Of(outline, readings);
        map = problem is null ? new VelocityMap(outline, [.. readings], factor, wall ?? WallLayer.OneSeventh, ring) : null;
        return map is not null;
    }

    /// <summary>Speed at a place, m/s; not a number outside the wall.</summary>
    public double At(PlanePoint place) => Outline.Contains(place)
        ? _fitted.At(place.X, place.Y, Outline.DistanceToWall(place))
        : double.NaN;

    /// <summary>
    /// The map at the middles of <paramref name="columns"/> x <paramref name="rows"/> equal boxes over the outline's bounds, m/s; not a number outside.
    /// </summary>
    /// <param name="speeds">Receives rows from floor to roof, each from the cylinder-wall side to the centre side, m/s.</param>
    /// <exception cref="ArgumentException">The span has not room for exactly that many.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 1 column or row.</exception>
    public void Fill(int columns, int rows, Span<double> speeds)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(columns, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(rows, 1);
        if (speeds.Length != columns * rows)
            throw new ArgumentException($"{columns} x {rows} speeds need room for {columns * rows}.", nameof(speeds));
        var bounds = Outline.Bounds;
        double across = bounds.Width / columns, up = bounds.Height / rows, left = bounds.Left + across / 2;
        var whole = (columns + Vector<double>.Count - 1) / Vector<double>.Count * Vector<double>.Count;
        Span<double> room = new double[2 * whole];
        var core = room[..whole];
        var signed = room[whole..];
        for (var row = 0; row < rows; row++)
        {
            var y = bounds.Bottom + (row + 0.5) * up;
            _walls.Row(y, left, across, signed);
            _fitted.Core.Row(y, left, across, core);
            _fitted.Speeds(core, signed);
            core[..columns].CopyTo(speeds.Slice(row * columns, columns));
        }
    }

    /// <summary>Weights whose sum is the mean of what lies beyond <paramref name="middle"/> less the mean of what lies before it.</summary>
    private double[] Halves(double[] along, double middle)
    {
        var beyond = along.Select(a => Math.Clamp(0.5 + (a - middle) / _cells.Step, 0, 1)).ToArray();
        var share = SumOf(_cells.Area, beyond);
        return [.. _cells.Area.Zip(beyond, (a, b) => a * (b / share - (1 - b) / (1 - share)))];
    }

    private static double SumOf(double[] weights, double[] values)
    {
        var sum = 0.0;
        for (var i = 0; i < weights.Length; i++) sum += weights[i] * values[i];
        return sum;
    }
}
