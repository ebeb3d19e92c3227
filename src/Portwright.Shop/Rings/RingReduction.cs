using Portwright.Physics.Pitot;
using Portwright.Physics.Rings;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Sections;
using Unit = Portwright.Shop.Units.Unit;

namespace Portwright.Shop.Rings;

/// <summary>Reduces a ring: probe readings to speeds at places, speeds to a map, the map against the bench.</summary>
internal static class RingReduction
{
    public static ReducedRing Reduce(Reductions reductions, Kept<Ring> ring, ReducedSection section)
    {
        var ledger = reductions.Ledger;
        var nothing = new ReducedRing(ring, section.Station, section, [], null, null, null, null, "");
        HeldReading held;
        Estimate? area;
        var readings = new List<PlacedReading>();
        var problem = "";
        try
        {
            held = new HeldReading(reductions, ring.Fact.Cut, ring.Fact.Setting, ring.Fact.Air, BenchMoment.Of(ledger, ring));
            area = AreaMeanwhile(reductions, ring, held, out problem) is { Value: > 0 } meanwhile ? meanwhile : null;
        }
        catch (ArgumentException trouble)
        {
            return nothing with { Problem = Refusal.Sentence(trouble) };
        }

        foreach (var reading in ledger.All<Record.ProbeReading>().Where(r => r.Fact.Ring == ring.Id))
        {
            try
            {
                readings.Add(Placed(reading, ring.Fact, section, held));
            }
            catch (ArgumentException trouble)
            {
                problem = $"The probe's {reading.Fact.Reading.Text} does not count: {Refusal.Sentence(trouble)}";
            }
        }

        var stream = area is null ? null : held.StreamIn(section.Area.Value, area.Value);
        var probes = readings.Select(r => new Physics.Rings.ProbeReading(
            r.Place, r.Speed, r.Speed * ReducedRing.ProbeScatter, Sources.ReadingName(r.Reading.Id))).ToList();
        var factor = new ProbeFactorDoubt(ReducedRing.ProbeFactorDoubt, Sources.Probe(ring.Fact.Setting.Bench));
        if (!VelocityMap.TryCreate(section.Outline, probes, factor, Sources.ReadingName(ring.Id), out var map, out var why))
        {
            return nothing with { Readings = readings, EffectiveArea = area, Stream = stream, Problem = why };
        }

        var closure = area is null || stream is not { } known ? null
            : MapClosure.Of(map.Mean, section.Area, Estimate.Exact(known.Density), area.Scale(held.MassFlux));
        return new ReducedRing(ring, section.Station, section, readings, map, area, stream, closure, problem);
    }

    /// <summary>Why a reading cannot stand in its ring: no speed, or a place outside the section; null where it can.</summary>
    /// <exception cref="ArgumentException">The bench or the numbers make no speed.</exception>
    public static string? Refuses(Reductions reductions, Kept<Ring> ring, Kept<Record.ProbeReading> reading)
    {
        var ledger = reductions.Ledger;
        var cut = ledger.Get<Cut>(ring.Fact.Cut);
        var station = ledger.Get<Station>(ring.Fact.Station);
        var held = new HeldReading(reductions, ring.Fact.Cut, ring.Fact.Setting, ring.Fact.Air, BenchMoment.Last);
        if (ReducedSection.Latest(ledger, station, cut, out _) is not { } section)
        {
            return null;
        }

        var placed = Placed(reading, ring.Fact, section, held);
        return section.Outline.Contains(placed.Place)
            ? null
            : $"A probe {reading.Fact.Depth?.Text} in from the wall would stand outside section {station.Fact.Letter}. Look at the depth, or at the section.";
    }

    private static PlacedReading Placed(Kept<Record.ProbeReading> reading, Ring ring, ReducedSection section, HeldReading held)
    {
        var typed = reading.Fact.Reading;
        var depth = reading.Fact.Depth?.Si(Units.Dimension.Length);
        var place = reading.Fact.Bearing is { } hours && depth is { } d ? section.Outline.PointAt(hours, d) : section.Outline.Centroid;
        var total = held.Conditions.TestPieceUpstream;
        if (Unit.Find(typed.Unit, Units.Dimension.Speed) is not null)
        {
            var speed = typed.Si(Units.Dimension.Speed) * ring.ProbeFactor;
            return speed < total.SpeedOfSound ? new PlacedReading(reading, place, speed) : throw PastSound(typed);
        }

        // The probe's total pressure is that of the air at rest, as far as nothing was lost on the way: it only enters the density.
        var difference = typed.Si(Units.Dimension.Pressure);
        try
        {
            return new PlacedReading(reading, place, new PitotProbe(ring.ProbeFactor).Speed(difference, total.Pressure - difference, total));
        }
        catch (ArgumentOutOfRangeException)
        {
            throw PastSound(typed);
        }
    }

    private static ArgumentException PastSound(Units.Typed reading) => new(
        $"{reading.WithUnit} at the probe is no speed below that of sound, and no port on a flow bench reaches it. Look at the unit, and at the test pressure.");

    /// <summary>What the port passed while the ring was taken: read with it, else the cut's sweep at that lift.</summary>
    private static Estimate? AreaMeanwhile(Reductions reductions, Kept<Ring> ring, HeldReading held, out string problem)
    {
        problem = "";
        if (ring.Fact.BenchReading is { } read)
        {
            return held.EffectiveArea(read, Sources.ReadingName(ring.Id));
        }

        var lift = ring.Fact.Setting.Lift.Si(Units.Dimension.Lift);
        var sweep = reductions.Ledger.SweepsOf(ring.Fact.Cut)
            .Where(s => s.Fact.Direction == ring.Fact.Setting.Direction)
            .Select(s => reductions.Of(s).Curve).LastOrDefault(c => c.Covers(lift));
        if (sweep?.AreaAt(lift) is { } area)
        {
            return area;
        }

        problem = "The flow was not read with this ring, and no sweep of this cut covers its lift: the map cannot be held against the bench.";
        return null;
    }
}
