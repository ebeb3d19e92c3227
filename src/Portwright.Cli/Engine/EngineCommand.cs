using System.CommandLine;
using Portwright.Cli.Record;
using Portwright.Cli.Terminal;
using Portwright.Engine.Runs;
using Portwright.Shop.Findings;
using Portwright.Shop.Plan;
using Reductions = Portwright.Shop.Reduction.Reductions;
using Portwright.Shop.Runs;
using Portwright.Shop.Units;
using Portwright.Store.Runs;

namespace Portwright.Cli.Engine;

/// <summary><c>portwright engine</c>: the plan's engine run with the job's ports.</summary>
internal static class EngineCommand
{
    public static Command Make()
    {
        var job = new Option<string?>("--job") { Description = "the job, by its name or part of it", HelpName = "NAME" };
        var (data, si) = (CommandWords.Data(), CommandWords.Si());
        var command = new Command("engine", "run the plan's engine with the job's ports: torque, power and what a gain at each lift is worth") { job, data, si };
        command.Does(parsed =>
        {
            using var record = OpenRecord.At(parsed.GetValue(data));
            var units = parsed.GetValue(si) ? UnitSystem.Si : UnitSystem.UsCustomary;
            var reductions = new Reductions(record.Ledger);
            var of = record.JobNamed(parsed.GetValue(job));
            var reading = PlanInFull.Of(of.Fact.Plan, EnginePorts.Of(reductions, of.Id));
            var question = EngineQuestion.Of(reading, EnginePair.Latest(reductions, of.Id), out var problems);
            if (question is null) throw new Refusal(string.Join('\n', problems.Select(p => FindingWords.Show(p.Words, units))));
            var output = parsed.InvocationConfiguration.Output;
            var watch = System.Diagnostics.Stopwatch.StartNew();
            var answer = question.Answer(new EngineBatch { Kept = new KeptRuns(null) }.Run(question.Tasks()));
            output.WriteLine($"{watch.ElapsedMilliseconds} ms, {question.Tasks().Count} runs");
            for (var i = 0; i < answer.Points.Count; i++)
            {
                var p = answer.Points[i];
                output.WriteLine($"{p.RevolutionsAMinute,6:0} {p.Torque / 1.3558179:0.0} lb-ft +/- {2 * answer.TorqueDoubt[i] / 1.3558179:0.0}  {p.Power / 745.7:0.0} hp ve {p.VolumetricEfficiency:0.000} res {p.Residual:0.000} rev {p.Reversion:0.000} cycles {p.Cycles} settled {p.IsSettled}");
            }

            output.WriteLine($"mean {answer.MeanTorque.Value / 1.3558:0.00} +/- {answer.MeanTorque.Expanded() / 1.3558:0.00} lb-ft");
            foreach (var w in answer.Worth.Intake) output.WriteLine($"in {w.Lift / 0.0254:0.000} {w.Area * 1e6:0} {w.Torque / 1.3558:0.00}");
            foreach (var w in answer.Worth.Exhaust) output.WriteLine($"ex {w.Lift / 0.0254:0.000} {w.Area * 1e6:0} {w.Torque / 1.3558:0.00}");
            foreach (var w in answer.Worth.IntakeSections) output.WriteLine($"in at {w.Distance * 1e3:0} mm {w.Area * 1e6:0} {w.Torque / 1.3558:0.00}");
            foreach (var w in answer.Worth.ExhaustSections) output.WriteLine($"ex at {w.Distance * 1e3:0} mm {w.Area * 1e6:0} {w.Torque / 1.3558:0.00}");
            foreach (var r in question.Remarks) output.WriteLine(FindingWords.Show(r, units));
            return ExitCode.Done;
        });
        return command.Example("portwright engine", "portwright engine --job Tamarack");
    }
}
