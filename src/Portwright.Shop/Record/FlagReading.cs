using Portwright.Shop.Units;

namespace Portwright.Shop.Record;

/// <summary>How a flag stands in the air, from the quietest to the wildest.</summary>
public enum Steadiness
{
    // Records hold the name and are read by number too: neither is ever changed.
    /// <summary>Stretched and still.</summary>
    Still = 0,

    /// <summary>Stretched, its tip trembles.</summary>
    Trembles = 1,

    /// <summary>Swings from side to side and comes back.</summary>
    Swings = 2,

    /// <summary>Hangs as if there were no wind.</summary>
    Hangs = 3,

    /// <summary>Turns round and points against the air.</summary>
    TurnsBack = 4,
}

/// <summary>A flag held in the port at a place.</summary>
/// <param name="Bearing">Clock hour as the record keeps it; null in the middle.</param>
/// <param name="Lean">Clock hour the flag's tip leans to: the air crosses the port that way where it is held. Null where it lies along the centreline.</param>
public sealed record FlagReading(
    Guid Cut, Guid Station, double? Bearing, Typed Lift, Typed TestPressure, Steadiness Steadiness, double? Lean = null, string Notes = "") : Fact
{
    public override bool IsMeasured => true;
}
