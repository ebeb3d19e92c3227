using Portwright.Physics.Targets;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Plan;
using Portwright.Shop.Record;
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
        if (survey.Sheet.Flow is not { Curve: var own })
        {
            yield break;
        }

        var port = survey.Sheet.Port.Fact;
        if (Side(PortKind.Exhaust, own.RestatedAt) is { } exhaust && Side(PortKind.Intake, own.RestatedAt) is { } intake)
        {
            var share = Estimate.Ratio(exhaust, intake);
            var weak = share.Value < NamedLimits.ExhaustOverIntake.Limits.Middle ? PortKind.Exhaust : PortKind.Intake;
            yield return new(FlowBalance.Rule, $"Exhaust over intake flow, each at its cam's lift", Dimension.Fraction, TargetRange.Of(NamedLimits.ExhaustOverIntake), share,
                $"The exhaust of cylinder {port.Cylinder} flows {Quantity.Flow(exhaust)}, the intake {Quantity.Flow(intake)}.")
            {
                Assumed = CylinderBalance.NotStated(plan),
                ToDo = $"The {(weak == PortKind.Exhaust ? "exhaust" : "intake")} is the weaker side by this rule of thumb. Sweep the {(weak == PortKind.Exhaust ? "exhaust, with the pipe it will have," : "intake, with its entry radius,")} once more; if it stays so, {(weak == port.Kind ? "work here" : "it comes before this port")}.",
            };
        }

        if (port.Kind == PortKind.Intake && Side(PortKind.Intake, PowerPressure) is { } best)
        {
            var power = FlowBalance.Power(best.Value, plan.Cylinders);
            yield return new(FlowBalance.PowerRule, $"Power this intake's flow can carry at most", Dimension.Power, null,
                Estimate.Linear(power.Middle, (power.Middle / best.Value, best)).With(new Contribution("spread of the power rule", power.HalfWidth / Math.Sqrt(3), Shape: InputShape.Rectangular)),
                $"From {Quantity.Flow(best.Value)} a cylinder at 28 inH2O.");
        }

        Estimate? Side(PortKind kind, double restated) => CylinderBalance.Side(plan, kind, survey.Sheet, survey.Mates, restated, own.Air);
    }
}
