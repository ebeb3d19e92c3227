using Portwright.Shop.Entering;
using Portwright.Shop.Record;

namespace Portwright.Shop.Trials;

/// <summary>What the record knows around a field before it is typed: the bench, the engine plan, the port and its sisters.</summary>
public static class KnownAround
{
    /// <summary>Where the bench stands and what it is usually set to; of the bench used last where none is named.</summary>
    public static Surroundings Bench(Ledger ledger, Kept<BenchCard>? bench = null)
    {
        ArgumentNullException.ThrowIfNull(ledger);
        return (bench ?? ledger.All<BenchCard>().LastOrDefault()) is { Fact: var card }
            ? Surroundings.None.With(EnteredRoom.Elevation, card.Elevation).With(EnteredRoom.UsualPressure, card.RestatedAt)
            : Surroundings.None;
    }

    /// <summary>What the plan states.</summary>
    public static Surroundings Plan(EnginePlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return Surroundings.None.With(EnteredPlan.Bore, plan.Bore).With(EnteredPlan.Stroke, plan.Stroke).With(EnteredPlan.HighestSpeed, plan.HighestSpeed * Math.PI / 30);
    }

    /// <summary>Bench, plan, the port's valve and its sisters'.</summary>
    public static Surroundings Port(Ledger ledger, Guid port)
    {
        ArgumentNullException.ThrowIfNull(ledger);
        var kept = ledger.Get<Port>(port);
        var job = ledger.Get<Job>(ledger.Get<Head>(kept.Fact.Head).Entry.Job!.Value);
        var sister = ledger.All<Port>().LastOrDefault(p => p.Id != port && p.Entry.Job == kept.Entry.Job && p.Fact.Kind == kept.Fact.Kind && p.Fact.Valve is not null);
        return Plan(job.Fact.Plan).With(Bench(ledger))
            .With(EnteredValve.Head, kept.Fact.Valve?.HeadDiameter)
            .With(EnteredValve.SisterHead, sister?.Fact.Valve?.HeadDiameter)
            .With(EnteredPort.Length, ledger.All<Centreline>().LastOrDefault(c => c.Fact.Port == port)?.Fact.Length);
    }
}
