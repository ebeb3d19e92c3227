using Portwright.Shop.Findings.Rules;

namespace Portwright.Shop.Findings;

/// <summary>Every finding the program knows, in the order of the guide's page, which is made from it.</summary>
public static class Catalogue
{
    public static IReadOnlyList<FindingRule> All { get; } =
    [
        new ThinMetal(),
        new TornOffShortSide(),
        new FlowStallsBeforeCamLift(),
        new ShortSideTooFast(),
        new LazyCorner(),
        new BusyRoof(),
        new GuideBossWake(),
        new UnevenSides(),
        new PinchLimits(),
        new ThroatTooLarge(),
        new ThroatTooSmall(),
        new SeatLimitsLowLift(),
        new BowlTooLarge(),
        new CurveUnsteady(),
        new ExhaustIntakeBalance(),
        new PortSpeedAgainstPlan(),
        new ClosureFails(),
        new VolumeDisagrees(),
        new BenchNotFit(),
        new NothingWorthCutting(),
    ];
}
