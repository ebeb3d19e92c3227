using Portwright.Physics.Air;
using Portwright.Physics.TestPiece;
using Portwright.Shop.Record;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Plan;

/// <summary>What the air passes before the intake port.</summary>
/// <param name="ThrottleArea">Effective area of the whole engine's throttle, wide open, or of the class's restrictor where that is smaller, m2.</param>
public sealed record IntakeInFull(PlanFigure RunnerLength, PlanFigure FlangeArea, PlanFigure FarArea, PlanFigure PlenumVolume, PlanFigure ThrottleArea)
{
    public IEnumerable<PlanFigure> Figures => [RunnerLength, FlangeArea, FarArea, PlenumVolume, ThrottleArea];

    /// <summary>Flow through a throttle's bore with its open plate and shaft over that of the free bore; common practice, no source.</summary>
    private const double BoreCoefficient = 0.85;

    /// <summary>Drop of pressure a carburettor is usually rated at, 1.5 inHg, Pa.</summary>
    public const double UsualRating = 1.5 * 3386.389;

    /// <summary>m.</summary>
    private const double UsualRunner = 0.15;

    /// <param name="port">Section of the intake port at its flange, m2, with its reason where assumed.</param>
    /// <param name="displacement">Of the whole engine, m3.</param>
    /// <param name="revolutions">Highest, 1/s.</param>
    internal static IntakeInFull Of(EnginePlan plan, PlanFigure port, double displacement, double revolutions)
    {
        var tract = plan.Intake ?? new IntakeTract();
        var flange = PlanFigure.Of("Runner section at the flange", tract.FlangeArea, Dimension.Area, port.Value,
            port.IsAssumed ? (Sentence)$"not given: {port.Why}" : $"not given: that of the port at its flange");
        return new IntakeInFull(
            PlanFigure.Of("Runner length", tract.RunnerLength, Dimension.Length, UsualRunner, $"not given: {Quantity.Length(UsualRunner)}, common practice under a {Term.Carburetor}"),
            flange,
            PlanFigure.Of("Runner section at the far end", tract.FarArea, Dimension.Area, flange.Value, $"not given: as at the flange"),
            PlanFigure.Of("Plenum volume", tract.PlenumVolume, Dimension.Volume, displacement / 2, $"not given: half the engine's displacement, common practice"),
            Throttled(tract.Throttle, plan.Limits?.RestrictorDiameter, displacement * revolutions / 2));
    }

    private static PlanFigure Throttled(Throttle? throttle, double? restrictor, double demand)
    {
        const string name = "Throttle, effective area";
        var free = throttle switch
        {
            ThrottleArea area => new PlanFigure(name, area.EffectiveArea, Dimension.Area),
            ThrottleBores bores => new PlanFigure(name, BoreCoefficient * bores.Count * Math.PI / 4 * bores.Diameter * bores.Diameter, Dimension.Area),
            RatedCarburettor rated => new PlanFigure(name, AreaOf(rated.Flow, rated.RatedAt), Dimension.Area),
            _ => new PlanFigure(name, AreaOf(demand, UsualRating), Dimension.Area, $"not given: it passes the engine's displacement at its highest speed, {Quantity.Flow(demand)}, at 1.5 inHg, common practice"),
        };
        return restrictor is { } d && Math.PI / 4 * d * d < free.Value ? new PlanFigure("Restrictor, taken as free of loss", Math.PI / 4 * d * d, Dimension.Area) : free;
    }

    private static double AreaOf(double flow, double drop) => RestatedFlow.EffectiveAreaFrom(flow, drop, new StandardAir(), FlowDirection.Draw);
}

/// <summary>What the gas passes behind the exhaust port.</summary>
public sealed record ExhaustInFull(
    PlanFigure PrimaryLength, PlanFigure PrimaryDiameter, PlanFigure PrimariesACollector, PlanFigure CollectorLength, PlanFigure CollectorDiameter)
{
    public IEnumerable<PlanFigure> Figures => [PrimaryLength, PrimaryDiameter, PrimariesACollector, CollectorLength, CollectorDiameter];

    /// <summary>m; common practice, no source.</summary>
    private const double UsualPrimary = 0.81, UsualCollector = 0.3;

    /// <summary>Primary's diameter over the exhaust valve's; collector's section over the primary's by how many meet. Common practice, no source.</summary>
    private const double PrimaryOverValve = 1.1;

    internal static ExhaustInFull Of(EnginePlan plan, double valve, int valves, int cylinders)
    {
        var tract = plan.Exhaust ?? new ExhaustTract();
        var primary = PlanFigure.Of("Primary diameter", tract.PrimaryDiameter, Dimension.Length, PrimaryOverValve * valve * Math.Sqrt(valves),
            $"not given: {PrimaryOverValve:0.0} x the exhaust valve{(valves > 1 ? "s together" : "")}, common practice");
        var meet = PlanFigure.Of("Primaries in a collector", tract.PrimariesACollector, Dimension.Count, FiringOrders.PrimariesACollector(cylinders), $"not given: as many as share out evenly, up to four");
        return new ExhaustInFull(
            PlanFigure.Of("Primary length", tract.PrimaryLength, Dimension.Length, UsualPrimary, $"not given: {Quantity.Length(UsualPrimary)}, common practice"),
            primary,
            meet,
            PlanFigure.Of("Collector length", tract.CollectorLength, Dimension.Length, UsualCollector, $"not given: {Quantity.Length(UsualCollector)}, common practice"),
            PlanFigure.Of("Collector diameter", tract.CollectorDiameter, Dimension.Length, primary.Value * CollectorOverPrimary(meet.Value), $"not given: by how many pipes meet, common practice"));
    }

    private static double CollectorOverPrimary(double meet) => meet switch { 1 => 1, 2 => 1.25, 3 => 1.5, _ => 1.75 };
}
