using Portwright.Physics.Targets;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Plan;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Targets;

/// <summary>How what was measured stands to what is wanted.</summary>
public enum TargetAnswer
{
    /// <summary>Nothing to hold against each other, or one of the two rests on what nobody stated.</summary>
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
/// <param name="Explains">What it means or rests on, may be empty.</param>
/// <param name="Per">Written behind the unit: <c>degree</c>.</param>
public sealed record EngineTarget(TargetRule Rule, Sentence What, Dimension Dimension, TargetRange? Wanted, Estimate? Measured, Sentence Explains, string Per = "")
{
    /// <summary>Figures of the plan that either side rests on and nobody stated: what is assumed is never missed, so with any of them there is no answer.</summary>
    public IReadOnlyList<PlanFigure> Assumed { get; init; } = [];

    /// <summary>What to do where the answer is not as wanted; empty where there is nothing to add.</summary>
    public Sentence ToDo { get; init; } = Sentence.Empty;

    public TargetAnswer Answer
    {
        get
        {
            if (Assumed.Count > 0 || Wanted is not { } wanted || Measured is not { } measured || wanted.Low == wanted.High)
            {
                return TargetAnswer.None;
            }

            var (below, above) = (Confidence.Below(measured, wanted.LowEdge), Confidence.Above(measured, wanted.HighEdge));
            return below >= Confidence.Stated ? TargetAnswer.Short
                : above >= Confidence.Stated ? TargetAnswer.Over
                : below <= 1 - Confidence.Stated && above <= 1 - Confidence.Stated ? TargetAnswer.Within
                : TargetAnswer.CannotTell;
        }
    }

    /// <summary>What it means, what to do about it, and what keeps it from being judged; may be empty.</summary>
    public Sentence Words
    {
        get
        {
            Sentence[] said = [Explains, Answer is TargetAnswer.Short or TargetAnswer.Over ? ToDo : Sentence.Empty, NotJudged];
            return said.Where(s => !s.IsEmpty).Aggregate(Sentence.Empty, (all, s) => all.IsEmpty ? s : $"{all} {s}");
        }
    }

    /// <summary><c>6,400 rpm or more</c>, <c>0.5 to 0.6 or less</c>; empty where nothing is wanted.</summary>
    public Sentence WantedSaid => Wanted switch
    {
        null => Sentence.Empty,
        { High: double.PositiveInfinity, LowEdge: var edge } => $"{Between(edge)} or more{Behind}",
        { Low: double.NegativeInfinity, HighEdge: var edge } => $"{Between(edge)} or less{Behind}",
        { Low: var low, High: var high } => $"{Between(new(low, high))}{Behind}",
    };

    /// <summary><c>2.365 ± 0.023 in²</c>; empty where nothing was measured.</summary>
    public Sentence MeasuredSaid => MeasuredBy("");

    /// <inheritdoc cref="MeasuredSaid"/>
    /// <param name="budget">Key of its budget; empty where there is none.</param>
    public Sentence MeasuredBy(string budget) => Measured is not { } measured ? Sentence.Empty
        : measured.StandardUncertainty > 0 ? (Sentence)$"{Quantity.Of(measured, Dimension).By(budget)}{Behind}"
        : $"{Mark(measured.Value)}{Behind}";

    /// <summary>In a word or two; empty where there is nothing to say.</summary>
    public string AnswerWords => Answer switch
    {
        TargetAnswer.Within => Wanted is { IsOpen: true } ? "met" : "within",
        TargetAnswer.Short => "short of it",
        TargetAnswer.Over => "over it",
        TargetAnswer.CannotTell => "on the edge",
        _ => NotJudged.IsEmpty ? "" : "not judged",
    };

    /// <summary>What nobody stated; empty where nothing is wanted or all is stated.</summary>
    private Sentence NotJudged
    {
        get
        {
            if (Assumed.Count == 0 || Wanted is not { } wanted || wanted.Low == wanted.High)
            {
                return Sentence.Empty;
            }

            var named = Assumed.Select(f => (Sentence)$"{char.ToLowerInvariant(f.Name[0]).ToString()}{f.Name[1..]} ({f.Quantity} assumed)").Aggregate((all, f) => $"{all}, {f}");
            return $"Not judged: nobody stated {named}.";
        }
    }

    private string Behind => Per.Length > 0 ? $" {Per}" : "";

    private Sentence Between(UsualRange range) => range.Low == range.High ? $"{Mark(range.Low)}" : (Sentence)$"{Mark(range.Low) with { WithoutUnit = true }} to {Mark(range.High)}";

    /// <summary>A target is no measurement: fewer figures.</summary>
    private Quantity Mark(double si) => new(si, Dimension, Figures: Dimension switch
    {
        Dimension.VolumeFlow or Dimension.Area or Dimension.Volume or Dimension.Power => 3,
        Dimension.Ratio or Dimension.Fraction => 2,
        _ => 0,
    });
}
