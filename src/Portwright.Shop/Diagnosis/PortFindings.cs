using Portwright.Shop.Findings;
using Portwright.Shop.Findings.Rules;
using Portwright.Shop.Survey;
using Portwright.Shop.Walls;
using Portwright.Shop.Words;

namespace Portwright.Shop.Diagnosis;

/// <summary>All the catalogue finds in a port, the surest first, no cut suggested where metal is thin.</summary>
public static class PortFindings
{
    /// <summary>Everything any rule says of the port with its chance, however small, in the catalogue's order; no cut suggested where metal is thin.</summary>
    public static IReadOnlyList<Finding> Spoken(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        return port.Remembered(() => (IReadOnlyList<Finding>)Agreed([.. Catalogue.All.SelectMany(r => r.Look(port)).Select(f => Guarded(f, port))]));
    }

    /// <summary>Where two instruments contradict each other nothing is cut on the word of either: the suggestion goes, the finding stays and says why.</summary>
    public static IReadOnlyList<Finding> Agreed(IReadOnlyList<Finding> findings)
    {
        ArgumentNullException.ThrowIfNull(findings);
        var disputed = findings.Where(f => f.Rule is InstrumentsDisagree && f.Confidence >= Confidence.Stated).ToList();
        return disputed.Count == 0 ? findings : [.. findings.Select(f => f.Suggestion is { Bearing: { } hours } cut
            && disputed.Exists(d => d.Station?.Id == f.Station?.Id && WallState.Apart(d.Bearing!.Value, hours) <= cut.ReachesWall)
                ? f with { Suggestion = null, Sentence = $"{f.Sentence} Nothing is to be cut here until probe and ball agree." }
                : f)];
    }

    /// <summary>What stands, the surest first.</summary>
    public static IReadOnlyList<Finding> Of(PortSurvey port) => Stated(Spoken(port));

    /// <summary>Of all that was said what is sure enough to be stated, in a reader's order.</summary>
    public static IReadOnlyList<Finding> Stated(IEnumerable<Finding> spoken) =>
    [
        .. spoken.Where(f => f.Confidence >= Confidence.Stated)
            .OrderBy(f => f.Kind == FindingKind.Measurement ? 0 : f.Kind == FindingKind.Stop ? 1 : 2)
            .ThenByDescending(f => f.Confidence)
            .ThenByDescending(f => f.Suggestion?.Gain.Value ?? 0),
    ];

    /// <summary>
    /// Stations a cut reaches: its own; with a bearing the neighbours too, for it is blended out before and after; without a station
    /// the throat and bowl, where such cuts are made, and what may be either.
    /// </summary>
    private static IEnumerable<SurveyedStation> Touched(PortSurvey port, Finding finding, CutSuggestion cut)
    {
        var at = port.Stations.ToList().FindIndex(s => s.Station.Id == finding.Station?.Id);
        return at < 0
            ? port.PerhapsThroatOrBowl
            : port.Stations.Where((_, i) => cut.Bearing is null ? i == at : Math.Abs(i - at) <= 1);
    }

    /// <summary>A cut never crosses a wall point at its limit: the suggestion goes, the finding stays and says why. Where nobody knows the metal, it says to sound it first.</summary>
    public static Finding Guarded(Finding finding, PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(port);
        if (finding.Suggestion is not { } cut)
        {
            return finding;
        }

        var touched = Touched(port, finding, cut).ToList();
        var thin = touched.SelectMany(s => s.Walls)
            .FirstOrDefault(w => w.Stops && (cut.Bearing is not { } hours || WallState.Apart(hours, w.Point.Fact.Bearing) <= cut.ReachesWall));
        return thin is null ? finding with { Suggestion = cut with { SoundFirst = Unsounded(port, finding, cut, touched) } } : finding with
        {
            Suggestion = null,
            Sentence = $"{finding.Sentence} Nothing is to be cut here: {Quantity.Length(thin.Thickness)} of metal at {thin.Station.Fact.Letter}, {Bearings.Words(thin.Point.Fact.Bearing)}, {WallLimit.Words(thin.Point.Fact.Behind)}, limit {Quantity.Length(thin.Limit)}.",
        };
    }

    /// <summary>Where the cut would go and nobody knows the metal as it is now: a wall not sounded is never counted as thick, nor one sounded before the last cut.</summary>
    private static Sentence Unsounded(PortSurvey port, Finding finding, CutSuggestion cut, List<SurveyedStation> touched)
    {
        double[] hours = cut.Bearing is { } bearing ? [bearing] : [12, 3, 6, 9];
        // Its own section where it has one; where throat and bowl are cut, every one of them.
        var own = finding.Station is { } at ? touched.Where(s => s.Station.Id == at.Id).ToList() : touched;
        var bare = own.Where(s => Array.Exists(hours, h => !s.Walls.Any(w => w.MeasuredAt >= port.Sheet.Cut.Fact.Number && WallState.Apart(h, w.Point.Fact.Bearing) <= cut.ReachesWall))).ToList();
        Sentence where = cut.Bearing is { } hour ? (Sentence)$", {Bearings.Words(hour)}" : $", all round";
        return own.Count == 0 ? (Sentence)$"Sound the metal there first: no thickness is known."
            : bare.Count == 0 ? Sentence.Empty
            : $"Sound the metal at {string.Join(" and ", bare.Select(s => s.Letter))}{where} first: no thickness is known there at this cut.";
    }
}
