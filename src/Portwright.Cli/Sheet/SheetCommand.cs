using System.CommandLine;
using Portwright.Cli.Engine;
using Portwright.Cli.Record;
using Portwright.Cli.Terminal;
using Portwright.Figures;
using Portwright.Shop.Findings;
using Portwright.Shop.Runs;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;
using Portwright.Store;
using Portwright.Store.Runs;
using Reductions = Portwright.Shop.Reduction.Reductions;

namespace Portwright.Cli.Sheet;

/// <summary><c>portwright sheet</c>: everything known of one port at one cut.</summary>
internal static class SheetCommand
{
    public static Command Make()
    {
        var port = new Argument<string?>("PORT") { Description = "\"intake 2\", or \"head B intake 2\"; without it the port tested last", Arity = ArgumentArity.ZeroOrOne };
        var job = new Option<string?>("--job") { Description = "the job, by its name or part of it", HelpName = "NAME" };
        var head = new Option<string?>("--head") { Description = "the head, by its name or part of it", HelpName = "NAME" };
        var cut = new Option<int?>("--cut") { Description = "the number of the cut; without it the latest", HelpName = "N" };
        var run = new Option<bool>("--engine") { Description = "run the job's engine with this port first; without it what was run before is shown" };
        var files = SheetFile.Kinds.Select(f => (File: f, Option: new Option<string?>("--" + f.Kind) { Description = $"write {f.Words}", HelpName = "FILE" })).ToList();
        var (data, json, si) = (CommandWords.Data(), CommandWords.Json(), CommandWords.Si());
        var command = new Command("sheet", "the port sheet of one port at one cut, in the terminal or as a file") { port, job, head, cut, run };
        foreach (var (_, option) in files) command.Options.Add(option);
        command.Options.Add(data);
        command.Options.Add(json);
        command.Options.Add(si);
        command.Does(parsed =>
        {
            using var record = OpenRecord.At(parsed.GetValue(data));
            var units = parsed.GetValue(si) ? UnitSystem.Si : UnitSystem.UsCustomary;
            var of = record.PortNamed(record.JobNamed(parsed.GetValue(job)), parsed.GetValue(port), parsed.GetValue(head));
            if (record.Ledger.CutsOf(of.Id).Count == 0) throw new Refusal($"{of.Fact.Name} has no cut yet. Cut 0 is the port as received: record its first sweep in the workbench.");
            var reductions = new Reductions(record.Ledger);
            var survey = PortSurvey.Of(reductions, of.Id, record.CutNumbered(of, parsed.GetValue(cut)));
            var kept = new KeptRuns(DataFolder.Resolve(parsed.GetValue(data)));
            var engine = PortInEngine.Of(reductions, survey, kept);
            if (parsed.GetValue(run))
            {
                if (engine.Question is null) throw new Refusal($"--engine: the engine of {survey.Sheet.Job.Fact.Name} cannot be run with {of.Fact.Name} at cut {survey.Sheet.Cut.Fact.Number}. portwright engine says what is missing.");
                EngineRunning.Run(engine.Tasks(), kept, parsed.InvocationConfiguration.Error);
                engine = PortInEngine.Of(reductions, survey, kept);
            }

            var found = PortFindings.Of(survey);
            var findings = NextCuts.Ranked(found, NextCuts.Of(survey, found, record.Ledger, engine.Answer));
            RecordVerb.Warn(parsed, record);
            var output = parsed.InvocationConfiguration.Output;
            var written = files.Select(f => (f.File, Path: parsed.GetValue(f.Option))).Where(f => f.Path is not null).ToList();
            foreach (var (file, path) in written)
            {
                SheetFiles.Write(file, path!, survey, units, engine);
                if (!parsed.GetValue(json)) new Page(output).Paragraph($"Written: {Path.GetFullPath(path!)}");
            }
            if (parsed.GetValue(json)) SheetJson.Write(output, survey, findings, record.LeftOut, engine);
            else if (written.Count == 0) new SheetPage(output, survey, findings, units, engine).Write();
            return ExitCode.Done;
        });
        return command.Example(
            "portwright sheet",
            "portwright sheet \"head B intake 2\" --cut 3",
            "portwright sheet \"head B intake 2\" --engine",
            "portwright sheet \"head B intake 2\" --pdf intake-2.pdf --png intake-2.png");
    }
}
