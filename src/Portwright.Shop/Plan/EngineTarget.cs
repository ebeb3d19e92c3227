using System.Globalization;
using Portwright.Physics.Targets;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Findings;
using Portwright.Shop.Units;

namespace Portwright.Shop.Plan;

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
/// <param name="What">As a porter would say it, in marked numbers.</param>
/// <param name="Wanted">Null where the rule sets no mark and only says what is.</param>
/// <param name="Measured">With its doubt; null where nothing was measured.</param>
/// <param name="Words">What it means or rests on, in marked numbers (<see cref="FindingWords.Show"/>); may be empty.</param>
/// <param name="Per">Written behind the unit: <c>degree</c>.</param>
public sealed record EngineTarget(TargetRule Rule, string What, Dimension Dimension, TargetRange? Wanted, Estimate? Measured, string Words, string Per = "")
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

    /// <summary><c>2.30 to 2.66 in²</c>, <c>6400 rpm or more</c>; empty where nothing is wanted.</summary>
    public string WantedWords(UnitSystem units)
    {
        if (Wanted is not { } wanted)
        {
            return "";
        }

        var text = wanted switch
        {
            { High: double.PositiveInfinity } => $"{Number(wanted.Low, units)} or more",
            { Low: double.NegativeInfinity } => $"{Number(wanted.High, units)} or less",
            _ when wanted.Low == wanted.High => Number(wanted.Low, units),
            _ => $"{Bare(wanted.Low, units)} to {Number(wanted.High, units)}",
        };
        return Behind(text);
    }

    /// <summary><c>2.365 ± 0.023 in²</c>; empty where nothing was measured.</summary>
    public string MeasuredWords(UnitSystem units)
    {
        if (Measured is not { } measured)
        {
            return "";
        }

        var doubt = measured.Expanded();
        return Behind(Dimension == Dimension.Length
            ? $"{Print.WithDoubt(measured.Value, doubt, Dimension.Lift, units)}{(units == UnitSystem.UsCustomary ? $" {Print.UnitName(Dimension.Length, units)}" : "")}"
            : doubt > 0 ? Print.WithDoubt(measured.Value, doubt, Dimension, units) : Number(measured.Value, units));
    }

    /// <summary>In a word or two; empty where there is nothing to say.</summary>
    public string AnswerWords => Answer switch
    {
        TargetAnswer.Within => Wanted is { } wanted && (double.IsInfinity(wanted.High) || double.IsInfinity(wanted.Low)) ? "met" : "within",
        TargetAnswer.Short => "short of it",
        TargetAnswer.Over => "over it",
        TargetAnswer.CannotTell => "on the edge",
        _ => "",
    };

    private string Behind(string text) => Per.Length > 0 ? $"{text} {Per}" : text;

    private string Number(double si, UnitSystem units) => Dimension switch
    {
        Dimension.Length => FindingWords.Show(FindingWords.Length(si), units),
        Dimension.RotationalSpeed => string.Create(CultureInfo.InvariantCulture, $"{si * 30 / Math.PI:N0} rpm"),
        _ => Print.Number(si, Dimension, units, Decimals(units)),
    };

    private string Bare(double si, UnitSystem units) => Dimension switch
    {
        Dimension.Length => Print.Bare(si, Dimension.Lift, units),
        Dimension.RotationalSpeed => (si * 30 / Math.PI).ToString("N0", CultureInfo.InvariantCulture),
        _ => Print.Bare(si, Dimension, units, Decimals(units)),
    };

    /// <summary>A target is no measurement: fewer figures.</summary>
    private int? Decimals(UnitSystem units) => Dimension switch
    {
        Dimension.VolumeFlow => units == UnitSystem.UsCustomary ? 0 : 1,
        Dimension.Area => units == UnitSystem.UsCustomary ? 2 : 0,
        Dimension.Fraction or Dimension.Volume or Dimension.Power => 0,
        Dimension.Ratio => 2,
        _ => null,
    };
}
