using Portwright.Physics.Targets;
using Portwright.Physics.Uncertainty;
using Portwright.Physics.Valves;
using Portwright.Shop.Plan;
using Portwright.Shop.Record;
using Portwright.Shop.Survey;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings;

/// <summary>An intake in its plan's engine by Taylor's inlet Mach index: the one number that finding, target and wanted flow speak of.</summary>
/// <param name="Plan">The engine.</param>
/// <param name="Intakes">The cylinder breathes through; the others are taken to be like this one, as a matched set is.</param>
/// <param name="MeanArea">Of all of them over the cam's event, m2; null where the sweep does not reach the cam's lift.</param>
/// <param name="Valve">Null where valve and seat are not written down.</param>
public sealed record InletMach(PlanInFull Plan, int Intakes, Estimate? MeanArea, ValveData? Valve)
{
    /// <summary>Null for an exhaust.</summary>
    public static InletMach? Of(PlanInFull plan, PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(port);
        var mean = port.Sheet.Flow is { } flow ? LiftEvent.MeanArea(flow.Curve, plan.IntakeCam) : null;
        return port.Sheet.Port.Fact is { Kind: PortKind.Intake, Valve: var valve }
            ? new InletMach(plan, port.Intakes, mean is { Value: > 0 } ? mean.Scale(port.Intakes) : null, valve)
            : null;
    }

    /// <summary>Where filling begins to fall, by the register.</summary>
    public static UsualRange Knee => NamedLimits.InletMachKnee.Limits;

    /// <summary>Bore and stroke are always stated; speed and cam may not be.</summary>
    public IReadOnlyList<PlanFigure> NotStated => [.. Plan.HighestSpeed.IsAssumed ? [Plan.HighestSpeed] : Array.Empty<PlanFigure>(), .. Plan.IntakeCam.NotStated];

    /// <summary>At the plan's highest speed, with the doubt of the sweep, the cam's flanks and the intake's warmth; null without a mean area.</summary>
    public Estimate? Index => MeanArea is { } area ? Warm(IndexOf(area.Value), area, -1) : null;

    /// <summary>Mean effective area of all intakes that brings the index to the knee, m2: the least at its upper end.</summary>
    public UsualRange AreaWanted => new(AreaFor(Knee.High), AreaFor(Knee.Low));

    /// <summary>Engine speed at a value of the index, rad/s; null without a mean area.</summary>
    public Estimate? SpeedAt(double index) => MeanArea is { } area
        ? Warm(MachTargets.RevolutionsASecond(Plan.Bore.Value, Plan.Stroke.Value, area.Value, Sound, index) * 2 * Math.PI, area, 1) : null;

    /// <summary>
    /// Share of what the valve passes at best (window and throat, <see cref="ValveAtBest"/>) that brings the index to the knee: from its upper to its lower end; above 1 no
    /// port on this valve does. Null without a valve.
    /// </summary>
    public UsualRange? ShareOfBest => MeanAtBest is { } best ? new(AreaWanted.Low / best, AreaWanted.High / best) : null;

    /// <summary>True where no port on this valve brings the index within the knee.</summary>
    public bool ValveCannot => ShareOfBest is { Low: > 1 };

    /// <summary>
    /// What no port on this valve mends: that the valve cannot at all, why, from which lift, and what would; or how far it goes where that is within the knee. Empty where it reaches past it, or
    /// nobody stated valve, cam or speed.
    /// </summary>
    public Sentence ValvesEnd
    {
        get
        {
            if (NotStated.Count > 0 || Valve is not { } valve || MeanAtBest is not { } best || ShareOfBest is not { High: > 1 })
            {
                return Sentence.Empty;
            }

            if (!ValveCannot)
            {
                return $"This valve gives {Quantity.Ratio(IndexOf(best), 2)} at best, with {NamedLimits.BestOfWindow.Said} of its window and throat at every lift: past that a larger one, a longer cam or fewer rpm.";
            }

            var most = MachTargets.RevolutionsASecond(Plan.Bore.Value, Plan.Stroke.Value, best, Sound, Knee.High);
            var throat = ValveWindow.ThroatTakesOver(valve.Seat());
            Sentence from = throat < Plan.IntakeCam.Lift.Highest ? $", and from {Quantity.Lift(throat)} of lift on more lift opens nothing" : Sentence.Empty;
            return $"This valve cannot: with {NamedLimits.BestOfWindow.Said} of its window and throat at every lift it gives {Quantity.Area(best)} on the mean, {Quantity.Area(AreaWanted.Low)} is the least the engine asks{from}. A larger valve, a longer cam or fewer rpm: {Quantity.Turns(most).About(3)} is its end.";
        }
    }

    private double Sound => Plan.Air.State.SpeedOfSound;

    private double? MeanAtBest => Valve is { } valve && Plan.IntakeCam.Lift is var lift
        ? Intakes * ValveAtBest.Mean(valve.Seat(), lift.Opens, lift.Closes, lift.At) : null;

    private double IndexOf(double area) => InletMachIndex.Of(Plan.Bore.Value, Plan.Stroke.Value, Plan.HighestRevolutions, area, Sound);

    private double AreaFor(double index) => MachTargets.MeanArea(Plan.Bore.Value, Plan.Stroke.Value, Plan.HighestRevolutions, Sound, index);

    /// <param name="power">Of the area in the value.</param>
    private static Estimate Warm(double value, Estimate area, int power) => Estimate.Linear(value, (power * value / area.Value, area))
        .With(new Contribution(InletMachIndex.SoundSource, value * InletMachIndex.SoundDoubt, double.PositiveInfinity, ContributionKind.Other));
}
