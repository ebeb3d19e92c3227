using Portwright.Physics.Targets;
using Portwright.Physics.Valves;
using Portwright.Shop.Findings;
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
        if (InletMach.Of(plan, survey) is { } inlet)
        {
            foreach (var row in Intake(inlet))
            {
                yield return row;
            }
        }

        var cam = plan.CamOf(survey.Sheet.Port.Fact.Kind);
        if (survey.Sheet.Flow is { } flow && LiftEvent.MeanArea(flow.Curve, cam) is { } mean)
        {
            var event_ = cam.Lift.Closes - cam.Lift.Opens;
            yield return new(TimeArea.Rule, $"Effective area summed over crank angle", Dimension.Area, null, mean.Scale(event_ / Degree), $"The valve is open for {event_ / Degree:0} degrees. By the engine's speed and displacement it is {1e3 * TimeArea.Specific(mean.Value * event_, plan.HighestRevolutions, plan.Displacement):0.0} ms/m at {Rpm(plan)}.", "degrees");
        }

        // More is never a fault; the exhaust is judged once, by its balance.
        if (survey.Sheet.Port.Fact.Kind == PortKind.Intake && survey.Sheet.Flow?.Curve is { } curve && WantedFlow.Of(plan, survey.Sheet, survey.Mates) is { } wanted)
        {
            foreach (var point in curve.Points)
            {
                if (wanted.At(point.Lift) is { } edge)
                {
                    yield return new(wanted.Rule, $"Flow at {Quantity.Lift(point.Lift)}", Dimension.VolumeFlow, TargetRange.AtLeast(edge), point.Flow, $"");
                }
            }
        }
    }

    private static IEnumerable<EngineTarget> Intake(InletMach inlet)
    {
        var plan = inlet.Plan;
        double bore = plan.Bore.Value, stroke = plan.Stroke.Value, speed = plan.HighestRevolutions;
        yield return new(PistonDemand.Rule, $"The piston asks for, on the mean", Dimension.VolumeFlow, TargetRange.Exactly(PistonDemand.Mean(bore, stroke, speed)), null,
            $"At {Rpm(plan)}, piston at {Quantity.Speed(InletMachIndex.MeanPistonSpeed(stroke, speed))} on the mean.");
        yield return new(PistonDemand.Rule, $"At its fastest", Dimension.VolumeFlow, TargetRange.Exactly(PistonDemand.Peak(bore, plan.Throw, speed)), null,
            $"{plan.Throw.FastestAngle / Degree:0} degrees after top {Term.DeadCentre}.");
        var knee = NamedLimits.InletMachKnee;
        Sentence through = inlet.Intakes > 1 ? (Sentence)$"Through {inlet.Intakes} intakes taken alike. " : Sentence.Empty;
        // Index, area and speed are one fact said three ways: it is judged once.
        yield return new(MachTargets.Rule, $"Inlet Mach index at {Rpm(plan)}", Dimension.Ratio, TargetRange.AtMost(InletMach.Knee.High), inlet.Index,
            $"{through}Past {knee.Said} {Term.VolumetricEfficiency} falls. It takes a mean effective area of {Quantity.Area(inlet.AreaWanted.Low).About(3) with { WithoutUnit = true }} to {Quantity.Area(inlet.AreaWanted.High).About(3)} over the event{Is(inlet)}.")
        {
            Assumed = inlet.NotStated,
            ToDo = inlet.ValvesEnd,
        };
        if (inlet.MeanArea is { } area && inlet.SpeedAt(knee.Limits.Low) is { } from && inlet.SpeedAt(knee.Limits.High) is { } to)
        {
            yield return new(MachTargets.Rule, $"Mean effective area over the event", Dimension.Area, null, area, through);
            yield return new(MachTargets.Rule, $"Engine speed from which {Term.VolumetricEfficiency} falls steeply", Dimension.RotationalSpeed, null, to,
                $"Where the index reaches {knee.High}; it may begin to fall from {Quantity.Turns(from.Value / (2 * Math.PI)).About(3)}, where it reaches {knee.Low}.");
        }
    }

    private static Sentence Is(InletMach inlet) => inlet.MeanArea is { } area ? $", and is {Quantity.Of(area, Dimension.Area)}" : Sentence.Empty;

    private static string Rpm(PlanInFull plan) => $"{plan.HighestRevolutions * 60:N0} rpm";
}
