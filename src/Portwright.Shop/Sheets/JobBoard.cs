using Portwright.Physics.Uncertainty;
using Portwright.Shop.Heads;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;

namespace Portwright.Shop.Sheets;

/// <summary>One port on the job's drawing of its heads.</summary>
/// <param name="Lift">The lift the figure stands for: the cam's where tested, else the highest tested; m.</param>
/// <param name="Flow">At that lift; null where nothing was read yet.</param>
/// <param name="State">In a few words: <c>cut 3</c>, <c>not started</c>, <c>on the bench</c>.</param>
/// <param name="LiftsLeft">Lifts of the last sweep still to be read.</param>
public sealed record PortOnBoard(
    Kept<Port> Port,
    Kept<Cut>? Cut,
    double? Lift,
    Estimate? Flow,
    CutComparison? AgainstLast,
    string State,
    int LiftsLeft,
    Guid? OpenSweep);

/// <summary>A head with its ports in the order they lie.</summary>
public sealed record HeadOnBoard(Kept<Head> Head, IReadOnlyList<PortOnBoard> Ports);

/// <summary>A job as its heads, and the one thing to do next with the reason.</summary>
public sealed record JobBoard(Kept<Job> Job, IReadOnlyList<HeadOnBoard> Heads, string Next, string NextReason, PortOnBoard? NextPort)
{
    public static JobBoard Of(Ledger ledger, Guid jobId) => Of(new Reductions(ledger), jobId);

    public static JobBoard Of(Reductions reductions, Guid jobId)
    {
        ArgumentNullException.ThrowIfNull(reductions);
        var ledger = reductions.Ledger;
        var job = ledger.Get<Job>(jobId);
        var heads = ledger.HeadsOf(jobId)
            .Select(h => new HeadOnBoard(h, [.. Lying(ledger, h).Select(p => OnBoard(reductions, job, p))]))
            .ToList();
        var (next, reason, port) = NextStep.Of(heads);
        return new JobBoard(job, heads, next, reason, port);
    }

    /// <summary>As they lie where that was said, else by cylinder.</summary>
    private static IEnumerable<Kept<Port>> Lying(Ledger ledger, Kept<Head> head) => head.Fact.Lay is { } lay
        ? PortLie.Along(ledger.PortsOf(head.Id).Select(p => (p.Id, p.Fact)), lay).Select(l => ledger.Get<Port>(l.Id))
        : ledger.PortsOf(head.Id);

    private static PortOnBoard OnBoard(Reductions reductions, Kept<Job> job, Kept<Port> port)
    {
        var ledger = reductions.Ledger;
        var cuts = ledger.CutsOf(port.Id);
        if (cuts.Count == 0)
        {
            return new PortOnBoard(port, null, null, null, null, "not started", 0, null);
        }

        var cut = cuts[^1];
        var sweep = ledger.SweepsOf(cut.Id).LastOrDefault();
        var left = sweep is null ? 0 : RunWalk.Of(ledger, sweep).Left.Count();
        var last = cuts.Reverse().Select(reductions.Of).FirstOrDefault(f => f is not null);
        if (last is null)
        {
            return new PortOnBoard(port, cut, null, null, null, sweep is null ? "not started" : "on the bench", left, left > 0 ? sweep?.Id : null);
        }

        var cam = job.Fact.Plan.LiftOf(port.Fact.Kind);
        var lift = cam is { } c && last.Curve.Covers(c) ? c : last.Curve.HighestLift;
        var against = reductions.Before(last.Cut, last.Fitting) is [.., var before] ? CutComparison.Between(last, before) : null;
        var state = left > 0 ? "on the bench" : $"cut {last.Cut.Fact.Number}";
        return new PortOnBoard(port, cut, lift, last.Curve.At(lift), against, state, left, left > 0 ? sweep?.Id : null);
    }
}
