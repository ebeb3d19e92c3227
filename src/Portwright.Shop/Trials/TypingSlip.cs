using Portwright.Shop.Reduction;

namespace Portwright.Shop.Trials;

/// <summary>A reading that stands far off what the rest says. It is asked about, never refused.</summary>
/// <param name="Expected">What the rest of the curve leads one to expect, m3/s.</param>
public sealed record SlipQuestion(double Lift, double Flow, double Expected);

/// <summary>
/// Tells a typing slip (a digit lost, a point forgotten) from a port that surprises: what is expected comes from the cut before at the
/// same lift, moved by how the neighbours moved, or else from this curve's own neighbours.
/// </summary>
public static class TypingSlip
{
    /// <summary>Share off the expected flow past which a reading is asked about where an earlier cut says what to expect; common practice, no source.</summary>
    public const double AgainstEarlierCut = 0.12;

    /// <summary>The same where only the sweep's own neighbours do.</summary>
    public const double AgainstNeighbours = 0.25;

    /// <summary>The question to ask; null where the reading fits, or where nothing tells.</summary>
    /// <param name="sofar">The sweep without the reading.</param>
    /// <param name="before">The cut tested before, or null.</param>
    /// <param name="lift">m.</param>
    /// <param name="flow">m3/s, restated.</param>
    public static SlipQuestion? Ask(FlowCurve sofar, FlowCurve? before, double lift, double flow)
    {
        if (FromEarlierCut(sofar, before, lift) is { } ghost)
        {
            return Math.Abs(flow / ghost - 1) > AgainstEarlierCut ? new SlipQuestion(lift, flow, ghost) : null;
        }

        return FromNeighbours(sofar, lift) is { } expected && Math.Abs(flow / expected - 1) > AgainstNeighbours
            ? new SlipQuestion(lift, flow, expected)
            : null;
    }

    private static double? FromEarlierCut(FlowCurve sofar, FlowCurve? before, double lift)
    {
        if (before?.At(lift) is not { Value: > 0 } ghost)
        {
            return null;
        }

        var nearest = sofar.Points.Where(p => before.Covers(p.Lift)).OrderBy(p => Math.Abs(p.Lift - lift)).FirstOrDefault();
        var moved = nearest is not null && before.At(nearest.Lift) is { Value: > 0 } there ? nearest.Flow.Value / there.Value : 1;
        return ghost.Value * moved;
    }

    private static double? FromNeighbours(FlowCurve sofar, double lift)
    {
        var others = sofar.Points.Where(p => !LiftGroups.Same(p.Lift, lift)).ToList();
        if (others.Count < 2)
        {
            return null;
        }

        var below = others.LastOrDefault(p => p.Lift < lift);
        var above = others.FirstOrDefault(p => p.Lift > lift);
        var (a, b) = below is not null && above is not null ? (below, above)
            : below is not null ? (others[^2], others[^1])
            : (others[0], others[1]);
        var expected = a.Flow.Value + (b.Flow.Value - a.Flow.Value) * (lift - a.Lift) / (b.Lift - a.Lift);
        return expected > 0 ? expected : null;
    }
}
