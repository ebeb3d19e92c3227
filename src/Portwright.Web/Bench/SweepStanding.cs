using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Sheets;
using Portwright.Shop.Units;
using Portwright.Shop.Words;
using Portwright.Web.Shell;

namespace Portwright.Web.Bench;

/// <summary>How a sweep stands, in the words the bench page shows: made anew after each saved reading.</summary>
/// <param name="Version">Grows with every entry: an older standing that comes late is known by it.</param>
/// <param name="Lifts">The plan's lifts in the order asked, then lifts read beyond the plan.</param>
/// <param name="Last">The last reading taken that stands: what "take back" takes back.</param>
/// <param name="TakenBack">The reading taken back last, while nothing was read since.</param>
public sealed record SweepStanding(int Version, IReadOnlyList<LiftStanding> Lifts, ReadingStanding? Last, ReadingStanding? TakenBack)
{
    public static SweepStanding Of(Reductions reductions, Guid sweepId, UnitSystem units)
    {
        var ledger = reductions.Ledger;
        var sweep = ledger.Get<Sweep>(sweepId);
        var plan = SweepPlan.Of(ledger, sweep);
        var cut = ledger.Get<Cut>(sweep.Fact.Cut);
        var reduced = reductions.Of(sweep);
        var against = Earlier(reductions, sweep) is { } earlier && reductions.Of(cut, sweep.Fact.Fitting) is { } flow
            ? CutComparison.Between(flow, earlier)
            : null;

        LiftStanding Standing(Typed lift)
        {
            var si = lift.Si(Dimension.Lift);
            var readings = plan.Readings.Count(r => Same(r.Fact.Lift, si));
            var point = reduced.Curve.PointAt(si);
            var difference = against?.At(si)?.Difference;
            return new LiftStanding(
                Key(lift),
                Print.Bare(si, Dimension.Lift, units),
                readings,
                point is null ? null : FlowWords.Value(point.Flow, units),
                point is null ? null : FlowWords.Doubt(point.Flow, units),
                difference is null ? null : Shape.Of(difference),
                difference is null || against is null ? null : Less(difference, against.Last.Cut.Fact.Number).In(units));
        }

        var lifts = new List<Typed>(sweep.Fact.Lifts);
        foreach (var reading in plan.Readings)
        {
            if (!lifts.Any(l => Same(l, reading.Fact.Lift.Si(Dimension.Lift))))
            {
                lifts.Add(reading.Fact.Lift);
            }
        }

        return new SweepStanding(
            ledger.Entries.Count,
            [.. lifts.Select(Standing)],
            plan.Readings.Count > 0 ? ReadingStanding.Of(plan.Readings[^1], units) : null,
            LastTakenBack(ledger, sweepId) is { } back ? ReadingStanding.Of(back, units) : null);
    }

    /// <summary>The latest earlier cut of the port that was swept alike: the ghost behind the curve.</summary>
    public static CutFlow? Earlier(Reductions reductions, Kept<Sweep> sweep) =>
        reductions.Before(reductions.Ledger.Get<Cut>(sweep.Fact.Cut), sweep.Fact.Fitting) is [.., var last] ? last : null;

    /// <summary><c>Less cut 2: +2.4 ± 1.6 cfm, real gain, 97 in 100 that it is a gain</c>.</summary>
    private static Sentence Less(Difference difference, int cut) => $"Less cut {cut}: {VerdictWords.Said(difference)}";

    /// <summary>A lift with its unit, so that it is read back the same whatever units the page shows.</summary>
    public static string Key(Typed lift) => FormattableString.Invariant($"{lift.Value:R} {lift.Unit}");

    private static bool Same(Typed lift, double si) => LiftGroups.Same(lift.Si(Dimension.Lift), si);

    private static Kept<FlowReading>? LastTakenBack(Ledger ledger, Guid sweep)
    {
        var last = ledger.Entries.LastOrDefault(e =>
            (e.Fact is FlowReading r && r.Sweep == sweep) || (e.Fact is Hidden && ledger.Find<FlowReading>(e.Subject)?.Fact.Sweep == sweep));
        return last?.Fact is Hidden && ledger.IsHidden(last.Subject) ? ledger.Find<FlowReading>(last.Subject) : null;
    }
}

/// <summary>One lift of a sweep.</summary>
/// <param name="Key">The lift with its unit.</param>
/// <param name="Shown">As the page prints it.</param>
/// <param name="Read">How many readings it has.</param>
/// <param name="Flow">The flow there, without its unit; null where nothing was read.</param>
/// <param name="Doubt"><c>± 1.1 cfm</c>.</param>
/// <param name="Shape">Of the verdict against the earlier cut; null where there is none.</param>
/// <param name="Verdict">In words.</param>
public sealed record LiftStanding(string Key, string Shown, int Read, string? Flow, string? Doubt, string? Shape, string? Verdict);

/// <summary>One reading, to be taken back or put back.</summary>
public sealed record ReadingStanding(Guid Id, string Lift)
{
    public static ReadingStanding Of(Kept<FlowReading> reading, UnitSystem units) =>
        new(reading.Id, Print.Bare(reading.Fact.Lift.Si(Dimension.Lift), Dimension.Lift, units));
}
