using Portwright.Shop.Findings;
using Portwright.Shop.Findings.Rules;

namespace Portwright.Shop.Diagnosis;

/// <summary>Every finding the program knows, in the order of the guide's page, which is made from it.</summary>
public static class Catalogue
{
    /// <summary>In the order of the guide's page. That nothing is left to cut is concluded from them all, and stands elsewhere.</summary>
    public static IReadOnlyList<FindingRule> All { get; } =
    [
        new ThinMetal(),
        new TornOffShortSide(),
        new BacksUp(),
        new ShortSideTooFast(),
        new LazyCorner(),
        new BusyRoof(),
        new GuideBossWake(),
        new UnevenSides(),
        new PinchLimits(),
        new SmallAgainstSisters(),
        new LowAgainstSisters(),
        new ThroatTooLarge(),
        new ThroatTooSmall(),
        new SeatLimitsLowLift(),
        new BowlTooLarge(),
        new CurveUnsteady(),
        new PortSpeedAgainstPlan(),
        new InstrumentsDisagree(),
        new BallNotAsWritten(),
        new ExhaustDrawn(),
        new LiftsSwapped(),
        new ReadingOutOfLine(),
        new ClosureFails(),
        new VolumeDisagrees(),
        new BenchNotFit(),
        new BenchChanged(),
    ];
}
