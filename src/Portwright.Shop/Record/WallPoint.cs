using Portwright.Shop.Units;

namespace Portwright.Shop.Record;

/// <summary>What lies behind the metal of a wall.</summary>
public enum Behind
{
    // Records hold the name and are read by number too: neither is ever changed.
    Unknown = 0,
    Water = 1,
    Oil = 2,
    Pushrod = 3,
    SpringSeat = 4,
    Bolt = 5,
    Air = 6,
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
