using Portwright.Geometry;
using Portwright.Physics.Rings;
using Portwright.Physics.TestPiece;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;
using Portwright.Shop.Sections;

namespace Portwright.Shop.Rings;

/// <summary>One reading of the probe as a speed at a place.</summary>
/// <param name="Place">From the section's centroid, m.</param>
/// <param name="Speed">m/s, along the port, probe factor applied.</param>
public sealed record PlacedReading(Kept<Record.ProbeReading> Reading, PlanePoint Place, double Speed);

/// <summary>A ring reduced: its map, and whether it agrees with the bench.</summary>
/// <param name="Map">Null where the readings make none; <paramref name="Problem"/> says why.</param>
/// <param name="EffectiveArea">Of the port meanwhile, m2; null where neither the ring nor the cut's sweep says.</param>
/// <param name="Stream">The section's mean stream by the bench's flow.</param>
/// <param name="Closure">The map's flow against the bench's; null where one is missing.</param>
public sealed record ReducedRing(
    Kept<Ring> Ring,
    Kept<Station> Station,
    ReducedSection Section,
    IReadOnlyList<PlacedReading> Readings,
    VelocityMap? Map,
    Estimate? EffectiveArea,
    SectionStream? Stream,
    MapClosure? Closure,
    string Problem)
{
    /// <summary>Standard uncertainty of one speed, as a share: reading a moving tube, the probe not quite along the air, its mouth not quite at the place. Common practice, no source.</summary>
    public const double ProbeScatter = 0.015;

    /// <summary>Standard uncertainty of the probe's factor; common practice, no source.</summary>
    public const double ProbeFactorDoubt = 0.01;

    /// <summary>Valve lift, m.</summary>
    public double Lift => Ring.Fact.Setting.Lift.Si(Units.Dimension.Lift);

    /// <summary>Standard uncertainty of a local speed carried to another lift, as a share of the share the lift differs by: the air moves about as the valve opens. Judgement, no source.</summary>
    public const double LiftDoubt = 0.5;

    /// <summary>Speed at a place when the section's mean speed is another (m/s), at the same lift or near it (m): the map's, scaled.</summary>
    public Estimate? SpeedAt(PlanePoint place, double meanSpeed, double lift)
    {
        if (Map is null || Stream is not { Speed: > 0 and var then } || Map.At(place) is not (> 0 and var speed))
        {
            return null;
        }

        // The doubt of the map at one place is taken as its doubt of the mean, and a reading's own scatter twice over.
        var scale = meanSpeed / then;
        var name = $"{Sources.ReadingName(Ring.Id)} at {place.X:F4} {place.Y:F4}";
        return Map.Mean.Scale(speed / Map.Mean.Value * scale)
            .With(new Contribution(name, speed * scale * ProbeScatter * 2, double.PositiveInfinity, ContributionKind.Other))
            .With(new Contribution($"{Sources.ReadingName(Ring.Id)} at another lift", speed * scale * LiftDoubt * Math.Abs(lift / Lift - 1), double.PositiveInfinity, ContributionKind.Other));
    }
}
