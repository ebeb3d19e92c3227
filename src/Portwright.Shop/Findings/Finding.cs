using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings;

/// <summary>What the numbers say about the metal, with the evidence.</summary>
/// <param name="Rule">The catalogue's entry.</param>
/// <param name="Sentence">The finding with its numbers: <c>241 against 318 ft/s at the roof</c>, units as the porter reads them.</param>
/// <param name="Confidence">Chance that it is so, 0 to 1.</param>
/// <param name="Station">Where; null for the whole port.</param>
/// <param name="Bearing">Clock hour as the record keeps it; null all round.</param>
/// <param name="Behind">The facts it rests on: readings, sections, sweeps.</param>
/// <param name="NextObservation">The one measurement that would decide it best, in a sentence; empty where it is decided.</param>
/// <param name="Suggestion">The cut it suggests; null where nothing is to be cut.</param>
public sealed record Finding(
    FindingRule Rule,
    FindingKind Kind,
    Sentence Sentence,
    double Confidence,
    Kept<Station>? Station,
    double? Bearing,
    IReadOnlyList<Guid> Behind,
    Sentence? NextObservation = null,
    CutSuggestion? Suggestion = null,
    Sentence? Instead = null)
{
    /// <summary>What to do that is no cut: leave the place, fill it, build it up; empty where nothing is.</summary>
    public Sentence Instead { get; init; } = Instead ?? Sentence.Empty;

    /// <summary>What <see cref="NextObservation"/> costs at the bench, minutes.</summary>
    public double Minutes { get; init; } = Rule.Minutes;

    /// <summary>Lifts it is about, m, rising; empty where it is about none in particular.</summary>
    public IReadOnlyList<double> Lifts { get; init; } = [];

    /// <summary>The one measurement that would decide it best; empty where it is decided.</summary>
    public Sentence NextObservation { get; init; } = NextObservation ?? Sentence.Empty;

    /// <summary>What it is called: the rule's name, or of a rule that looks for more than one thing the one found.</summary>
    public string Name { get; init; } = Rule.Name;

    /// <summary>Name and place: <c>The floor is lazy at D</c>.</summary>
    public string Title => Station is null ? Name : $"{Name} at {Station.Fact.Letter}";
}

/// <summary>What to cut and what it should bring.</summary>
/// <param name="What">In words, becoming the note of the next cut.</param>
/// <param name="Gain">Of mean flow over the lift range, m3/s restated.</param>
/// <param name="FromLift">m.</param>
/// <param name="ToLift">m.</param>
/// <param name="Bearing">Where metal would go, clock hour; null all round.</param>
/// <param name="ReachesWall">Clock hours to each side that the cut reaches: a thin wall point within them stops it.</param>
public sealed record CutSuggestion(Sentence What, Estimate Gain, double FromLift, double ToLift, double? Bearing, double ReachesWall = 1.5)
{
    /// <summary>Where the metal has to be sounded before; empty where it is known.</summary>
    public Sentence SoundFirst { get; init; } = Sentence.Empty;

    /// <summary>True where its doubt allows the gain: nothing at all gained is less likely than one in ten.</summary>
    public bool Pays => Words.Confidence.Above(Gain, 0) >= Words.Confidence.Stated;
}
