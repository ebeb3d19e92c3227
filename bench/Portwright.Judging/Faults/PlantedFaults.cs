namespace Portwright.Judging.Faults;

/// <summary>Every fault that is planted.</summary>
public static class PlantedFaults
{
    public static IReadOnlyList<Fault> All { get; } =
    [
        new LowPort(), new BacksUp(), new SeatLow(), new UnsteadyAir(), new ExhaustDrawn(),
        new SmallPinch(), new SmallThroat(), new LargeThroat(), new LargeBowl(), new ThinWall(), new SmallForPlan(),
        new LazyFloor(), new BusyRoof(), new UnevenSides(), new FastShortSide(), new GuideWake(), new TornOff(),
        new ProbeOff(), new SectionMistyped(), new BallMistyped(), new OnePlaceWrong(), new BuretteWrong(),
        new LiftsSwapped(), new ReadingMistyped(),
        new PlateOff(), new MeterMoved(), new LeakChanged(),
    ];
}
