using Portwright.Shop.Record;

namespace Portwright.Shop.Heads;

/// <summary>Which intakes of a head are mirror images: the ways heads with two valves a cylinder are cast. Common practice, no source.</summary>
public enum MirrorPattern
{
    /// <summary>Every cylinder the same way round.</summary>
    None,

    /// <summary>The second of every two cylinders: two intakes meet, then two exhausts.</summary>
    EverySecond,

    /// <summary>The first of every two: an exhaust at each end of four cylinders.</summary>
    FirstOfTwo,

    /// <summary>One half of the head is the other in a mirror.</summary>
    FromTheMiddle,
}

/// <summary>What a pattern says of each port.</summary>
public static class MirrorPatterns
{
    /// <summary>Those that a head of so many cylinders can have: half of an odd number is none.</summary>
    public static IEnumerable<MirrorPattern> For(int cylinders) =>
        Enum.GetValues<MirrorPattern>().Where(p => p == MirrorPattern.None || (cylinders > 1 && (p != MirrorPattern.FromTheMiddle || (cylinders % 2 == 0 && cylinders > 2))));

    /// <summary>In a porter's words.</summary>
    public static string Words(MirrorPattern pattern) => pattern switch
    {
        MirrorPattern.None => "None: every cylinder the same way round",
        MirrorPattern.EverySecond => "Every second cylinder, 2 first",
        MirrorPattern.FirstOfTwo => "Every second cylinder, 1 first",
        MirrorPattern.FromTheMiddle => "By pairs from the middle: one half mirrors the other",
        _ => throw new ArgumentOutOfRangeException(nameof(pattern), pattern, "unknown pattern"),
    };

    /// <summary>
    /// Whether a port is a mirror image. The two valves of a cylinder lie either side of its middle: an exhaust across from its intake, seen from its
    /// own flange, is turned as the intake is; one on the intakes' flange is the other way round.
    /// </summary>
    /// <param name="cylinder">From 1.</param>
    /// <param name="cylinders">Of the head.</param>
    public static bool IsMirrored(MirrorPattern pattern, PortKind kind, int cylinder, int cylinders, ExhaustSide exhausts)
    {
        var intake = pattern switch
        {
            MirrorPattern.None => false,
            MirrorPattern.EverySecond => cylinder % 2 == 0,
            MirrorPattern.FirstOfTwo => cylinder % 2 == 1,
            MirrorPattern.FromTheMiddle => 2 * cylinder > cylinders,
            _ => throw new ArgumentOutOfRangeException(nameof(pattern), pattern, "unknown pattern"),
        };
        return kind == PortKind.Exhaust && exhausts == ExhaustSide.WithIntakes ? !intake : intake;
    }
}
