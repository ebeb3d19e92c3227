using Portwright.Physics.Targets;
using Portwright.Physics.TestPiece;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Findings;
using Portwright.Shop.Plan;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Targets;

/// <summary>Exhaust against intake, and the power the intake's flow can carry.</summary>
internal static class BalanceTargets
{
    /// <summary>28 inH2O, Pa: the pressure the power rule is stated at.</summary>
    private const double PowerPressure = 28 * 249.08891;

    public static IEnumerable<EngineTarget> Of(PlanInFull plan, PortSurvey survey)
    {
        if (survey.Sheet.Flow is not { } own)
        {
            yield break;
        }

        var port = survey.Sheet.Port;
        var all = survey.Mates.Append(new CylinderMate(port, own, null)).ToList();
        if (Side(PortKind.Exhaust, AtCam) is { } exhaust && Side(PortKind.Intake, AtCam) is { Value: > 0 } intake)
        {
            yield return new(FlowBalance.Rule, $"Exhaust over intake flow, each at its cam's lift", Dimension.Fraction, TargetRange.Of(FlowBalance.Usual), Estimate.Ratio(exhaust, intake), $"");
        }

        if (Side(PortKind.Exhaust, OverEvent) is { } out_ && Side(PortKind.Intake, OverEvent) is { Value: > 0 } in_)
        {
            yield return new(FlowBalance.Rule, $"Exhaust over intake, area summed over crank angle", Dimension.Fraction, TargetRange.Of(FlowBalance.Usual), Estimate.Ratio(out_, in_),
                $"Takes in how long each valve is open.");
        }

        if (port.Fact.Kind == PortKind.Intake && Side(PortKind.Intake, AtCam) is { Value: > 0 } best)
        {
            var flow = RestatedFlow.VolumeFlow(best.Value, PowerPressure, own.Curve.Air, own.Curve.Direction);
            var power = FlowBalance.Power(flow, plan.Cylinders);
            var middle = (power.Low + power.High) / 2;
            yield return new(FlowBalance.PowerRule, $"Power this intake's flow can carry at most", Dimension.Power, null,
                Estimate.Linear(middle, (middle / best.Value, best)).With(new Contribution("spread of the power rule", (power.High - power.Low) / Math.Sqrt(12), double.PositiveInfinity, ContributionKind.Other)),
                $"From {Quantity.Flow(flow)} a cylinder at 28 inH2O.");
        }

        Estimate? Side(PortKind kind, Func<FlowCurve, PortKind, Estimate?> of)
        {
            Estimate?[] each = [.. all.Where(m => m.Port.Fact.Kind == kind).Select(m => m.Flow is { } flow ? of(flow.Curve, kind) : null)];
            return each.Length == 0 || each.Any(e => e is null) ? null : Estimate.Combine([.. each.Select(e => (1.0, e!))]);
        }

        Estimate? AtCam(FlowCurve curve, PortKind kind) => curve.AreaAt(plan.CamOf(kind).Lift.Highest);

        Estimate? OverEvent(FlowCurve curve, PortKind kind)
        {
            var lift = plan.CamOf(kind).Lift;
            return LiftEvent.MeanArea(curve, lift)?.Scale(lift.Closes - lift.Opens);
        }
    }
}
