using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Units;
using Portwright.Shop.Words;
using Portwright.Web.Shell;

namespace Portwright.Web.Bench;

/// <summary>How a sweep stands, in the words the bench page shows: made anew after each saved reading.</summary>
/// <param name="Version">Grows with every entry: an older standing that comes late is known by it.</param>
/// <param name="Steps">The run's steps in the order asked, then lifts read beyond it.</param>
/// <param name="Last">The last reading taken that stands: what "take back" takes back.</param>
/// <param name="TakenBack">The reading taken back last, while nothing was read since.</param>
public sealed record SweepStanding(int Version, IReadOnlyList<StepStanding> Steps, ReadingStanding? Last, ReadingStanding? TakenBack)
{
    public static SweepStanding Of(Reductions reductions, Guid sweepId, UnitSystem units)
    {
        var ledger = reductions.Ledger;
        var sweep = ledger.Get<Sweep>(sweepId);
        var walk = RunWalk.Of(ledger, sweep);
        var manyPasses = walk.Run.Steps.Any(s => s.Pass > 1);
        var cut = ledger.Get<Cut>(sweep.Fact.Cut);
        var curve = reductions.Of(sweep).Curve;
        var against = Earlier(reductions, sweep) is { } earlier && reductions.Of(cut, sweep.Fact.Fitting) is { } flow
            ? CutComparison.Between(flow, earlier)
            : null;

        StepStanding Standing(RunStep step, IReadOnlyList<Kept<FlowReading>> readings, bool ofTheRun)
        {
            var si = step.Lift.Si(Dimension.Lift);
            var point = curve.PointAt(si);
            var difference = against?.At(si)?.Difference;
            return new StepStanding(
                ofTheRun ? Key(step) : Key(step.Lift),
                Key(step.Lift),
                ofTheRun && manyPasses ? step.Pass : null,
                Print.Bare(si, Dimension.Lift, units),
                ofTheRun ? PassWords(walk.Run, step, units) : manyPasses ? "read besides" : "",
                ofTheRun && manyPasses && walk.Run.WayOf(step) == PassWay.Closing,
                step.TestPressure?.WithUnit,
                step.TestPressure is { } pressure ? Print.Number(pressure.Si(Dimension.Pressure), Dimension.Pressure, units, units == UnitSystem.Si ? 2 : 1) : null,
                readings.Count,
                curve.FlowOf(readings) is not { } own ? null : point!.Readings.Count <= readings.Count ? FlowWords.Value(point.Flow, units) : Print.Bare(own, Dimension.VolumeFlow, units),
                point is null ? null : FlowWords.Value(point.Flow, units),
                point is null ? null : FlowWords.Doubt(point.Flow, units),
                point?.Readings.Count ?? 0,
                difference is null ? null : Shape.Of(difference),
                difference is null || against is null ? null : Less(difference, against.Last.Cut.Fact.Number).In(units));
        }

        return new SweepStanding(
            ledger.Entries.Count,
            [
                .. walk.Steps.Select(s => Standing(s.Step, s.Readings, true)),
                .. LiftGroups.Of(walk.Outside, r => r.Fact.Lift.Si(Dimension.Lift)).Select(g => Standing(new RunStep(g.Items[0].Fact.Lift), g.Items, false)),
            ],
            walk.Readings.Count > 0 ? Reading(walk.Readings[^1]) : null,
            LastTakenBack(ledger, sweepId) is { } back ? Reading(back) : null);

        ReadingStanding Reading(Kept<FlowReading> reading) => new(
            reading.Id,
            Print.Bare(reading.Fact.Lift.Si(Dimension.Lift), Dimension.Lift, units),
            walk.Steps.FirstOrDefault(s => s.Readings.Any(r => r.Id == reading.Id)) is { } of ? Key(of.Step) : Key(reading.Fact.Lift));
    }

    /// <summary>The latest earlier cut of the port that was swept alike: the ghost behind the curve.</summary>
    public static CutFlow? Earlier(Reductions reductions, Kept<Sweep> sweep) =>
        reductions.Before(reductions.Ledger.Get<Cut>(sweep.Fact.Cut), sweep.Fact.Fitting) is [.., var last] ? last : null;

    /// <summary><c>Less cut 2: +2.4 ± 1.6 cfm, real gain, 97 in 100 that it is a gain</c>.</summary>
    private static Sentence Less(Difference difference, int cut) => $"Less cut {cut}: {VerdictWords.Said(difference)}";

    /// <summary>A lift with its unit, so that it is read back the same whatever units the page shows.</summary>
    public static string Key(Typed lift) => FormattableString.Invariant($"{lift.Value:R} {lift.Unit}");

    /// <summary>A step by its lift, and from the second pass on by that too.</summary>
    private static string Key(RunStep step) => step.Pass == 1 ? Key(step.Lift) : FormattableString.Invariant($"{Key(step.Lift)}, pass {step.Pass}");

    /// <summary><c>closing, 2 of 3</c>, <c>again at 15.0 inH2O</c>; empty where there is one pass alone.</summary>
    private static string PassWords(TestRun run, RunStep step, UnitSystem units) => step.TestPressure is { } pressure
        ? $"again at {Print.Number(pressure.Si(Dimension.Pressure), Dimension.Pressure, units, units == UnitSystem.Si ? 2 : 1)}"
        : run.Passes < 2 ? ""
        : FormattableString.Invariant($"{(run.WayOf(step) == PassWay.Closing ? "closing" : "opening")}, {run.PlaceOf(step)} of {run.Passes}");

    private static Kept<FlowReading>? LastTakenBack(Ledger ledger, Guid sweep)
    {
        var last = ledger.Entries.LastOrDefault(e =>
            (e.Fact is FlowReading r && r.Sweep == sweep) || (e.Fact is Hidden && ledger.Find<FlowReading>(e.Subject)?.Fact.Sweep == sweep));
        return last?.Fact is Hidden && ledger.IsHidden(last.Subject) ? ledger.Find<FlowReading>(last.Subject) : null;
    }
}

/// <summary>One step of a run, or a lift read besides.</summary>
/// <param name="Key">Tells it from the others.</param>
/// <param name="Lift">With its unit.</param>
/// <param name="Pass">As a reading states it; null where the run has one alone.</param>
/// <param name="Shown">The lift as the page prints it.</param>
/// <param name="PassWords"><c>closing, 2 of 3</c>; empty where there is one pass alone.</param>
/// <param name="Pressure">With its unit, where it is not the sweep's.</param>
/// <param name="PressureShown">As the page prints it.</param>
/// <param name="Read">How many readings it has.</param>
/// <param name="Own">The flow of those alone, without its unit; null where nothing was read.</param>
/// <param name="Flow">The flow at its lift by all readings there, without its unit; null where nothing was read.</param>
/// <param name="Doubt"><c>± 1.1 cfm</c>.</param>
/// <param name="AtLift">How many readings that rests on.</param>
/// <param name="Shape">Of the verdict against the earlier cut; null where there is none.</param>
/// <param name="Verdict">In words.</param>
public sealed record StepStanding(
    string Key, string Lift, int? Pass, string Shown, string PassWords, bool Closing, string? Pressure, string? PressureShown,
    int Read, string? Own, string? Flow, string? Doubt, int AtLift, string? Shape, string? Verdict);

/// <summary>One reading, to be taken back or put back.</summary>
/// <param name="Step">Key of the step it belongs to.</param>
public sealed record ReadingStanding(Guid Id, string Lift, string Step);
