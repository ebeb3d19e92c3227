using Portwright.Physics.Targets;
using Portwright.Physics.Uncertainty;
using Portwright.Physics.Valves;
using Portwright.Shop.Findings;
using Portwright.Shop.Findings.Rules;
using Portwright.Shop.Plan;
using Portwright.Shop.Record;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Targets;

/// <summary>What the piston asks for, and what the valve gives over its event.</summary>
internal static class ValveTargets
{
    private const double Degree = Math.PI / 180;

    public static IEnumerable<EngineTarget> Of(PlanInFull plan, PortSurvey survey)
    {
        var kind = survey.Sheet.Port.Fact.Kind;
        var lift = plan.CamOf(kind).Lift;
        var mean = survey.Sheet.Flow is { } flow ? LiftEvent.MeanArea(flow.Curve, lift) : null;
        if (kind == PortKind.Intake)
        {
            foreach (var row in Intake(plan, survey.Intakes, mean))
            {
                yield return row;
            }
        }

        if (mean is not null)
        {
            var event_ = lift.Closes - lift.Opens;
            yield return new(TimeArea.Rule, $"Effective area summed over crank angle", Dimension.Area, null, mean.Scale(event_ / Degree), $"The valve is open for {event_ / Degree:0} degrees. By the engine's speed and displacement it is {1e3 * TimeArea.Specific(mean.Value * event_, plan.HighestRevolutions, plan.Displacement):0.0} ms/m at {Rpm(plan)}.", "degrees");
        }

        if (survey.Sheet.Flow?.Curve is { } curve && WantedFlow.Of(plan, survey.Sheet, survey.Mates) is { } wanted)
        {
            foreach (var point in curve.Points.Where(p => p.Lift > 0))
            {
                if (wanted.At(point.Lift) is { } range)
                {
                    yield return new(wanted.Rule, $"Flow at {Quantity.Lift(point.Lift)}", Dimension.VolumeFlow, TargetRange.Of(range), point.Flow, $"");
                }
            }
        }
    }

    private static IEnumerable<EngineTarget> Intake(PlanInFull plan, int intakes, Estimate? one)
    {
        double bore = plan.Bore.Value, stroke = plan.Stroke.Value, speed = plan.HighestRevolutions, sound = plan.Air.State.SpeedOfSound;
        yield return new(PistonDemand.Rule, $"The piston asks for, on the mean", Dimension.VolumeFlow, TargetRange.Exactly(PistonDemand.Mean(bore, stroke, speed)), null,
            $"At {Rpm(plan)}, piston at {Quantity.Speed(InletMachIndex.MeanPistonSpeed(stroke, speed))} on the mean.");
        yield return new(PistonDemand.Rule, $"At its fastest", Dimension.VolumeFlow, TargetRange.Exactly(PistonDemand.Peak(bore, plan.Throw, speed)), null,
            $"{plan.Throw.FastestAngle / Degree:0} degrees after top {Term.DeadCentre}.");
        var all = one?.Scale(intakes);
        Sentence through = intakes > 1 ? (Sentence)$"Through {intakes} intakes taken alike. " : Sentence.Empty;
        TargetRange needed = new(
            MachTargets.MeanArea(bore, stroke, speed, sound, MachTargets.KneeRange.High), MachTargets.MeanArea(bore, stroke, speed, sound, MachTargets.KneeRange.Low));
        yield return new(MachTargets.Rule, $"Mean effective area over the event", Dimension.Area, needed, all, through);
        if (all is not { Value: > 0 })
        {
            yield break;
        }

        var index = InletMachIndex.Of(bore, stroke, speed, all.Value, sound);
        var knee = MachTargets.RevolutionsASecond(bore, stroke, all.Value, sound) * 2 * Math.PI;
        var warmth = PortSpeedAgainstPlan.SoundDoubt;
        yield return new(MachTargets.Rule, $"Inlet Mach index at {Rpm(plan)}", Dimension.Ratio, TargetRange.AtMost(MachTargets.KneeRange.High),
            Of(index, all, -1, warmth), $"{through}Past 0.5 to 0.6 {Term.VolumetricEfficiency} falls.");
        yield return new(MachTargets.Rule, $"Engine speed at which {Term.VolumetricEfficiency} begins to fall", Dimension.RotationalSpeed, TargetRange.AtLeast(plan.HighestSpeed.Value),
            Of(knee, all, 1, warmth), $"Where the index reaches 0.6.");
    }

    private static Estimate Of(double value, Estimate area, int power, double warmth) =>
        Estimate.Linear(value, (power * value / area.Value, area)).With(new Contribution("speed of sound in the engine's intake", value * warmth, double.PositiveInfinity, ContributionKind.Other));

    private static string Rpm(PlanInFull plan) => $"{plan.HighestRevolutions * 60:N0} rpm";
}
