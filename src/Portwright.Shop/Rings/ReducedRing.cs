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

}
