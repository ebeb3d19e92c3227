using Portwright.Physics.Targets;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Targets;

/// <summary>From and to in SI; endless where one side is open.</summary>
public readonly record struct TargetRange(double Low, double High)
{
    public static TargetRange AtLeast(double low) => new(low, double.PositiveInfinity);

    public static TargetRange AtMost(double high) => new(double.NegativeInfinity, high);

    public static TargetRange Exactly(double value) => new(value, value);

    internal static TargetRange Of(UsualRange range) => new(range.Low, range.High);
}

/// <summary>How what was measured stands to what is wanted.</summary>
public enum TargetAnswer
{
    /// <summary>Nothing to hold against each other.</summary>
    None,
    Within,
    Short,
    Over,

    /// <summary>The doubt of the measurement reaches over the edge.</summary>
    CannotTell,
}

/// <summary>One thing the engine asks of a port, as page, paper and terminal print it.</summary>
/// <param name="Rule">Its source, basis and caution.</param>
/// <param name="What">As a porter would say it.</param>
/// <param name="Wanted">Null where the rule sets no mark and only says what is.</param>
/// <param name="Measured">With its doubt; null where nothing was measured.</param>
/// <param name="Words">What it means or rests on, may be empty.</param>
/// <param name="Per">Written behind the unit: <c>degree</c>.</param>
public sealed record EngineTarget(TargetRule Rule, Sentence What, Dimension Dimension, TargetRange? Wanted, Estimate? Measured, Sentence Words, string Per = "")
{
    public TargetAnswer Answer
    {
        get
        {
            if (Wanted is not { } wanted || Measured is not { } measured || wanted.Low == wanted.High)
            {
                return TargetAnswer.None;
            }

            if (Confidence.Below(measured, wanted.Low) >= Confidence.Stated)
            {
                return TargetAnswer.Short;
            }

            return Confidence.Above(measured, wanted.High) >= Confidence.Stated ? TargetAnswer.Over
                : Confidence.Above(measured, wanted.Low) >= Confidence.Stated && Confidence.Below(measured, wanted.High) >= Confidence.Stated ? TargetAnswer.Within
                : TargetAnswer.CannotTell;
        }
    }

    /// <summary><c>2.30 to 2.66 in²</c>, <c>6,400 rpm or more</c>; empty where nothing is wanted.</summary>
    public Sentence WantedSaid => Wanted switch
    {
        null => Sentence.Empty,
        { High: double.PositiveInfinity, Low: var low } => $"{Mark(low)} or more{Behind}",
        { Low: double.NegativeInfinity, High: var high } => $"{Mark(high)} or less{Behind}",
        { Low: var low, High: var high } when low == high => $"{Mark(low)}{Behind}",
        { Low: var low, High: var high } => $"{Mark(low) with { WithoutUnit = true }} to {Mark(high)}{Behind}",
    };

    /// <summary><c>2.365 ± 0.023 in²</c>; empty where nothing was measured.</summary>
    public Sentence MeasuredSaid => Measured is not { } measured ? Sentence.Empty
        : measured.StandardUncertainty > 0 ? (Sentence)$"{Quantity.Of(measured, Dimension)}{Behind}"
        : $"{Mark(measured.Value)}{Behind}";

    /// <summary>In a word or two; empty where there is nothing to say.</summary>
    public string AnswerWords => Answer switch
    {
        TargetAnswer.Within => Wanted is { } wanted && (double.IsInfinity(wanted.High) || double.IsInfinity(wanted.Low)) ? "met" : "within",
        TargetAnswer.Short => "short of it",
        TargetAnswer.Over => "over it",
        TargetAnswer.CannotTell => "on the edge",
        _ => "",
    };

    private string Behind => Per.Length > 0 ? $" {Per}" : "";

    /// <summary>A target is no measurement: fewer figures.</summary>
    private Quantity Mark(double si) => new(si, Dimension, Figures: Dimension switch
    {
        Dimension.VolumeFlow or Dimension.Area or Dimension.Volume or Dimension.Power => 3,
        Dimension.Ratio or Dimension.Fraction => 2,
        _ => 0,
    });
}
