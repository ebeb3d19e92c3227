using System.Globalization;
using Portwright.Physics.Uncertainty;

namespace Portwright.Cli.Terminal;

/// <summary>Verdicts as a porter says them.</summary>
internal static class VerdictWords
{
    public static string Key(Verdict verdict) => verdict switch
    {
        Verdict.Real => "real",
        Verdict.InsideTheNoise => "inside the noise",
        _ => "not enough readings",
    };

    /// <summary>In a table: <c>real gain</c>, <c>real loss</c>, …</summary>
    public static string Short(Difference difference) => difference.Verdict switch
    {
        Verdict.Real => difference.Of.Value >= 0 ? "real gain" : "real loss",
        Verdict.InsideTheNoise => "inside the noise",
        _ => "not enough readings",
    };

    public static string Sentence(Difference difference)
    {
        var percent = (difference.Level * 100).ToString("F0", CultureInfo.InvariantCulture);
        return difference.Verdict switch
        {
            Verdict.Real => $"{(difference.Of.Value >= 0 ? "A real gain" : "A real loss")}: more than the noise explains, at {percent} percent.",
            Verdict.InsideTheNoise => $"Inside the noise: such a difference comes about by itself often enough ({percent} percent level).",
            _ => "Not enough readings to say."
                + (difference.MoreReadings is { } more ? $" {more} more {(more == 1 ? "repeat" : "repeats")} of each would make this difference real, if it stays." : " Take repeats: two alone do not know their own scatter."),
        };
    }
}
