namespace Portwright.Physics.Metering;

/// <summary>Ranges of validity a metered flow has left. The flow is still computed; the report says so.</summary>
[Flags]
public enum MeterLimits
{
    None = 0,
    PipeDiameter = 1,
    Bore = 2,
    DiameterRatio = 4,
    Reynolds = 8,
    PressureRatio = 16,
    FullScale = 32,
    AirRange = 64,
}

/// <summary>The limits in words.</summary>
public static class MeterLimitWords
{
    private static readonly (MeterLimits Limit, string Words)[] Sentences =
    [
        (MeterLimits.PipeDiameter, "The pipe is outside 50 to 1000 mm, the range ISO 5167-2 covers."),
        (MeterLimits.Bore, "The bore is under 12.5 mm, the smallest ISO 5167-2 covers."),
        (MeterLimits.DiameterRatio, "Bore over pipe diameter is outside 0.10 to 0.75, the range ISO 5167-2 covers."),
        (MeterLimits.Reynolds, "The flow is too small for this plate: the Reynolds number is under the least ISO 5167-2 covers."),
        (MeterLimits.PressureRatio, "The differential is more than a quarter of the absolute pressure before the meter, past what the expansibility formula covers."),
        (MeterLimits.FullScale, "The reading is past the end of the printed scale."),
        (MeterLimits.AirRange, "The air was outside 600 to 1100 hPa or 15 to 27 degC, the range the air density formula (CIPM-2007) is published for."),
    ];

    /// <summary>One sentence for each limit left, in the order of the flags; none when all was inside.</summary>
    public static IReadOnlyList<string> Describe(MeterLimits limits) =>
        limits == MeterLimits.None ? [] : [.. Sentences.Where(s => limits.HasFlag(s.Limit)).Select(s => s.Words)];
}
