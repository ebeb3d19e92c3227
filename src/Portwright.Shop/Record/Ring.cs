using Portwright.Physics.TestPiece;
using Portwright.Shop.Units;

namespace Portwright.Shop.Record;

/// <summary>How the bench stood while something was held in the port: the flow itself is read with it.</summary>
/// <param name="Lift">Valve lift.</param>
/// <param name="TestPressure">As set.</param>
/// <param name="Range">The meter's range.</param>
public sealed record BenchSetting(Guid Bench, FlowDirection Direction, Typed Lift, Typed TestPressure, string Range);

/// <summary>Air-speed readings around one station at one lift; the readings themselves follow as <see cref="ProbeReading"/>.</summary>
/// <param name="Setting">How the bench stood.</param>
/// <param name="BenchReading">The meter meanwhile; null where the flow is taken from the cut's sweep at that lift.</param>
/// <param name="ProbeFactor">Of the pitot probe: multiplies the speed.</param>
/// <param name="Air">The room's air; null: standard air.</param>
public sealed record Ring(
    Guid Cut,
    Guid Station,
    BenchSetting Setting,
    Typed? BenchReading = null,
    double ProbeFactor = 1,
    RoomAir? Air = null,
    string Notes = "") : Fact;

/// <summary>One reading of the probe.</summary>
/// <param name="Bearing">Clock hour as the record keeps it (12 roof, 3 centre side, 6 floor, 9 cylinder-wall side); null in the middle.</param>
/// <param name="Depth">From the wall to the middle of the probe's mouth; null in the middle.</param>
/// <param name="Reading">A pressure difference, or a speed where the instrument shows one.</param>
public sealed record ProbeReading(Guid Ring, double? Bearing, Typed? Depth, Typed Reading) : Fact
{
    public override bool IsMeasured => true;
}
