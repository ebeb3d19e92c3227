using Portwright.Engine.Runs;
using Portwright.Shop.Plan;
using Portwright.Shop.Reduction;
using Portwright.Shop.Runs;

namespace Portwright.Web.Engine;

/// <summary>What a page needs to know of the engine run of two cuts: the question, and the answer where all its runs are kept.</summary>
/// <param name="Question">Null where the plan makes no engine or nothing was swept; <paramref name="Problems"/> say why.</param>
/// <param name="Tasks">Every run the answer is made of; empty without a question.</param>
/// <param name="Known">How many of them are kept.</param>
public sealed record EngineStanding(
    EngineChoice Choice, EngineQuestion? Question, IReadOnlyList<PlanProblem> Problems, IReadOnlyList<EngineTask> Tasks, int Known, EngineAnswer? Answer)
{
    public static EngineStanding Of(Reductions reductions, Guid job, Guid? intake, Guid? exhaust, IKeptPoints kept)
    {
        ArgumentNullException.ThrowIfNull(reductions);
        ArgumentNullException.ThrowIfNull(kept);
        var choice = EngineChoice.Of(reductions, job, intake, exhaust);
        var question = EngineQuestion.Of(PlanReading.Of(reductions, job), choice.Pair(reductions), out var problems);
        if (question is null) return new(choice, null, problems, [], 0, null);
        var tasks = question.Tasks();
        var points = EngineBatch.FromKept(tasks, kept);
        return points is null
            ? new(choice, question, problems, tasks, tasks.Count(t => kept.Find(t.Key()) is not null), null)
            : new(choice, question, problems, tasks, tasks.Count, question.Answer(points));
    }
}
