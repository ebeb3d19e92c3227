using Portwright.Shop.Words;

namespace Portwright.Shop.Findings;

/// <summary>What an observation costs at the bench, in minutes, for who has the head up; common practice, no source.</summary>
public static class BenchMinutes
{
    /// <summary>One lift read once more, or one place sounded.</summary>
    public const double OneReading = 1;

    /// <summary>A figure looked up or measured off the bench: a ball, a valve, the plan's cam card.</summary>
    public const double OneFigure = 2;

    /// <summary>A ball held or the probe set at a place, with a reading without it.</summary>
    public const double OnePlace = 2;

    /// <summary>A lift read three times, from above and from below.</summary>
    public const double OneLift = 3;

    /// <summary>A section measured by widths at several heights.</summary>
    public const double OneSection = 5;

    /// <summary>A leak test and a plate.</summary>
    public const double OneCheck = 6;

    /// <summary>A ring of the probe, or balls all round a station.</summary>
    public const double OneRing = 8;

    /// <summary>A short sweep, half steps up and down.</summary>
    public const double OneSweep = 10;

    /// <summary>The head off and on again, and two lifts.</summary>
    public const double OneSetUp = 15;

    /// <summary><c>5 minutes</c>.</summary>
    public static Sentence Words(double minutes) => Sentence.Plain(FormattableString.Invariant($"{minutes:0} {(minutes == 1 ? "minute" : "minutes")}"));
}
