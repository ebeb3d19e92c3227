using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Survey;

namespace Portwright.Shop.Runs;

/// <summary>The intake and the exhaust port that stand for all the engine's cylinders in a run, each at one cut. One of them at least was swept.</summary>
/// <param name="Intake">Null where no intake was swept.</param>
/// <param name="Exhaust">Null where no exhaust was swept.</param>
public sealed record EnginePair(PortSurvey? Intake, PortSurvey? Exhaust)
{
    public PortSurvey? Of(PortKind kind) => kind == PortKind.Intake ? Intake : Exhaust;

    /// <summary>The job's ports at their latest swept cuts: those named, and for a kind not named the one whose last sweep is the latest.</summary>
    /// <param name="cut">A cut of one port to take instead of its latest swept one.</param>
    /// <returns>Null where no port of the job has been swept.</returns>
    public static EnginePair? Latest(Reductions reductions, Guid job, Guid? cut = null)
    {
        ArgumentNullException.ThrowIfNull(reductions);
        var ledger = reductions.Ledger;
        var asked = cut is { } id ? ledger.Get<Cut>(id) : null;
        PortSurvey? Find(PortKind kind)
        {
            if (asked is not null && ledger.Get<Port>(asked.Fact.Port).Fact.Kind == kind && reductions.Of(asked) is { } flow && IsEnough(flow)) return PortSurvey.Of(reductions, asked.Fact.Port, asked.Id);
            var swept = ledger.HeadsOf(job).SelectMany(h => ledger.PortsOf(h.Id)).Where(p => p.Fact.Kind == kind)
                .Select(p => ledger.CutsOf(p.Id).LastOrDefault(c => reductions.Of(c) is { } flow && IsEnough(flow)))
                .OfType<Kept<Cut>>()
                .MaxBy(c => reductions.Of(c)!.Sweeps[^1].Sweep.Sequence);
            return swept is null ? null : PortSurvey.Of(reductions, swept.Fact.Port, swept.Id);
        }

        var pair = new EnginePair(Find(PortKind.Intake), Find(PortKind.Exhaust));
        return pair.Intake?.Sheet.Flow is null && pair.Exhaust?.Sheet.Flow is null ? null : pair;
    }

    /// <summary>Three lifts or more off the seat.</summary>
    private static bool IsEnough(CutFlow flow) => flow.Curve.Points.Count(p => p.Lift > 0) >= 3;
}
