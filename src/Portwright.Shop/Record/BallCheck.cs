using Portwright.Shop.Units;

namespace Portwright.Shop.Record;

/// <summary>A ball held in the port at place after place, one ball and one setting of the bench; the readings follow as <see cref="BallReading"/>.</summary>
/// <param name="Ball">Diameter of the ball.</param>
/// <param name="Air">The room's air; null: standard air.</param>
public sealed record BallCheck(Guid Cut, BenchSetting Setting, Typed Ball, RoomAir? Air = null, string Notes = "") : Fact;

/// <summary>The meter with the ball at a place, or without it: the reference that shows drift.</summary>
/// <param name="Station">Null for a reference reading without the ball.</param>
/// <param name="Bearing">Clock hour as the record keeps it; null in the middle of the section.</param>
public sealed record BallReading(Guid Check, Guid? Station, double? Bearing, Typed Reading) : Fact
{
    public override bool IsMeasured => true;
}

/// <summary>The same ball in a plain straight pipe on this bench: what it costs where the air is known.</summary>
/// <param name="Pipe">Inside diameter of the pipe.</param>
/// <param name="Without">The meter without the ball.</param>
/// <param name="With">The meter with the ball in the middle of the pipe.</param>
public sealed record BallCalibration(
    Guid Bench, DateOnly Date, Typed Ball, Typed Pipe, string Range, Typed TestPressure, IReadOnlyList<Typed> Without, IReadOnlyList<Typed> With, RoomAir Air) : Fact
{
    public override bool IsMeasured => true;
}
