using Portwright.Physics.Uncertainty;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Budgets;

/// <summary>One cause in the doubt of a result.</summary>
/// <param name="Of">How it moves the result: one standard step of the cause changes it by the amount, in the result's SI unit.</param>
/// <param name="Share">Of the variance, 0 to 1.</param>
/// <param name="Known">What is known of names: asked only for a cause that is told, since a result of many sweeps has thousands.</param>
public sealed record BudgetCause(Contribution Of, double Share, SourceWords Known)
{
    /// <summary>In a porter's words; null where none are known.</summary>
    public NamedSource? Source => Known.Of(Of.Source);

    /// <summary>What it is; the bare name where no words are known for it.</summary>
    public Sentence Words => Source?.Words ?? Sentence.Plain(Of.Source);

    /// <summary>With what else rests on it: <c>certificate of plate 102, shared by every reading on range large</c>.</summary>
    public Sentence InFull => Source is { Shared.IsEmpty: false } source ? (Sentence)$"{source.Words}, shared by {source.Shared}" : Words;

    /// <summary>Change of the result over the step of the cause, both SI; null where the step is not known apart.</summary>
    public double? Sensitivity => Source?.Step is { Si: not 0 and var step } ? Of.Amount / step : null;

    /// <summary><c>normal</c>, <c>rectangular</c>, <c>Student, 18</c>: how the size of the cause is known.</summary>
    public Sentence Distribution => Of switch
    {
        { Shape: not InputShape.Normal } => Sentence.Plain(Of.Shape.ToString().ToLowerInvariant()),
        { DegreesOfFreedom: double.PositiveInfinity } => $"normal",
        _ => $"Student, {Degrees(Of.DegreesOfFreedom)}",
    };

    /// <summary>Degrees of freedom as they are read: past a thousand Student's factor is the normal one to three figures.</summary>
    internal static string Degrees(double degrees) => degrees > 1000 ? "over 1000" : FormattableString.Invariant($"{Math.Round(degrees, degrees < 100 ? 1 : 0)}");
}

/// <summary>Where the doubt of one result comes from, cause by cause (JCGM 100:2008, 5.1.2; the table of its annex H).</summary>
/// <param name="Causes">Largest share first; causes that cancelled stand last, with nothing.</param>
public sealed record Budget(Estimate Of, Dimension Dimension, IReadOnlyList<BudgetCause> Causes)
{
    /// <summary>A cause under this share of the variance is not told by itself where a porter reads.</summary>
    public const double WorthTelling = 0.01;

    public static Budget For(Estimate of, Dimension dimension, SourceWords words)
    {
        ArgumentNullException.ThrowIfNull(of);
        ArgumentNullException.ThrowIfNull(words);
        var variance = of.Variance;
        return new(of, dimension,
        [
            .. of.Contributions.Select(c => (Cause: c, Square: c.Amount * c.Amount)).OrderByDescending(c => c.Square).ThenBy(c => c.Cause.Source, StringComparer.Ordinal)
                .Select(c => new BudgetCause(c.Cause, variance > 0 ? c.Square / variance : 0, words)),
        ]);
    }
}
