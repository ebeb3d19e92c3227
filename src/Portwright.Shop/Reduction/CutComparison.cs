using Portwright.Physics.Uncertainty;

namespace Portwright.Shop.Reduction;

/// <summary>One cut less another: at each lift they both were tested at, over the whole curve, and by lift band.</summary>
public sealed record CutComparison(CutFlow This, CutFlow Last, CurveDifference Curves)
{
    /// <summary>The difference at a tested lift (m); null where the two cannot be compared there.</summary>
    public LiftDifference? At(double lift) => Curves.Lifts.FirstOrDefault(d => LiftGroups.Same(d.Lift, lift));

    /// <summary>
    /// Compares at the lifts of <paramref name="now"/> that lie inside the tested range of <paramref name="last"/>; null where there are
    /// none, or where something else was fitted. The earlier flow is restated as the later is. What both share (bench, day, plate) cancels; set-up scatter is not shared by two set-ups.
    /// </summary>
    public static CutComparison? Between(CutFlow now, CutFlow last)
    {
        if (now.Fitting != last.Fitting)
        {
            return null;
        }

        var before = last.Curve.RestatedLike(now.Curve);
        var lifts = now.Curve.Points
            .Select(p => (p.Lift, Before: before.At(p.Lift), After: p.Flow))
            .Where(p => p.Before is not null)
            .Select(p => new LiftPair(p.Lift, p.Before!, p.After))
            .ToList();
        return lifts.Count == 0 ? null : new CutComparison(now, last, CurveComparison.Compare(lifts));
    }
}
