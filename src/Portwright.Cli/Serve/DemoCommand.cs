using System.CommandLine;
using Portwright.Cli.Engine;
using Portwright.Cli.Layout;
using Portwright.Cli.Record;
using Portwright.Cli.Sheet;
using Portwright.Cli.Terminal;
using Portwright.Engine.Runs;
using Portwright.Figures;
using Portwright.Shop.Plan;
using Portwright.Shop.Ports;
using Portwright.Shop.Reduction;
using Portwright.Shop.Runs;
using Portwright.Shop.Units;
using Portwright.Store;
using Portwright.Store.Demo;
using Portwright.Store.Runs;

namespace Portwright.Cli.Serve;

/// <summary><c>portwright demo</c>: the invented shop in a record of its own, one port sheet printed, its PDF written, then the workbench.</summary>
internal static class DemoCommand
{
    /// <summary>The engine is run for so long at most: the rest is run when its page is opened.</summary>
    private static readonly TimeSpan EngineTime = TimeSpan.FromSeconds(45);

    public static Command Make()
    {
        var noServe = new Option<bool>("--no-serve") { Description = "end after the port sheet, without the workbench" };
        var noEngine = new Option<bool>("--no-engine") { Description = "leave the engine run out" };
        var (port, data, si) = (ServeCommand.Port(), CommandWords.Data(), CommandWords.Si());
        return new Command("demo", "an invented shop to look around in, apart from your own record") { noServe, noEngine, port, data, si }.Does(parsed =>
        {
            var folder = parsed.GetValue(data) is { } given ? DataFolder.Resolve(given) : Folder();
            var units = parsed.GetValue(si) ? UnitSystem.Si : UnitSystem.UsCustomary;
            var output = parsed.InvocationConfiguration.Output;
            var page = new Page(output);
            using (var record = OpenRecord.At(folder))
            {
                var added = DemoShop.Load(record.Journal);
                record.Read();
                var reductions = new Reductions(record.Ledger);
                var kept = new KeptRuns(folder);
                new DocumentPage(output, units).Write(PortDocument.ForThePorter(PortAtCut.Of(reductions, DemoShop.Featured, null, kept)));
                page.Line();
                page.Paragraph(added == 0 ? "The demo shop was here already; nothing was added." : $"The demo shop, all of it invented: {added} entries.");
                page.Pair("record", folder);
                if (!parsed.GetValue(noEngine)) Engine(page, EngineChoice.Of(reductions, DemoShop.Job), reductions, kept, units, parsed.InvocationConfiguration.Error);
                var pdf = Path.Combine(folder, "port-sheet-intake-2.pdf");
                var featured = PortAtCut.Of(reductions, DemoShop.Featured, null, kept);
                SheetFiles.Write(SheetFile.Pdf, pdf, featured, PortDocument.ForThePorter(featured, DateOnly.FromDateTime(DateTime.Now)), units);
                page.Pair("port sheet as PDF", pdf);
            }
            return parsed.GetValue(noServe) ? ExitCode.Done : ServeCommand.Run(folder, parsed.GetValue(port), units, output);
        }).Example("portwright demo", "portwright demo --no-serve");
    }

    /// <summary>The job's engine, run and kept, so that its page is full at once; what it says in two sentences.</summary>
    private static void Engine(Page page, EngineChoice choice, Reductions reductions, IKeptPoints kept, UnitSystem units, TextWriter error)
    {
        if (EngineQuestion.Of(PlanReading.Of(reductions, choice.Job), choice.Pair(reductions), out _) is not { } question) return;
        using var enough = new CancellationTokenSource(EngineTime);
        try
        {
            var answer = question.Answer(EngineRunning.Run(question.Tasks(), kept, error, enough.Token));
            page.Line();
            page.Paragraph($"Its engine with these ports. {EngineSentences.Best(answer).In(units)}");
            page.Paragraph(EngineSentences.Pays(answer).In(units));
            page.Line();
        }
        catch (Refusal) when (enough.IsCancellationRequested)
        {
            page.Paragraph("The engine run was left unfinished, this machine being busy; portwright engine goes on from there.");
        }
    }

    /// <summary>Beside the person's own record, never in it.</summary>
    private static string Folder() => Path.Combine(Path.GetDirectoryName(DataFolder.Default)!, Path.GetFileName(DataFolder.Default) + "-demo");
}
