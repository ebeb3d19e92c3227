using Portwright.Shop.Findings;
using Portwright.Shop.Survey;
using Portwright.Shop.Walls;
using Portwright.Shop.Words;

namespace Portwright.Shop.Diagnosis;

/// <summary>All the catalogue finds in a port, the surest first, no cut suggested where metal is thin.</summary>
public static class PortFindings
{
    public static IReadOnlyList<Finding> Of(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        return [.. Catalogue.All.SelectMany(r => r.Look(port))
            .Where(f => f.Confidence >= Confidence.Stated)
            .Select(f => Guarded(f, port))
            .OrderBy(f => f.Kind == FindingKind.Measurement ? 0 : f.Kind == FindingKind.Stop ? 1 : 2)
            .ThenByDescending(f => f.Confidence)
            .ThenByDescending(f => f.Suggestion?.Gain.Value ?? 0)];
    }

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

    /// <summary>A cut never crosses a wall point at its limit: the suggestion goes, the finding stays and says why.</summary>
    private static Finding Guarded(Finding finding, PortSurvey port)
    {
        if (finding.Suggestion is not { } cut)
        {
            return finding;
        }

        var thin = Touched(port, finding, cut).SelectMany(s => s.Walls)
            .FirstOrDefault(w => w.Stops && (cut.Bearing is not { } hours || WallState.Apart(hours, w.Point.Fact.Bearing) <= cut.ReachesWall));
        return thin is null ? finding : finding with
        {
            Suggestion = null,
            Sentence = $"{finding.Sentence} Nothing is to be cut here: {Quantity.Length(thin.Thickness)} of metal at {Bearings.Words(thin.Point.Fact.Bearing)}, {WallLimit.Words(thin.Point.Fact.Behind)}, limit {Quantity.Length(thin.Limit)}.",
        };
    }
}
