using System.CommandLine;
using Portwright.Cli.Record;
using Portwright.Cli.Sheet;
using Portwright.Cli.Terminal;
using Portwright.Figures;
using Portwright.Shop.Findings;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;
using Portwright.Store;
using Portwright.Store.Demo;

namespace Portwright.Cli.Serve;

/// <summary><c>portwright demo</c>: the invented shop in a record of its own, one port sheet printed, its PDF written, then the workbench.</summary>
internal static class DemoCommand
{
    public static Command Make()
    {
        var noServe = new Option<bool>("--no-serve") { Description = "end after the port sheet, without the workbench" };
        var (port, data, si) = (ServeCommand.Port(), CommandWords.Data(), CommandWords.Si());
        return new Command("demo", "an invented shop to look around in, apart from your own record") { noServe, port, data, si }.Does(parsed =>
        {
            var folder = parsed.GetValue(data) is { } given ? DataFolder.Resolve(given) : Folder();
            var units = parsed.GetValue(si) ? UnitSystem.Si : UnitSystem.UsCustomary;
            var output = parsed.InvocationConfiguration.Output;
            var page = new Page(output);
            using (var record = OpenRecord.At(folder))
            {
                var added = DemoShop.Load(record.Journal);
                record.Read();
                var survey = PortSurvey.Of(record.Ledger, DemoShop.Featured);
                new SheetPage(output, survey, PortFindings.Of(survey), units).Write();
                page.Line();
                page.Paragraph(added == 0 ? "The demo shop was here already; nothing was added." : $"The demo shop, all of it invented: {added} entries.");
                page.Pair("record", folder);
                var pdf = Path.Combine(folder, "port-sheet-intake-2.pdf");
                SheetFiles.Write(SheetFile.Pdf, pdf, survey, units);
                page.Pair("port sheet as PDF", pdf);
            }
            return parsed.GetValue(noServe) ? ExitCode.Done : ServeCommand.Run(folder, parsed.GetValue(port), units, output);
        }).Example("portwright demo", "portwright demo --no-serve");
    }

    /// <summary>Beside the person's own record, never in it.</summary>
    private static string Folder() => Path.Combine(Path.GetDirectoryName(DataFolder.Default)!, Path.GetFileName(DataFolder.Default) + "-demo");
}
