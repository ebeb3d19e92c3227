using Portwright.Shop.Units;

namespace Portwright.Shop.Record;

/// <summary>What lies behind the metal of a wall.</summary>
public enum Behind
{
    Unknown,
    Water,
    Oil,
    Pushrod,
    SpringSeat,
    Bolt,
    Air,
}

/// <summary>Metal left between port and what lies behind it.</summary>
/// <param name="Bearing">Clock hour as the record keeps it.</param>
/// <param name="How">How it was measured: sound, caliper, drilled; may be empty.</param>
/// <param name="Limit">The least this shop leaves there; null: the usual for the metal.</param>
public sealed record WallPoint(
    Guid Cut, Guid Station, double Bearing, Typed Thickness, Behind Behind = Behind.Unknown, string How = "", Typed? Limit = null, string Notes = "") : Fact
{
    public override bool IsMeasured => true;
}
