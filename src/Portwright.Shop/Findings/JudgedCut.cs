using Portwright.Shop.Survey;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings;

/// <summary>A suggestion whose share of the port's loss is judged: over the upper half of the lifts, where the port limits and not the seat.</summary>
public static class JudgedCut
{
    /// <param name="share">Of the port's loss that should go, 0 to 1.</param>
    /// <param name="doubt">Its standard uncertainty.</param>
    /// <param name="bearing">Where metal would go.</param>
    /// <returns>Null before a sweep.</returns>
    public static CutSuggestion? Of(PortSurvey port, Sentence what, double share, double doubt, string source, double? bearing)
    {
        ArgumentNullException.ThrowIfNull(port);
        if (port.LiftThatCounts is not { } top || port.Sheet.Flow is not { } flow)
        {
            return null;
        }

        var from = Math.Max(flow.Curve.LowestLift, top / 2);
        return ExpectedGain.OfPort(port, ExpectedGain.Judged(share, doubt, source), from, top) is { } gain
            ? new CutSuggestion(what, gain, from, top, bearing)
            : null;
    }
}
