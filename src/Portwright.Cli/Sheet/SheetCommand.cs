using System.CommandLine;
using Portwright.Cli.Engine;
using Portwright.Cli.Layout;
using Portwright.Cli.Record;
using Portwright.Cli.Terminal;
using Portwright.Figures;
using Portwright.Shop.Budgets;
using Portwright.Shop.Ports;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Units;
using Portwright.Store;
using Portwright.Store.Runs;

namespace Portwright.Cli.Sheet;

/// <summary><c>portwright sheet</c>: everything known of one port at one cut.</summary>
internal static class SheetCommand
{
    public static Command Make()
    {
        var (port, job, head, cut) = (CommandWords.Port(), CommandWords.Job(), CommandWords.Head(), CommandWords.Cut());
        var run = new Option<bool>("--engine") { Description = "run the job's engine with this port first; without it what was run before is shown" };
        var all = new Option<bool>("--all") { Description = "the whole job: its first page, then the sheet of every port; as one file with --pdf" };
        var full = new Option<bool>("--full") { Description = "with every reading, coefficients and where the doubt comes from" };
        var files = SheetFile.Kinds.Select(f => (File: f, Option: new Option<string?>("--" + f.Kind) { Description = $"write {f.Words}", HelpName = "FILE" })).ToList();
        var (data, json, si) = (CommandWords.Data(), CommandWords.Json(), CommandWords.Si());
        var command = new Command("sheet", "the port sheet of one port at one cut, in the terminal or as a file") { port, job, head, cut, run, all, full };
        foreach (var (_, option) in files) command.Options.Add(option);
        command.Options.Add(data);
        command.Options.Add(json);
        command.Options.Add(si);
        command.Does(parsed =>
        {
            using var record = OpenRecord.At(parsed.GetValue(data));
            var units = parsed.GetValue(si) ? UnitSystem.Si : UnitSystem.UsCustomary;
            var named = record.JobNamed(parsed.GetValue(job));
            if (parsed.GetValue(all))
            {
                if (parsed.GetValue(port) is not null || files.Any(f => f.File != SheetFile.Pdf && parsed.GetValue(f.Option) is not null))
                    throw new Refusal("--all is the whole job: no port is named with it, and its file is --pdf.");
                return WholeJob(parsed, record, named, new KeptRuns(DataFolder.Resolve(parsed.GetValue(data))), units, parsed.GetValue(full), parsed.GetValue(files.First(f => f.File == SheetFile.Pdf).Option));
            }

            var of = record.PortNamed(named, parsed.GetValue(port), parsed.GetValue(head));
            if (record.Ledger.CutsOf(of.Id).Count == 0) throw new Refusal($"{of.Fact.Name} has no cut yet. Cut 0 is the port as received: record its first sweep in the workbench.");
            var reductions = new Reductions(record.Ledger);
            var cutWanted = record.CutNumbered(of, parsed.GetValue(cut));
            var kept = new KeptRuns(DataFolder.Resolve(parsed.GetValue(data)));
            var known = PortAtCut.Of(reductions, of.Id, cutWanted, kept);
            if (parsed.GetValue(run))
            {
                if (known.Engine.Question is null) throw new Refusal($"--engine: the engine of {known.Sheet.Job.Fact.Name} cannot be run with {of.Fact.Name} at cut {known.Sheet.Cut.Fact.Number}. portwright engine says what is missing.");
                EngineRunning.Run(known.Engine.Tasks(), kept, parsed.InvocationConfiguration.Error);
                known = PortAtCut.Of(reductions, of.Id, cutWanted, kept);
            }

            RecordVerb.Warn(parsed, record);
            var output = parsed.InvocationConfiguration.Output;
            var (asJson, whole) = (parsed.GetValue(json), parsed.GetValue(full));
            var today = DateOnly.FromDateTime(DateTime.Now);
            var shown = whole ? PortDocument.Of(known, today) : PortDocument.ForThePorter(known, today);
            var written = files.Select(f => (f.File, Path: parsed.GetValue(f.Option))).Where(f => f.Path is not null).ToList();
            foreach (var (file, path) in written)
            {
                SheetFiles.Write(file, path!, known, shown, units);
                if (!asJson) new Page(output).Paragraph($"Written: {Path.GetFullPath(path!)}");
            }

            if (asJson) DocumentJson.Write(output, PortDocument.Of(known, today, BudgetDetail.Whole), record.LeftOut);
            else if (written.Count == 0) new DocumentPage(output, units).Write(shown);
            return ExitCode.Done;
        });
        return command.Example(
            "portwright sheet",
            "portwright sheet \"head B intake 2\" --cut 3",
            "portwright sheet \"head B intake 2\" --engine",
            "portwright sheet --all --pdf job.pdf",
            "portwright sheet \"head B intake 2\" --pdf intake-2.pdf --png intake-2.png");
    }

    private static int WholeJob(ParseResult parsed, OpenRecord record, Kept<Job> job, KeptRuns kept, UnitSystem units, bool full, string? pdf)
    {
        var output = parsed.InvocationConfiguration.Output;
        var sheets = JobSheets.Of(new Reductions(record.Ledger), job.Id, kept, DateOnly.FromDateTime(DateTime.Now), full);
        RecordVerb.Warn(parsed, record);
        if (pdf is not null)
        {
            File.WriteAllBytes(pdf, JobPaper.Pdf(sheets.First, sheets.Sheets, PaperSize.Of(units), units));
            new Page(output).Paragraph($"Written: {Path.GetFullPath(pdf)}, {sheets.Sheets.Count} {(sheets.Sheets.Count == 1 ? "sheet" : "sheets")}");
            return ExitCode.Done;
        }

        var page = new DocumentPage(output, units);
        page.Write(sheets.First);
        foreach (var (_, document) in sheets.Sheets)
        {
            output.WriteLine();
            page.Write(document);
        }

        return ExitCode.Done;
    }
}
