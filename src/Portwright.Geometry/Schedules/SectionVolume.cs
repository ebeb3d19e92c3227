using System.Globalization;
using Portwright.Geometry.Sums;
using Portwright.Geometry.Working;

namespace Portwright.Geometry.Schedules;

/// <summary>
/// Volume of a port between its first and last station, integrated from the sections.
/// </summary>
/// <remarks>
/// The stated rule is the frustum between neighbours, L/3 (A1 + A2 + sqrt(A1 A2)): exact for a straight taper that keeps its shape. By the second theorem of
/// Pappus and Guldin it holds round a bend too as long as the distances run along the line through the sections' centroids. Simpson's rule beside it is exact
/// where the area is a parabola of distance (a prismatoid with its middle section); the gap between the two says how much the stations leave open.
/// </remarks>
public sealed record SectionVolume
{
    private SectionVolume() { }

    /// <summary>By the frustum rule, m3.</summary>
    public required double Volume { get; init; }

    /// <summary>By Simpson's rule over the same stations, m3.</summary>
    public required double BySimpson { get; init; }

    /// <summary>By the mean of the ends of each step, m3: what a sheet of paper gives; never below the frustum.</summary>
    public required double ByMeanOfEnds { get; init; }

    /// <summary>Standard uncertainty from the stations' own area doubts, m3.</summary>
    public required double DoubtFromAreas { get; init; }

    /// <summary>Standard uncertainty from the caliper's scale, common to all stations, m3.</summary>
    public required double DoubtFromScale { get; init; }

    /// <summary>Standard uncertainty from the rule, m3: the true volume lies evenly within one gap between the two rules (or the frustum's gap to the mean of ends with two stations) either side.</summary>
    public required double DoubtFromRule { get; init; }

    /// <summary>Combined standard uncertainty, m3.</summary>
    public double Standard => Math.Sqrt(DoubtFromAreas * DoubtFromAreas + DoubtFromScale * DoubtFromScale + DoubtFromRule * DoubtFromRule);

    /// <summary>One line for each step and the total.</summary>
    public required IReadOnlyList<WorkingLine> Working { get; init; }

    /// <param name="scaleError">Standard relative error of the caliper's scale for lengths across the port; it moves every area by twice as much, no unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static SectionVolume Of(AreaSchedule schedule, double scaleError = 0)
    {
        ArgumentNullException.ThrowIfNull(schedule);
        Require.NotNegative(scaleError, nameof(scaleError), "(no unit)");
        double[] places = [.. schedule.Stations.Select(s => s.Distance)];
        double[] areas = [.. schedule.Stations.Select(s => s.Area)];
        var volume = RuleOfSum.Frustum(places, areas);
        var simpson = RuleOfSum.Simpson(places, areas);
        return new()
        {
            Volume = volume,
            BySimpson = simpson,
            ByMeanOfEnds = RuleOfSum.MeanOfEnds(places, areas),
            DoubtFromAreas = FromAreas(schedule),
            DoubtFromScale = 2 * scaleError * volume,
            DoubtFromRule = Math.Abs(simpson - volume) / Math.Sqrt(3),
            Working = Lines(schedule, volume),
        };
    }

    /// <summary>d/dA1 of L/3 (A1 + A2 + sqrt(A1 A2)) = L/3 (1 + sqrt(A2/A1)/2), summed over both neighbours of a station.</summary>
    private static double FromAreas(AreaSchedule schedule)
    {
        var sum = 0.0;
        foreach (var station in schedule.Stations)
        {
            var slope = 0.0;
            foreach (var taper in schedule.Tapers)
            {
                if (ReferenceEquals(taper.From, station)) slope += taper.Length / 3 * (1 + Math.Sqrt(taper.To.Area / station.Area) / 2);
                if (ReferenceEquals(taper.To, station)) slope += taper.Length / 3 * (1 + Math.Sqrt(taper.From.Area / station.Area) / 2);
            }
            sum += Math.Pow(slope * station.AreaDoubt, 2);
        }
        return Math.Sqrt(sum);
    }

    private static List<WorkingLine> Lines(AreaSchedule schedule, double volume)
    {
        var lines = schedule.Tapers.Select((taper, i) => new WorkingLine(
            string.Create(CultureInfo.InvariantCulture, $"station {i + 1} to {i + 2}"), "{0} / 3 × ({1} + {2} + √({1} × {2}))",
            [Quantity.Length(taper.Length), Quantity.Area(taper.From.Area), Quantity.Area(taper.To.Area)],
            Quantity.Volume(RuleOfSum.Frustum([0, taper.Length], [taper.From.Area, taper.To.Area])))).ToList();
        lines.Add(new("volume from sections", "the sum so far", [], Quantity.Volume(volume), Effect.Total));
        return lines;
    }
}
