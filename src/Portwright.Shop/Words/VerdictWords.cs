using Portwright.Physics.Uncertainty;
using Portwright.Shop.Units;

namespace Portwright.Shop.Words;

/// <summary>What a difference is worth, one way everywhere: verdict, shape, odds.</summary>
public static class VerdictWords
{
    /// <summary><c>real gain</c>, <c>real loss</c>, <c>inside the noise</c>, <c>not enough readings</c>.</summary>
    public static string Of(Difference difference)
    {
        ArgumentNullException.ThrowIfNull(difference);
        return Of(difference.Verdict, difference.Of.Value);
    }

    /// <inheritdoc cref="Of(Difference)"/>
    public static string Of(Verdict verdict, double difference) => verdict switch
    {
        Verdict.Real => difference < 0 ? "real loss" : "real gain",
        Verdict.InsideTheNoise => "inside the noise",
        _ => "not enough readings",
    };

    /// <summary>The verdict for other programs: <c>real</c>, <c>inside the noise</c>, <c>not enough readings</c>.</summary>
    public static string Key(Verdict verdict) => verdict == Verdict.Real ? "real" : Of(verdict, 0);

    /// <summary>What the verdict of one comparison means, as a sentence of its own.</summary>
    public static Sentence Explained(Difference difference)
    {
        ArgumentNullException.ThrowIfNull(difference);
        Sentence percent = $"{Quantity.Share(difference.Level)}";
        return difference switch
        {
            { Verdict: Verdict.Real } => $"A {Of(difference)}: more than the noise explains, at {percent}.",
            { Verdict: Verdict.InsideTheNoise } => $"Inside the noise: such a difference comes about by itself often enough ({percent} level).",
            { MoreReadings: 1 } => $"Not enough readings to say. One more repeat of each would make this difference real, if it stays.",
            { MoreReadings: { } more } => $"Not enough readings to say. {more} more repeats of each would make this difference real, if it stays.",
            _ => $"Not enough readings to say. Take repeats: two alone do not know their own scatter.",
        };
    }

    /// <summary>The shape that stands beside those words.</summary>
    public static VerdictShape ShapeOf(Difference difference)
    {
        ArgumentNullException.ThrowIfNull(difference);
        return difference.Verdict switch
        {
            Verdict.Real => difference.Of.Value < 0 ? VerdictShape.Loss : VerdictShape.Gain,
            Verdict.InsideTheNoise => VerdictShape.Noise,
            _ => VerdictShape.Unsure,
        };
    }

    /// <summary><c>94 in 100 that it is a gain</c>; never quite certain, for a measurement is not.</summary>
    public static string Odds(Difference difference)
    {
        ArgumentNullException.ThrowIfNull(difference);
        var gain = difference.Of.Value >= 0;
        return $"{Confidence.InHundred(gain ? difference.ProbabilityOfGain : 1 - difference.ProbabilityOfGain)} that it is a {(gain ? "gain" : "loss")}";
    }

    /// <summary>The difference with its doubt, what it is, and how sure or what would decide it: <c>+2.4 ± 1.6 cfm, real gain, 97 in 100</c>.</summary>
    /// <param name="budget">Key of the difference's budget; empty where there is none.</param>
    public static Sentence Said(Difference difference, Dimension dimension = Dimension.VolumeFlow, string budget = "")
    {
        ArgumentNullException.ThrowIfNull(difference);
        Sentence more = difference switch
        {
            { Verdict: Verdict.NotEnoughReadings, MoreReadings: 1 } => $"; one more reading at each lift may settle it",
            { Verdict: Verdict.NotEnoughReadings, MoreReadings: { } n } => $"; {n} more readings at each lift may settle it",
            { Verdict: Verdict.NotEnoughReadings } => Sentence.Empty,
            { Verdict: Verdict.Real } => $", {Confidence.InHundred(Math.Max(difference.ProbabilityOfGain, 1 - difference.ProbabilityOfGain))}",
            _ => Sentence.Empty,
        };
        return $"{Quantity.Difference(difference.Of, dimension, difference.Level).By(budget)}, {Of(difference)}{more}";
    }
}
