using System.Globalization;
using Portwright.Geometry;

namespace Portwright.Physics.Rings;

/// <summary>Why readings make no map, in a porter's words with the cure.</summary>
internal static class RingProblem
{
    public static string? Of(Outline outline, IReadOnlyList<ProbeReading> readings)
    {
        var places = readings.Select(r => r.Place).Distinct().Count();
        if (places < VelocityMap.FewestReadings)
            return Say($"The ring has readings at {places} {(places == 1 ? "place" : "places")}. A map takes three or more: the centre and two bearings at the least.");
        for (var i = 0; i < readings.Count; i++)
        {
            var r = readings[i];
            if (!(r.Speed >= 0) || double.IsInfinity(r.Speed) || !(r.StandardUncertainty >= 0) || double.IsInfinity(r.StandardUncertainty))
                return Say($"Reading {i + 1} of the ring, {r.Speed:0.#} m/s, is no speed. Type it again.");
            if (!outline.Contains(r.Place))
                return Say($"Reading {i + 1} of the ring lies outside the section, at {r.Place.X * 1e3:0.0}, {r.Place.Y * 1e3:0.0} mm. Check its bearing and depth, or the section.");
        }
        if (readings.All(r => r.Speed == 0)) return "Every reading of the ring is zero. Check the probe and its hose.";
        var deepest = readings.Max(r => outline.DistanceToWall(r.Place));
        var near = readings.Select((r, i) => (i, outline.DistanceToWall(r.Place))).MinBy(p => p.Item2);
        if (near.Item2 < VelocityMap.NearestShare * deepest)
            return Say($"Reading {near.i + 1} of the ring lies {near.Item2 * 1e3:0.00} mm from the wall, where a probe reads the wall. Move it in, or leave it out.");
        return null;
    }

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
