using Portwright.Physics.Uncertainty;
using Portwright.Physics.Valves;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Words;

namespace Portwright.Shop.Sheets;

/// <summary>Flow at the lift the engine's own cam gives.</summary>
/// <param name="Lift">Net lift, m.</param>
/// <param name="Flow">Null where the lift was not tested: nothing is guessed past the last reading.</param>
public sealed record CamPoint(double Lift, Estimate? Flow);

/// <summary>Everything known of one port at one cut. Figures, pages, the command line and paper all print from this.</summary>
/// <param name="Flow">Null where the cut has no reading yet.</param>
/// <param name="Earlier">The port's earlier cuts that were tested with the same fitting, oldest first.</param>
/// <param name="AgainstLast">This cut less the one tested before it.</param>
/// <param name="AgainstFirst">This cut less the first one tested; null where that is the same comparison.</param>
/// <param name="Mean">Mean flow over the compared lift range, from the lowest tested lift to the cam's lift or the highest tested.</param>
/// <param name="Morning">How the bench stood when the last sweep was read.</param>
/// <param name="Benches">Of each sweep in the curve, what the check of its day says of it.</param>
/// <param name="Changes">Where the bench was another at the check after a sweep than at the check before it.</param>
/// <param name="Cautions">What can hurt someone or ruin the casting.</param>
/// <param name="Remarks">What was assumed, left out or could be better, in sentences.</param>
public sealed record PortSheet(
    Kept<Job> Job,
    Kept<Head> Head,
    Kept<Port> Port,
    Kept<Cut> Cut,
    Kept<BenchCard>? Bench,
    CutFlow? Flow,
    IReadOnlyList<CutFlow> Earlier,
    CutComparison? AgainstLast,
    CutComparison? AgainstFirst,
    IReadOnlyList<WindowUse> Windows,
    double? ThroatTakesOver,
    CamPoint? Cam,
    MeanFlow? Mean,
    BenchMorning? Morning,
    IReadOnlyList<SweepBench> Benches,
    IReadOnlyList<ChangeAround> Changes,
    IReadOnlyList<Kept<Photo>> Photos,
    IReadOnlyList<Sentence> Cautions,
    IReadOnlyList<Sentence> Remarks)
{
    /// <summary>The sheet of a cut; the port's latest cut where none is named.</summary>
    /// <exception cref="KeyNotFoundException">No such port, or it has no cut.</exception>
    public static PortSheet Of(Ledger ledger, Guid portId, Guid? cutId = null) => Of(new Reductions(ledger), portId, cutId);

    /// <inheritdoc cref="Of(Ledger, Guid, Guid?)"/>
    public static PortSheet Of(Reductions reductions, Guid portId, Guid? cutId = null)
    {
        ArgumentNullException.ThrowIfNull(reductions);
        var ledger = reductions.Ledger;
        var port = ledger.Get<Port>(portId);
        var head = ledger.Get<Head>(port.Fact.Head);
        var job = ledger.Get<Job>(head.Entry.Job ?? throw new KeyNotFoundException("The head belongs to no job."));
        var cuts = ledger.CutsOf(portId);
        var cut = cutId is { } id
            ? cuts.FirstOrDefault(c => c.Id == id) ?? throw new KeyNotFoundException($"{port.Fact.Name} has no such cut.")
            : cuts.Count > 0 ? cuts[^1] : throw new KeyNotFoundException($"{port.Fact.Name} has no cut yet. Cut 0 is the port as received.");
        var flow = reductions.Of(cut);
        var earlier = flow is null ? [] : reductions.Before(cut, flow.Fitting);
        var bench = flow?.Sweeps[^1].Bench ?? BenchOf(ledger, cut);
        var againstLast = flow is not null && earlier.Count > 0 ? CutComparison.Between(flow, earlier[^1]) : null;
        var againstFirst = flow is not null && earlier.Count > 1 ? CutComparison.Between(flow, earlier[0]) : null;
        var cam = job.Fact.Plan.LiftOf(port.Fact.Kind) is { } lift ? new CamPoint(lift, flow?.Curve.At(lift)) : null;
        // Lengths that make no valve are said in a remark and reckoned with nowhere.
        var valve = port.Fact.Valve is { } written && ValveCheck.Of(written) is null ? written : null;
        IReadOnlyList<WindowUse> windows = valve is null || flow is null || bench is null
            ? []
            : [.. flow.Curve.Points.Where(p => p.Lift > 0).Select(p => WindowUse.At(portId, valve, bench.Fact.Doubt, p))];
        var read = flow?.Sweeps[^1].When ?? BenchMoment.EndOf(DateOnly.FromDateTime(cut.Entry.At.DateTime));
        var morning = bench is null ? null : BenchMorning.Of(ledger, bench.Id, read);
        IReadOnlyList<SweepBench> benches = [.. (flow?.Sweeps ?? []).Select(s => SweepBench.Of(ledger, s))];
        return new PortSheet(
            job, head, port, cut, bench, flow, earlier, againstLast, againstFirst,
            windows,
            valve is null ? null : ValveWindow.ThroatTakesOver(valve.Seat()),
            cam,
            flow is null ? null : MeanFlow.Of(flow.Curve, cam?.Lift),
            morning,
            benches,
            ChangeAround.Of(ledger, flow?.Sweeps ?? []),
            ledger.PhotosOf(cut.Id),
            SheetWords.Cautions(port.Fact, job.Fact.Plan, flow, cam),
            SheetWords.Remarks(reductions, port.Fact, flow, windows, cam, morning, benches));
    }

    private static Kept<BenchCard>? BenchOf(Ledger ledger, Kept<Cut> cut) =>
        ledger.SweepsOf(cut.Id).Select(s => ledger.Find<BenchCard>(s.Fact.Bench)).LastOrDefault() ?? ledger.All<BenchCard>().LastOrDefault();
}

/// <summary>Mean flow over a lift range: the area under the curve over its width.</summary>
/// <param name="From">m.</param>
/// <param name="To">m.</param>
/// <param name="Flow">m3/s at the restated pressure.</param>
public sealed record MeanFlow(double From, double To, Estimate Flow)
{
    /// <summary>From the lowest tested lift to the cam's where it was tested, else to the highest tested.</summary>
    public static MeanFlow? Of(FlowCurve curve, double? camLift)
    {
        var to = camLift is { } cam && curve.Covers(cam) ? cam : curve.HighestLift;
        return curve.MeanOver(curve.LowestLift, to) is { } mean ? new MeanFlow(curve.LowestLift, to, mean) : null;
    }
}
