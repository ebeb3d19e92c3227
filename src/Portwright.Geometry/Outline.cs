using System.Diagnostics.CodeAnalysis;

namespace Portwright.Geometry;

/// <summary>
/// The closed wall line of a section: a simple polygon in the section's plane, counter-clockwise, SI metres. Arcs are given as chords.
/// </summary>
public sealed partial class Outline
{
    private readonly PlanePoint[] _points;
    private readonly AreaMoments _moments;

    /// <summary>Makes an outline of three or more points in order around the wall, either way round; the last may repeat the first.</summary>
    /// <exception cref="ArgumentException">The points make no outline; the message is the sentence of <see cref="TryCreate"/>.</exception>
    public Outline(IEnumerable<PlanePoint> points) : this(Accepted(points)) { }

    private Outline(PlanePoint[] counterClockwise)
    {
        _points = counterClockwise;
        _moments = AreaMoments.Of(_points);
        Bounds = Bounds.Around(_points);
        for (var i = 0; i < _points.Length; i++) Perimeter += _points[i].To(Next(i));
        BearingCentre = Contains(Centroid) ? Centroid : MiddleOfWidestChord();
    }

    /// <summary>Makes an outline, or says in a porter's words why the points make none.</summary>
    /// <returns>False with <paramref name="problem"/> set when the points are too few, not finite, enclose nothing or cross themselves.</returns>
    public static bool TryCreate(IEnumerable<PlanePoint> points, [NotNullWhen(true)] out Outline? outline, [NotNullWhen(false)] out string? problem)
    {
        ArgumentNullException.ThrowIfNull(points);
        problem = SimplePolygon.Accept(points, out var accepted);
        outline = problem is null ? new Outline(accepted) : null;
        return outline is not null;
    }

    /// <summary>The corners in order, counter-clockwise, the first not repeated at the end.</summary>
    public IReadOnlyList<PlanePoint> Points => _points;

    /// <summary>m2, above zero.</summary>
    public double Area => _moments.Area;

    /// <summary>Length of the wall line, m.</summary>
    public double Perimeter { get; }

    public PlanePoint Centroid => _moments.Centroid;

    /// <summary>Area, centroid and second moments about the centroid.</summary>
    public AreaMoments Moments => _moments;

    /// <summary>4 area / perimeter, m.</summary>
    public double HydraulicDiameter => 4 * Area / Perimeter;

    public Bounds Bounds { get; }

    /// <summary>
    /// Where bearings start: the centroid; where the centroid lies in metal (a hooked section), the middle of the widest open chord at its height.
    /// </summary>
    public PlanePoint BearingCentre { get; }

    private PlanePoint Next(int i) => _points[i + 1 == _points.Length ? 0 : i + 1];

    private static PlanePoint[] Accepted(IEnumerable<PlanePoint> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        return SimplePolygon.Accept(points, out var accepted) is { } problem ? throw new ArgumentException(problem, nameof(points)) : accepted;
    }
}
