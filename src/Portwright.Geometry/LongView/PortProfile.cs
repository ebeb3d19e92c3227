using System.Diagnostics.CodeAnalysis;
using MathNet.Numerics.Interpolation;

namespace Portwright.Geometry.LongView;

/// <summary>Roof or floor.</summary>
public enum Surface { Roof, Floor }

/// <summary>A point of the roof or floor line.</summary>
/// <param name="Distance">From the flange along the centreline, m.</param>
public readonly record struct ProfilePoint(double Distance, PlanePoint Point, bool IsGeneric);

/// <summary>
/// Roof and floor line of a port in the long view, between its stations by a cubic that rises and falls only where the stations do
/// (piecewise cubic Hermite, Fritsch and Carlson 1980; straight between two stations alone). Past the last station either way the heights stay as they are there.
/// </summary>
public sealed class PortProfile
{
    private readonly Func<double, double> _roof;
    private readonly Func<double, double> _floor;
    private readonly double _firstMeasured;
    private readonly double _lastMeasured;

    private PortProfile(Centreline centreline, ProfileStation[] stations)
    {
        Centreline = centreline;
        Stations = stations;
        double[] places = [.. stations.Select(s => s.Distance)];
        _roof = Line(places, [.. stations.Select(s => s.Roof)]);
        _floor = Line(places, [.. stations.Select(s => s.Floor)]);
        var measured = stations.Where(s => !s.IsGeneric).ToList();
        _firstMeasured = measured.Count > 0 ? measured[0].Distance : double.PositiveInfinity;
        _lastMeasured = measured.Count > 0 ? measured[^1].Distance : double.NegativeInfinity;
    }

    /// <summary>Makes a profile of one or more stations in any order, or says why they make none.</summary>
    public static bool TryCreate(Centreline centreline, IEnumerable<ProfileStation> stations, [NotNullWhen(true)] out PortProfile? profile, [NotNullWhen(false)] out string? problem)
    {
        ArgumentNullException.ThrowIfNull(centreline);
        ArgumentNullException.ThrowIfNull(stations);
        ProfileStation[] sorted = [.. stations.OrderBy(s => s.Distance)];
        problem = Problem(centreline, sorted);
        profile = problem is null ? new(centreline, sorted) : null;
        return profile is not null;
    }

    public Centreline Centreline { get; }

    /// <summary>From the flange inwards, generic ones among them.</summary>
    public IReadOnlyList<ProfileStation> Stations { get; }

    /// <summary>Height of the roof above the centreline, m.</summary>
    /// <param name="distance">From the flange along the centreline, m, 0 to the port's length.</param>
    /// <exception cref="ArgumentOutOfRangeException">The distance lies outside the port.</exception>
    public double RoofAt(double distance) => _roof(Within(distance));

    /// <summary>Depth of the floor below the centreline, m.</summary>
    /// <param name="distance">From the flange along the centreline, m, 0 to the port's length.</param>
    /// <exception cref="ArgumentOutOfRangeException">The distance lies outside the port.</exception>
    public double FloorAt(double distance) => _floor(Within(distance));

    /// <summary>True where the shape is not bounded by measured stations on both sides.</summary>
    /// <param name="distance">From the flange along the centreline, m, 0 to the port's length.</param>
    /// <exception cref="ArgumentOutOfRangeException">The distance lies outside the port.</exception>
    public bool IsGenericAt(double distance) => !(Within(distance) >= _firstMeasured && distance <= _lastMeasured);

    /// <summary>A point of the roof or floor.</summary>
    /// <param name="distance">From the flange along the centreline, m, 0 to the port's length.</param>
    public PlanePoint PointAt(double distance, Surface surface) =>
        Centreline.PointAt(distance, surface == Surface.Roof ? RoofAt(distance) : -FloorAt(distance));

    /// <summary>The roof or floor line from flange to seat in so many points, two or more.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 2 points.</exception>
    public IReadOnlyList<ProfilePoint> LineOf(Surface surface, int points = 97)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(points, 2);
        return [.. Enumerable.Range(0, points).Select(i => Centreline.Length * i / (points - 1))
            .Select(d => new ProfilePoint(d, PointAt(d, surface), IsGenericAt(d)))];
    }

    private double Within(double distance) => Require.Along(distance, 0, Centreline.Length, nameof(distance));

    private static Func<double, double> Line(double[] places, double[] heights)
    {
        if (places.Length == 1) return _ => heights[0];
        IInterpolation curve = places.Length == 2
            ? LinearSpline.InterpolateSorted(places, heights)
            : CubicSpline.InterpolatePchipSorted(places, heights);
        return d => curve.Interpolate(Math.Clamp(d, places[0], places[^1]));
    }

    private static string? Problem(Centreline centreline, ProfileStation[] stations)
    {
        if (stations.Length == 0) return "The long view needs one station or more. Measure a section.";
        for (var i = 0; i < stations.Length; i++)
        {
            var s = stations[i];
            var name = s.Name.Length > 0 ? s.Name : "A station";
            if (!(s.Distance >= 0 && s.Distance <= centreline.Length)) return $"{name} lies outside the port: its distance from the flange must be between nothing and the centreline's length.";
            if (i > 0 && s.Distance == stations[i - 1].Distance) return $"{name} lies at the same distance from the flange as the station before it. Correct one of the two distances.";
            if (!(s.Roof > 0) || !(s.Floor > 0) || !double.IsFinite(s.Roof) || !double.IsFinite(s.Floor)) return $"{name}: roof and floor must lie on either side of the centreline.";
            if (s.Floor >= centreline.BendRadius && s.Distance > centreline.Straight) return $"{name}: the floor lies past the middle of the bend. Make the bend's radius larger or the section lower.";
        }
        return null;
    }
}
