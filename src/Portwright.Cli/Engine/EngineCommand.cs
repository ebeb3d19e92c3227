using System.CommandLine;
using Portwright.Cli.Record;
using Portwright.Cli.Terminal;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Runs;

namespace Portwright.Cli.Engine;

/// <summary><c>portwright engine</c>: the plan's engine run with the job's ports.</summary>
internal static class EngineCommand
{
    public static Command Make()
    {
        var options = new EngineOptions();
        var against = new Option<int?>("--against") { Description = "an earlier cut of the same port: what was gained since", HelpName = "N" };
        var assumed = new Option<bool>("--assumed") { Description = "list everything that was assumed" };
        var command = options.On(new Command("engine", "the plan's engine run with the job's ports: torque, power, and what a gain at each lift is worth"), against, assumed);
        command.Subcommands.Add(TargetsCommand.Make());
        command.Subcommands.Add(CycleCommand.Make());
        command.Subcommands.Add(StudyCommand.Make());
        command.Does(parsed =>
        {
            using var record = options.Open(parsed);
            var asked = options.Read(parsed, record);
            var (kept, error, output) = (options.Kept(parsed), parsed.InvocationConfiguration.Error, parsed.InvocationConfiguration.Output);
            (EngineCut Now, EngineCut Then)? earlier = parsed.GetValue(against) is { } number ? Earlier(asked, EngineAsked.Swept(asked.Choice, options.Port(parsed, record), number, "--against")) : null;
            EngineAnswer Answer(EngineQuestion question) => question.Answer(EngineRunning.Run(question.Tasks(), kept, error));
            var answer = Answer(asked.Question);
            var gained = earlier is { } before ? new EngineGain(before.Now, before.Then, answer.Less(Answer(asked.With(before.Then)))) : null;
            if (options.Json(parsed)) EngineJson.Write(output, asked.Job, answer, gained);
            else new EnginePage(output, asked.Job, answer, gained, options.Units(parsed)).Write(parsed.GetValue(assumed));
            return ExitCode.Done;
        });
        return command.Example(
            "portwright engine",
            "portwright engine \"head B intake 2\" --against 0",
            "portwright engine cycle --rpm 4500",
            "portwright engine study --intake-length=\"-1in,0,1in\" --intake-later=\"-4,0,4\"");
    }

    /// <summary>The cut taken and the earlier one of the same port.</summary>
    private static (EngineCut Now, EngineCut Then) Earlier(EngineAsked asked, EngineCut then)
    {
        var now = asked.Choice.Of(then.Port.Fact.Kind)!;
        if (now.Port.Id != then.Port.Id) throw new Refusal($"--against: the run breathes through {now.Head.Fact.Name} {now.Words}. Name the port that is to be compared.");
        if (now.Cut.Id == then.Cut.Id) throw new Refusal($"--against {then.Cut.Fact.Number} is the cut the engine is run with. Name another of {now.Port.Fact.Name}: {string.Join(", ", asked.Choice.Choices.Where(c => c.Port.Id == now.Port.Id && c.Cut.Id != now.Cut.Id).Select(c => c.Cut.Fact.Number))}.");
        return (now, then);
    }
}

/// <summary>What one cut brought against another of the same port.</summary>
internal sealed record EngineGain(EngineCut Now, EngineCut Then, Difference Of);
