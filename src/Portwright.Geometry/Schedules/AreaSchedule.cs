using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Portwright.Geometry.Schedules;

/// <summary>The open areas of a port along its centreline, from the flange inwards.</summary>
public sealed class AreaSchedule
{
    /// <exception cref="ArgumentException">The stations make no schedule; the message is the sentence of <see cref="TryCreate"/>.</exception>
    public AreaSchedule(IEnumerable<AreaStation> stations)
    {
        ArgumentNullException.ThrowIfNull(stations);
        AreaStation[] sorted = [.. stations.OrderBy(s => s.Distance)];
        if (Problem(sorted) is { } problem) throw new ArgumentException(problem, nameof(stations));
        Stations = sorted;
        Tapers = [.. sorted.Skip(1).Select((s, i) => new Taper(sorted[i], s))];
    }

    /// <summary>Makes a schedule of stations in any order, or says why they make none.</summary>
    public static bool TryCreate(IReadOnlyList<AreaStation> stations, [NotNullWhen(true)] out AreaSchedule? schedule, [NotNullWhen(false)] out string? problem)
    {
        ArgumentNullException.ThrowIfNull(stations);
        problem = Problem([.. stations.OrderBy(s => s.Distance)]);
        schedule = problem is null ? new(stations) : null;
        return schedule is not null;
    }

    /// <summary>From the flange inwards; two or more.</summary>
    public IReadOnlyList<AreaStation> Stations { get; }

    /// <summary>Between each two neighbours.</summary>
    public IReadOnlyList<Taper> Tapers { get; }

    /// <summary>The station with the least area; the one nearer the flange of two alike.</summary>
    public AreaStation Smallest => Stations.MinBy(s => s.Area)!;

    /// <summary>First to last station along the centreline, m.</summary>
    public double Length => Stations[^1].Distance - Stations[0].Distance;

    /// <summary>Area at a distance, m2: the frustum between neighbours, so that sqrt(area) runs straight.</summary>
    /// <param name="distance">From the flange along the centreline, m, 0 to the port's length.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside the measured stations: nothing is known there.</exception>
    public double AreaAt(double distance)
    {
        distance = Require.Along(distance, Stations[0].Distance, Stations[^1].Distance, nameof(distance));
        foreach (var taper in Tapers)
        {
            if (distance > taper.To.Distance) continue;
            var share = (distance - taper.From.Distance) / taper.Length;
            var root = (1 - share) * Math.Sqrt(taper.From.Area) + share * Math.Sqrt(taper.To.Area);
            return root * root;
        }
        return Stations[^1].Area;
    }

    /// <summary>Area over the area of the valve head's circle, no unit.</summary>
    /// <param name="area">m2.</param>
    /// <param name="valveDiameter">m.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double ShareOfValve(double area, double valveDiameter)
    {
        Require.Positive(area, nameof(area), "m2");
        Require.Positive(valveDiameter, nameof(valveDiameter), "m");
        return area / (Math.PI / 4 * valveDiameter * valveDiameter);
    }

    private static string? Problem(AreaStation[] sorted)
    {
        if (sorted.Length < 2) return string.Create(CultureInfo.InvariantCulture, $"An area schedule takes two stations or more; there are {sorted.Length}. Measure another section.");
        for (var i = 0; i < sorted.Length; i++)
        {
            var name = sorted[i].Name.Length > 0 ? sorted[i].Name : string.Create(CultureInfo.InvariantCulture, $"station {i + 1}");
            if (!double.IsFinite(sorted[i].Distance)) return $"The distance of {name} is not a number. Type it again.";
            if (!(sorted[i].Area > 0) || !double.IsFinite(sorted[i].Area)) return $"The area of {name} must be above zero. Measure it again.";
            if (!(sorted[i].AreaDoubt >= 0) || !double.IsFinite(sorted[i].AreaDoubt)) return $"The doubt of the area of {name} cannot be below zero.";
            if (i > 0 && sorted[i].Distance == sorted[i - 1].Distance) return $"{name} lies at the same distance from the flange as the station before it. Correct one of the two distances.";
        }
        return null;
    }
}
