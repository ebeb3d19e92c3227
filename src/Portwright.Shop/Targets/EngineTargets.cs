using Portwright.Shop.Plan;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Survey;

namespace Portwright.Shop.Targets;

/// <summary>What the engine asks of one port beside what the port shows.</summary>
/// <param name="Survey">The port at its cut.</param>
/// <param name="Plan">Null where the plan is not an engine yet.</param>
/// <param name="Problems">Why it is not.</param>
/// <param name="Rows">By rule, in the order a porter asks: air, valve, sections, balance, pipes, power.</param>
/// <param name="Leaned">Figures the rows lean on that the plan does not state.</param>
public sealed record EngineTargets(PortSurvey Survey, PlanInFull? Plan, IReadOnlyList<PlanProblem> Problems, IReadOnlyList<EngineTarget> Rows, IReadOnlyList<PlanFigure> Leaned)
{
    /// <summary>Of a port at its latest cut.</summary>
    /// <exception cref="KeyNotFoundException">No such port, or it has no cut.</exception>
    public static EngineTargets Of(Reductions reductions, Guid port)
    {
        ArgumentNullException.ThrowIfNull(reductions);
        var survey = PortSurvey.Of(reductions, port);
        var (plan, problems) = PlanReading.Of(reductions, survey.Sheet.Job.Id);
        return plan is null ? new EngineTargets(survey, null, problems, [], []) : new EngineTargets(survey, plan, problems, Of(plan, survey), LeanedOn(plan, survey.Sheet.Port.Fact.Kind));
    }

    /// <summary>The rows alone.</summary>
    public static IReadOnlyList<EngineTarget> Of(PlanInFull plan, PortSurvey survey)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(survey);
        return
        [
            .. ValveTargets.Of(plan, survey),
            .. SectionTargets.Of(plan, survey),
            .. BalanceTargets.Of(plan, survey),
            .. PipeTargets.Of(plan, survey),
        ];
    }

    private static IReadOnlyList<PlanFigure> LeanedOn(PlanInFull plan, PortKind kind)
    {
        IEnumerable<PlanFigure> used = kind == PortKind.Intake
            ? [plan.Rod, plan.PinOffset, plan.CompressionRatio, plan.CylinderCount, plan.LowestSpeed, plan.HighestSpeed, .. plan.IntakeCam.Figures, .. plan.Intake.Figures, plan.Air.Pressure, plan.Air.Temperature]
            : [plan.HighestSpeed, .. plan.ExhaustCam.Figures, .. plan.IntakeCam.Figures];
        return [.. used.Where(f => f.IsAssumed)];
    }
}
