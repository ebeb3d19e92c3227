using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;
using Portwright.Shop.Rings;
using Portwright.Shop.Walls;
using Portwright.Shop.Words;

namespace Portwright.Shop.Families;

/// <summary>Air speed at one part of a section, against what even air would show at the same depths.</summary>
/// <param name="Bearing">Middle of the part, clock hour.</param>
/// <param name="Readings">The probe readings there.</param>
/// <param name="OverEven">Speed over even air's: above 1 the part carries more than its area.</param>
public sealed record LocalAir(ReducedRing Ring, double Bearing, IReadOnlyList<PlacedReading> Readings, Estimate OverEven)
{
    /// <summary>As read, m/s: the mean where several were taken.</summary>
    public double Speed => Readings.Average(r => r.Speed);

    /// <summary>What even air would show there, m/s.</summary>
    public double Even => OverEven.Value > 0 ? Speed / OverEven.Value : Ring.Map!.Mean.Value;

    /// <summary>The air within some hours of a bearing; null without a map or a reading there.</summary>
    public static LocalAir? At(ReducedRing? ring, double bearing, double reach)
    {
        if (ring?.Map is not { } map)
        {
            return null;
        }

        var there = AtTheWall(ring).Where(r => WallState.Apart(r.Bearing, bearing) <= reach).Select(r => r.Reading).ToList();
        return there.Count == 0 ? null : new LocalAir(ring, bearing, there, map.OverEven([.. there.Select(r => Index(map, r))]));
    }

    /// <summary>Every place round the wall that was read, with what lies within half an hour of it.</summary>
    public static IEnumerable<LocalAir> Round(ReducedRing? ring) => ring?.Map is null ? [] : AtTheWall(ring)
        .Select(r => Math.Round(r.Bearing * 2) / 2).Distinct()
        .Select(b => At(ring, Geometry.Bearing.Clock(b), 0.5)).OfType<LocalAir>();

    /// <summary>The readings, the ring and its section: what the figure rests on.</summary>
    public IEnumerable<Guid> Behind => [.. Readings.Select(r => r.Reading.Id), Ring.Ring.Id, Ring.Section.Section.Id];

    /// <summary>In a sentence: <c>241 against 318 ft/s of even air at 12 o'clock (roof)</c>.</summary>
    public Sentence Words => $"{Quantity.Speed(Speed)} against {Quantity.Speed(Even)} of even air at {Bearings.Words(Bearing)}";

    /// <summary>The reading of the ring that would make the figure surer: here again, or where the mean is least known.</summary>
    public Sentence NextReading
    {
        get
        {
            var here = Readings.Select(r => Sources.ReadingName(r.Reading.Id)).ToHashSet();
            var own = OverEven.Contributions.Where(c => here.Contains(c.Source)).Sum(c => c.Amount * c.Amount);
            if (own > OverEven.Variance / 2)
            {
                return $"Read the probe again at {Ring.Station.Fact.Letter}, {Bearings.Words(Bearing)}: that reading's own doubt weighs most.";
            }

            var next = Ring.Map!.WorthReadingNext.Place;
            return $"Read the probe at {Ring.Station.Fact.Letter}, {Bearings.Words(next.BearingHours)}, {Quantity.Length(next.DepthFromWall)} from the wall: the section's mean is least known there.";
        }
    }

    private static IEnumerable<(PlacedReading Reading, double Bearing)> AtTheWall(ReducedRing ring) => ring.Readings
        .Select(r => (Reading: r, Place: ring.Section.Outline.PlaceOf(r.Place)))
        .Where(r => r.Reading.Reading.Fact.Bearing is not null
            && r.Place.DepthFromWall > 0 && r.Place.DepthFromWall <= Bearings.MiddleFrom * ring.Section.Outline.DepthOfCentre(r.Place.BearingHours))
        .Select(r => (r.Reading, r.Place.BearingHours));

    private static int Index(Physics.Rings.VelocityMap map, PlacedReading reading)
    {
        for (var i = 0; i < map.Readings.Length; i++)
        {
            if (map.Readings[i].Source == Sources.ReadingName(reading.Reading.Id))
            {
                return i;
            }
        }

        throw new InvalidOperationException("Every reading of a ring is in its map.");
    }
}
