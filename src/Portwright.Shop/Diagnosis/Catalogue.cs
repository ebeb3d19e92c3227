using Portwright.Shop.Findings;
using Portwright.Shop.Findings.Rules;

namespace Portwright.Shop.Diagnosis;

/// <summary>Every finding the program knows, in the order of the guide's page, which is made from it.</summary>
public static class Catalogue
{
    private static readonly FindingRule[] OfFaults =
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
    ];

    public static IReadOnlyList<FindingRule> All { get; } = [.. OfFaults, new NothingWorthCutting(OfFaults)];
}
