using Portwright.Engine.Cam;
using Portwright.Engine.Charge;
using Portwright.Engine.Gas.Ends;
using Portwright.Engine.Runs;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Plan;
using Portwright.Shop.Record;
using Portwright.Shop.Words;

namespace Portwright.Shop.Runs;

/// <summary>The engine of a plan with a job's ports in it, ready to be run, and all the runs it takes to say what its ports are worth.</summary>
/// <param name="Pair">The ports it breathes through.</param>
/// <param name="Design">As the plan lays it out: one cylinder for all, or all of them.</param>
/// <param name="Single">One cylinder breathing alone: what slopes and doubts are worked out on.</param>
/// <param name="Range">The plan's speeds and weights.</param>
/// <param name="Remarks">What was assumed beyond the plan's own gaps.</param>
public sealed record EngineQuestion(
    PlanInFull Plan, EnginePair Pair, EngineDesign Design, EngineDesign Single, RunSide Intake, RunSide Exhaust, SpeedRange Range, IReadOnlyList<Sentence> Remarks)
{
    /// <summary>Speeds a curve is drawn through, 2 or more.</summary>
    public int DrawnSpeeds { get; init; } = 12;

    /// <summary>Draws of all doubts together, 2 or more; by 24 their standard deviation is known to about a seventh.</summary>
    public int Draws { get; init; } = 24;

    private const int Seed = 20240229;

    /// <summary>1/s, from the plan's lowest to its highest.</summary>
    public SpeedRange Drawn => SpeedRange.Even(Plan.LowestRevolutions, Plan.HighestRevolutions, DrawnSpeeds);

    /// <summary>What can break the engine, whatever the run says.</summary>
    public IReadOnlyList<Sentence> Cautions =>
    [
        .. CautionsOf(PortKind.Intake), .. CautionsOf(PortKind.Exhaust).Take(1),
        $"Engines used on public roads fall under local emissions rules.",
    ];

    /// <summary>The same of one side's valve.</summary>
    public IReadOnlyList<Sentence> CautionsOf(PortKind kind) =>
    [
        kind == PortKind.Intake ? Needs("intake", Plan.IntakeCam.Lift, PistonGap.UsualIntake) : Needs("exhaust", Plan.ExhaustCam.Lift, PistonGap.UsualExhaust),
        $"Springs: bind, retainer to seal and force at this lift and speed are not looked at. Check them before running this cam.",
    ];

    /// <returns>Null where the plan makes no engine or nothing was swept; the problems say why.</returns>
    public static EngineQuestion? Of(PlanReading reading, EnginePair? pair, out IReadOnlyList<PlanProblem> problems)
    {
        ArgumentNullException.ThrowIfNull(reading);
        problems = reading.Problems;
        if (pair is null) problems = [.. problems, new("Sweep", $"No port of this job has been swept at three lifts or more. Sweep an intake first.")];
        if (reading.Plan is not { } plan || pair is null) return null;
        var intake = pair.Intake?.Sheet.Flow is null ? null : RunSide.Of(plan, PortKind.Intake, pair.Intake);
        var exhaust = pair.Exhaust?.Sheet.Flow is null ? null : RunSide.Of(plan, PortKind.Exhaust, pair.Exhaust);
        intake ??= RunSide.Unswept(plan, PortKind.Intake, exhaust!);
        exhaust ??= RunSide.Unswept(plan, PortKind.Exhaust, intake);
        var air = plan.Air.State;
        var single = new EngineDesign(new(plan.Bore.Value, plan.Stroke.Value, plan.Rod.Value, plan.CompressionRatio.Value, plan.PinOffset.Value), intake.Side, exhaust.Side)
        {
            Cylinders = plan.Cylinders,
            Air = new GasAtRest(air.Pressure, air.Temperature),
            DryShare = air.DryMassFraction,
            Fuel = plan.Fuel switch { FuelKind.Methanol => Fuel.Methanol, FuelKind.Ethanol => Fuel.Ethanol, _ => Fuel.Petrol },
            Richness = plan.Richness.Value,
            Manifold = new(plan.Intake.PlenumVolume.Value, plan.Intake.ThrottleArea.Value),
        };
        var design = plan.Layout == CylinderLayout.OneForAll ? single : single with
        {
            FiringOrder = plan.FiringOrder,
            Collector = plan.Exhaust.PrimariesACollector.Value > 1
                ? new((int)plan.Exhaust.PrimariesACollector.Value, plan.Exhaust.CollectorLength.Value, plan.Exhaust.CollectorDiameter.Value) : null,
        };
        var range = new SpeedRange([.. plan.Weights.Select(w => w.Speed / 60)], [.. plan.Weights.Select(w => w.Weight)]);
        IEnumerable<Sentence> fuel = plan.Fuel == FuelKind.Other ? [$"The fuel is none of those the run knows: {Term.Gasoline} stands in for it."] : [];
        return new(plan, pair, design, single, intake, exhaust, range, [.. intake.Remarks, .. exhaust.Remarks, .. fuel]);
    }

    /// <summary>Every run the answer is made of.</summary>
    public IReadOnlyList<EngineTask> Tasks() =>
    [
        .. Drawn.Tasks(Design, Settling.Usual),
        .. WorthCurve.Tasks(Single, Range),
        .. Sampled().SelectMany(d => Drawn.Tasks(d, Settling.Usual)),
    ];

    /// <summary>The answer from what those runs gave, in their order.</summary>
    public EngineAnswer Answer(IReadOnlyList<OperatingPoint> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        var worthRuns = points.Count - DrawnCount * (1 + Draws);
        var worth = WorthCurve.From(Single, Range, [.. points.Skip(DrawnCount).Take(worthRuns)]);
        var drawn = points.Take(DrawnCount).ToList();
        var samples = points.Skip(DrawnCount + worthRuns).Chunk(DrawnCount).ToList();
        var doubt = drawn.Select((_, i) => RepeatScatter.Of([.. samples.Select(s => s[i].Torque)]).StandardDeviation).ToList();
        return new(this, drawn, doubt, worth, MeanTorque(worth)) { Unsettled = [.. points.Where(p => !p.IsSettled).Select(p => p.RevolutionsAMinute).Distinct().Order()] };
    }

    /// <summary>Travel a valve must have to the piston at its top, for the usual gap to be left where they come nearest.</summary>
    private Sentence Needs(string valve, ValveLift lift, double usual)
    {
        // With the stem along the cylinder: one that leans needs less.
        var travel = usual - PistonGap.Least(lift, Plan.Throw, 0, 0).Gap;
        return $"Valve to piston: with this cam the {valve} valve needs {Quantity.Lift(travel)} of travel at top {Term.DeadCentre} to keep {Quantity.Lift(usual)} from the piston (common practice). Measure it with clay or a checking spring before the engine is turned.";
    }

    private int DrawnCount => Drawn.TurnsASecond.Count;

    /// <summary>Mean torque with every doubt of the bench carried to it by the slopes: two cuts compared so share what they share.</summary>
    private Estimate MeanTorque(WorthCurve worth)
    {
        var terms = worth.Intake.Select((w, i) => (w.PerArea, Intake.Areas[i])).Concat(worth.Exhaust.Select((w, i) => (w.PerArea, Exhaust.Areas[i]))).ToArray();
        return Estimate.Linear(worth.Torque, terms);
    }

    /// <summary>Designs with areas drawn from their doubts: what several areas have in common is drawn once for all of them.</summary>
    public IEnumerable<EngineDesign> Sampled()
    {
        var random = new Random(Seed);
        var sources = Intake.Areas.Concat(Exhaust.Areas).SelectMany(a => a.Contributions).Select(c => c.Source).Distinct().Order(StringComparer.Ordinal).ToList();
        for (var n = 0; n < Draws; n++)
        {
            var drawn = sources.ToDictionary(s => s, _ => Normal(random));
            MeasuredAreas Of(RunSide side)
            {
                var areas = side.Areas.Select(a => Math.Max(1e-9, a.Value + a.Contributions.Sum(c => c.Amount * drawn[c.Source]))).ToList();
                var measured = side.Side.Areas;
                return measured with { WithTheStream = areas, Backwards = measured.Backwards is { } b ? [.. b.Select((v, i) => measured.WithTheStream[i] > 0 ? v * areas[i] / measured.WithTheStream[i] : v)] : null };
            }

            yield return Single with { Intake = Single.Intake with { Areas = Of(Intake) }, Exhaust = Single.Exhaust with { Areas = Of(Exhaust) } };
        }
    }

    /// <summary>Box and Muller, Annals of Mathematical Statistics 29 (1958) 610-611.</summary>
    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
