using Portwright.Shop.Findings;
using Portwright.Shop.Survey;
using Portwright.Shop.Words;

namespace Portwright.Shop.Cutting;

/// <summary>A reading worth taking next.</summary>
/// <param name="What">In a sentence.</param>
/// <param name="Minutes">At the bench.</param>
/// <param name="Changes">What of the next decision it may change.</param>
/// <param name="Worth">Expected gain of mean flow by deciding after it and not before, m3/s.</param>
public sealed record NextReading(Sentence What, double Minutes, Sentence Changes, double Worth);

/// <summary>Which readings change most of what is cut next for the time they take.</summary>
/// <remarks>
/// Expected value of knowing (H. Raiffa and R. Schlaifer, Applied Statistical Decision Theory (1961); from memory): with chance p that a cut gains G, and
/// metal taken for nothing counted as dear as the gain, deciding now loses min(p, 1 - p) G on the mean; a reading that settles it saves that. It is
/// taken as settling it: what a reading leaves open is not counted.
/// </remarks>
public static class NextReadings
{
    /// <summary>So many are named.</summary>
    public const int Most = 3;

    /// <summary>Chance that a wall nobody sounded is too thin to cut; judgement, no source.</summary>
    public const double ThinUnsounded = 0.15;

    /// <summary>Where no cut is in sight a measurement that is wrong is counted as this share of the mean flow; judgement.</summary>
    public const double WithoutACut = 0.01;

    /// <summary>Chances this near to certain need no reading.</summary>
    private const double Settled = 0.03;

    /// <summary>Nor does what is as unlikely as the unlikeliest thing stated is to be wrong: nobody would act on either answer.</summary>
    private const double Unlikely = 1 - Confidence.Stated;

    /// <param name="spoken">All the rules say, however unsure.</param>
    /// <param name="cuts">What could be cut next.</param>
    public static IReadOnlyList<NextReading> Of(PortSurvey port, IReadOnlyList<Finding> spoken, IReadOnlyList<NextCut> cuts)
    {
        ArgumentNullException.ThrowIfNull(port);
        ArgumentNullException.ThrowIfNull(spoken);
        ArgumentNullException.ThrowIfNull(cuts);
        var most = cuts.Select(c => c.Worth).DefaultIfEmpty((port.Sheet.Mean?.Flow.Value ?? 0) * WithoutACut).Max();
        IEnumerable<NextReading> readings =
        [
            .. cuts.Where(c => !c.Suggestion.SoundFirst.IsEmpty).Select(c => new NextReading(
                c.Suggestion.SoundFirst, BenchMinutes.OneReading, $"The cut for \"{c.Finding.Title}\" waits on it.", ThinUnsounded * c.Worth)),
            .. spoken.Where(f => !f.NextObservation.IsEmpty && f.Kind != FindingKind.Stop).Select(f => new NextReading(
                f.NextObservation, f.Minutes, Changes(f), Undecided(f.Confidence, f.Kind) * (f.Suggestion is { Pays: true, Gain.Value: var gain } ? gain : most))),
        ];
        return
        [
            .. readings.Where(r => r.Worth > 0)
                .GroupBy(r => r.What).Select(g => g.MaxBy(r => r.Worth)!)
                .OrderByDescending(r => r.Worth / r.Minutes).Take(Most).OrderBy(r => r.Minutes),
        ];
    }

    /// <summary>Share of the gain that deciding now would lose: nothing where it is settled. A measurement that is surely wrong is read again all the same.</summary>
    private static double Undecided(double chance, FindingKind kind) => chance < Unlikely ? 0
        : kind == FindingKind.Measurement && chance >= Confidence.Stated ? chance
        : 1 - chance < Settled ? 0 : Math.Min(chance, 1 - chance);

    private static Sentence Changes(Finding finding) =>
        $"{(finding.Kind == FindingKind.Measurement ? "It tells whether the readings hold" : finding.Suggestion is null ? "It settles" : "It decides a cut")}: \"{finding.Title}\", now {Confidence.Words(finding.Confidence)}.";
}
