using System.CommandLine;
using Portwright.Cli.Record;
using Portwright.Cli.Terminal;
using Portwright.Shop.Plan;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Runs;
using Portwright.Shop.Units;
using Portwright.Store;
using Portwright.Store.Runs;

namespace Portwright.Cli.Engine;

/// <summary>Which job, which port at which cut: what every verb of the engine asks.</summary>
internal sealed class EngineOptions
{
    private readonly Argument<string?> _port = new("PORT")
    {
        Description = "the intake or exhaust that stands for all, \"head B intake 2\"; without it the ones swept last",
        Arity = ArgumentArity.ZeroOrOne,
    };

    private readonly Option<string?> _job = CommandWords.Job();
    private readonly Option<string?> _head = CommandWords.Head();
    private readonly Option<int?> _cut = new("--cut") { Description = "the cut of that port; without it the last one swept", HelpName = "N" };
    private readonly Option<string?> _data = CommandWords.Data();
    private readonly Option<bool> _json = CommandWords.Json();
    private readonly Option<bool> _si = CommandWords.Si();

    /// <summary>Puts them on a command, the command's own options before the common ones.</summary>
    public Command On(Command command, params Option[] own)
    {
        command.Arguments.Add(_port);
        foreach (var option in (Option[])[_job, _head, _cut, .. own, _data, _json, _si]) command.Options.Add(option);
        return command;
    }

    public UnitSystem Units(ParseResult parsed) => parsed.GetValue(_si) ? UnitSystem.Si : UnitSystem.UsCustomary;

    public bool Json(ParseResult parsed) => parsed.GetValue(_json);

    public OpenRecord Open(ParseResult parsed)
    {
        var record = OpenRecord.At(parsed.GetValue(_data));
        RecordVerb.Warn(parsed, record);
        return record;
    }

    /// <summary>Points kept beside the record.</summary>
    public KeptRuns Kept(ParseResult parsed) => new(DataFolder.Resolve(parsed.GetValue(_data)));

    public Kept<Port> Port(ParseResult parsed, OpenRecord record) => record.PortNamed(record.JobNamed(parsed.GetValue(_job)), parsed.GetValue(_port), parsed.GetValue(_head));

    /// <summary>Number asked for; null for the latest.</summary>
    public Guid? Cut(ParseResult parsed, OpenRecord record, Kept<Port> port) => record.CutNumbered(port, parsed.GetValue(_cut));

    /// <summary>The engine with the ports that were named.</summary>
    /// <exception cref="Refusal">The plan makes no engine, or the ports cannot be breathed through.</exception>
    public EngineAsked Read(ParseResult parsed, OpenRecord record)
    {
        var reductions = new Reductions(record.Ledger);
        var job = record.JobNamed(parsed.GetValue(_job));
        var choice = EngineChoice.Of(reductions, job.Id);
        var named = parsed.GetValue(_port) is not null || parsed.GetValue(_head) is not null || parsed.GetValue(_cut) is not null;
        if (named)
        {
            var port = Port(parsed, record);
            choice = choice.With(EngineAsked.Swept(choice, port, parsed.GetValue(_cut), "--cut"));
        }

        var units = Units(parsed);
        return new(reductions, job, choice, EngineAsked.Ask(reductions, job, choice, units), units);
    }
}

/// <summary>What was asked of the engine.</summary>
internal sealed record EngineAsked(Reductions Reductions, Kept<Job> Job, EngineChoice Choice, EngineQuestion Question, UnitSystem Units)
{
    /// <summary>A swept cut of a port; its last one where no number is given.</summary>
    public static EngineCut Swept(EngineChoice choice, Kept<Port> port, int? number, string field)
    {
        var own = choice.Choices.Where(c => c.Port.Id == port.Id).ToList();
        if (own.Count == 0) throw new Refusal($"{port.Fact.Name} was swept at no cut at {EngineChoice.FewestLifts} lifts or more: the engine cannot breathe through it. Sweep it first, or name another port.");
        return (number is null ? own[^1] : own.FirstOrDefault(c => c.Cut.Fact.Number == number))
            ?? throw new Refusal($"{field} {number}: {port.Fact.Name} was not swept at that cut at {EngineChoice.FewestLifts} lifts or more. Swept cuts: {string.Join(", ", own.Select(c => c.Cut.Fact.Number))}.");
    }

    public static EngineQuestion Ask(Reductions reductions, Kept<Job> job, EngineChoice choice, UnitSystem units) =>
        EngineQuestion.Of(PlanReading.Of(reductions, job.Id), choice.Pair(reductions), out var problems)
            ?? throw new Refusal(string.Join('\n', [$"The engine of {job.Fact.Name} cannot be run yet.", .. problems.Select(p => p.Words.In(units)), "The plan is filled in on the job's page of the workbench (portwright serve)."]));

    /// <summary>The same engine with an earlier cut of one port.</summary>
    public EngineQuestion With(EngineCut cut) => Ask(Reductions, Job, Choice.With(cut), Units);
}
