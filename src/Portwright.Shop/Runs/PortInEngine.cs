using Portwright.Engine.Runs;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Plan;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Survey;
using Portwright.Shop.Targets;

namespace Portwright.Shop.Runs;

/// <summary>One port at one cut in its job's engine, as far as the runs are kept: what its sheet says of the engine.</summary>
/// <param name="Kind">Of the port.</param>
/// <param name="Question">The engine with this port; null where the plan makes no engine or the cut was not swept at enough lifts.</param>
/// <param name="Answer">Null where a run of it is missing.</param>
/// <param name="Before">The cut swept before this one; null where there is none.</param>
/// <param name="Earlier">The same engine with that cut.</param>
/// <param name="Gain">This cut less that one in mean torque, N m; null where a run of either is missing.</param>
/// <param name="Targets">What the engine asks of the port; empty where the plan does not allow it.</param>
/// <param name="Wanted">Flow over lift the engine asks of the port, shaped by the answer where there is one; null where the plan does not allow it.</param>
public sealed record PortInEngine(
    PortKind Kind, EngineQuestion? Question, EngineAnswer? Answer, EngineCut? Before, EngineQuestion? Earlier, Difference? Gain, IReadOnlyList<EngineTarget> Targets, WantedFlow? Wanted)
{
    public static PortInEngine Of(Reductions reductions, PortSurvey survey, IKeptPoints kept)
    {
        ArgumentNullException.ThrowIfNull(reductions);
        ArgumentNullException.ThrowIfNull(survey);
        ArgumentNullException.ThrowIfNull(kept);
        var (job, cut, kind) = (survey.Sheet.Job.Id, survey.Sheet.Cut.Id, survey.Sheet.Port.Fact.Kind);
        var reading = PlanReading.Of(reductions, job);
        var targets = reading.Plan is { } plan ? EngineTargets.Of(plan, survey) : [];
        var wanted = WantedFlow.Of(reading.Plan, survey.Sheet, survey.Mates);
        var choice = kind == PortKind.Intake ? EngineChoice.Of(reductions, job, cut) : EngineChoice.Of(reductions, job, null, cut);
        if (choice.Of(kind)?.Cut.Id != cut) return new(kind, null, null, null, null, null, targets, wanted);
        EngineQuestion? Ask(EngineChoice of) => EngineQuestion.Of(reading, of.Pair(reductions), out _);
        EngineAnswer? Kept(EngineQuestion? question) => question is not null && EngineBatch.FromKept(question.Tasks(), kept) is { } points ? question.Answer(points) : null;
        var question = Ask(choice);
        var before = choice.Before(kind);
        var earlier = before is null ? null : Ask(choice.With(before));
        var answer = Kept(question);
        var gain = answer is not null && Kept(earlier) is { } was ? answer.Less(was) : null;
        if (answer is not null) wanted = wanted?.ShapedBy(kind == PortKind.Intake ? answer.Worth.Intake : answer.Worth.Exhaust);
        return new(kind, question, answer, before, earlier, gain, targets, wanted);
    }

    /// <summary>Every run the sheet wants, kept or not.</summary>
    public IReadOnlyList<EngineTask> Tasks() => [.. Question?.Tasks() ?? [], .. Earlier?.Tasks() ?? []];
}
