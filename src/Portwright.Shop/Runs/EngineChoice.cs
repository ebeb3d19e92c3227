using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Survey;

namespace Portwright.Shop.Runs;

/// <summary>A port at a swept cut that an engine run can breathe through.</summary>
public sealed record EngineCut(Kept<Head> Head, Kept<Port> Port, Kept<Cut> Cut)
{
    /// <summary>As a porter says it: <c>intake 2, cut 3</c>.</summary>
    public string Words => $"{Port.Fact.Name}, cut {Cut.Fact.Number}";
}

/// <summary>The swept cuts of a job, and the pair that is taken of them.</summary>
/// <param name="Intake">Taken; null where no intake was swept.</param>
/// <param name="Exhaust">Taken; null where no exhaust was swept.</param>
/// <param name="Choices">All that could be taken, in the order of heads, ports and cuts.</param>
public sealed record EngineChoice(Guid Job, EngineCut? Intake, EngineCut? Exhaust, IReadOnlyList<EngineCut> Choices)
{
    /// <summary>Lifts off the seat a sweep needs before an engine can breathe through it.</summary>
    public const int FewestLifts = 3;

    /// <param name="intake">A cut asked for; what is no swept cut of an intake is passed over, and the one swept last is taken.</param>
    /// <param name="exhaust">The same of the exhaust.</param>
    public static EngineChoice Of(Reductions reductions, Guid job, Guid? intake = null, Guid? exhaust = null)
    {
        ArgumentNullException.ThrowIfNull(reductions);
        var ledger = reductions.Ledger;
        EngineCut[] all =
        [
            .. from head in ledger.HeadsOf(job)
               from port in ledger.PortsOf(head.Id)
               from cut in ledger.CutsOf(port.Id)
               where reductions.Of(cut) is { } flow && flow.Curve.Points.Count(p => p.Lift > 0) >= FewestLifts
               select new EngineCut(head, port, cut),
        ];
        EngineCut? Taken(PortKind kind, Guid? asked)
        {
            var own = all.Where(c => c.Port.Fact.Kind == kind).ToList();
            return own.FirstOrDefault(c => c.Cut.Id == asked)
                ?? own.GroupBy(c => c.Port.Id).Select(g => g.Last()).MaxBy(c => reductions.Of(c.Cut)!.Sweeps[^1].Sweep.Sequence);
        }

        return new(job, Taken(PortKind.Intake, intake), Taken(PortKind.Exhaust, exhaust), all);
    }

    public EngineCut? Of(PortKind kind) => kind == PortKind.Intake ? Intake : Exhaust;

    /// <summary>The same with another cut of one side.</summary>
    public EngineChoice With(EngineCut cut)
    {
        ArgumentNullException.ThrowIfNull(cut);
        return cut.Port.Fact.Kind == PortKind.Intake ? this with { Intake = cut } : this with { Exhaust = cut };
    }

    /// <summary>The last swept cut of the same port before the one taken; null where there is none.</summary>
    public EngineCut? Before(PortKind kind) =>
        Of(kind) is { } now ? Choices.LastOrDefault(c => c.Port.Id == now.Port.Id && c.Cut.Fact.Number < now.Cut.Fact.Number) : null;

    /// <returns>Null where nothing was swept.</returns>
    public EnginePair? Pair(Reductions reductions)
    {
        PortSurvey? Of(EngineCut? cut) => cut is null ? null : PortSurvey.Of(reductions, cut.Port.Id, cut.Cut.Id);
        return Intake is null && Exhaust is null ? null : new(Of(Intake), Of(Exhaust));
    }
}
