using Portwright.Physics.Crank;
using Portwright.Physics.Targets;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Words;

namespace Portwright.Shop.Plan;

/// <summary>An engine plan with every figure an engine run needs: what the plan states, and for the rest a stated default with its reason.</summary>
/// <param name="LowestSpeed">rad/s.</param>
/// <param name="HighestSpeed">rad/s.</param>
/// <param name="Throw">Crank, rod and piston.</param>
/// <param name="FiringOrderWhy">Why this firing order was assumed; empty where it is stated.</param>
/// <param name="Weights">Speeds in revolutions a minute, rising, with their weights.</param>
/// <param name="WeightsWhy">Why these weights were assumed; empty where they are stated.</param>
/// <param name="Fuel">Petrol where nothing says otherwise.</param>
/// <param name="FuelWhy">Why this fuel was assumed; empty where it is stated.</param>
/// <param name="Ports">What the heads say.</param>
public sealed record PlanInFull(
    PlanFigure Bore,
    PlanFigure Stroke,
    PlanFigure Rod,
    PlanFigure PinOffset,
    PlanFigure CompressionRatio,
    PlanFigure CylinderCount,
    PlanFigure LowestSpeed,
    PlanFigure HighestSpeed,
    PlanFigure IntakeValve,
    PlanFigure ExhaustValve,
    SliderCrank Throw,
    IReadOnlyList<int> FiringOrder,
    Sentence FiringOrderWhy,
    CamInFull IntakeCam,
    CamInFull ExhaustCam,
    IntakeInFull Intake,
    ExhaustInFull Exhaust,
    FuelKind Fuel,
    Sentence FuelWhy,
    PlanFigure Richness,
    AirInFull Air,
    IReadOnlyList<SpeedWeight> Weights,
    Sentence WeightsWhy,
    CylinderLayout Layout,
    SpeedBand? PortSpeed,
    EnginePorts Ports)
{
    public int Cylinders => (int)CylinderCount.Value;

    /// <summary>Highest, 1/s.</summary>
    public double HighestRevolutions => HighestSpeed.Value / (2 * Math.PI);

    /// <summary>Lowest, 1/s.</summary>
    public double LowestRevolutions => LowestSpeed.Value / (2 * Math.PI);

    /// <summary>Of one cylinder, m3: piston area times the piston's travel.</summary>
    public double Displacement => PistonDemand.PistonArea(Bore.Value) * Throw.Travel;

    /// <summary>Rod over stroke of nearly every engine, from and to; common practice, no source.</summary>
    public const double ShortRod = 1.4, LongRod = 2.1;

    /// <summary>The same crank with a rod so many strokes long.</summary>
    public SliderCrank WithRod(double strokes) => new(Stroke.Value, strokes * Stroke.Value, PinOffset.Value);

    public CamInFull CamOf(PortKind kind) => kind == PortKind.Intake ? IntakeCam : ExhaustCam;

    /// <summary>Every figure, in the order a plan is read.</summary>
    public IReadOnlyList<PlanFigure> Figures =>
    [
        Bore, Stroke, Rod, PinOffset, CompressionRatio, CylinderCount, LowestSpeed, HighestSpeed, IntakeValve, ExhaustValve,
        .. IntakeCam.Figures, .. ExhaustCam.Figures, .. Intake.Figures, .. Exhaust.Figures, Richness, Air.Pressure, Air.Temperature, Air.RelativeHumidity,
    ];

    /// <summary>The plan in full, or what keeps it from being an engine.</summary>
    /// <param name="ports">What the heads say; null: nothing known.</param>
    public static PlanReading Of(EnginePlan plan, EnginePorts? ports = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return PlanFilling.Fill(plan, ports ?? EnginePorts.Unknown);
    }
}

/// <summary>A plan read in full.</summary>
/// <param name="Plan">Null where a problem stands in its way.</param>
/// <param name="Problems">Empty where there is a plan.</param>
public sealed record PlanReading(PlanInFull? Plan, IReadOnlyList<PlanProblem> Problems)
{
    /// <summary>A job's engine plan with what its heads say, read once of a record.</summary>
    /// <exception cref="KeyNotFoundException">No such job.</exception>
    public static PlanReading Of(Reductions reductions, Guid job)
    {
        ArgumentNullException.ThrowIfNull(reductions);
        return reductions.Once(job, () => PlanInFull.Of(reductions.Ledger.Get<Job>(job).Fact.Plan, EnginePorts.Of(reductions, job)));
    }
}
