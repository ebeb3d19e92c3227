using System.CommandLine;
using Portwright.Cli.Record;
using Portwright.Cli.Terminal;
using Portwright.Shop.Record;
using Portwright.Shop.Units;
using Portwright.Store.Export;

namespace Portwright.Cli.Export;

/// <summary><c>portwright export</c>: one port as tables for a spreadsheet, or a whole job as one document another Portwright reads.</summary>
internal static class ExportCommand
{
    public static Command Make()
    {
        var port = new Argument<string?>("PORT") { Description = "\"head B intake 2\"; for --csv and --xlsx; without it the port tested last", Arity = ArgumentArity.ZeroOrOne };
        var job = CommandWords.Job();
        var head = CommandWords.Head();
        var csv = new Option<string?>("--csv") { Description = "write what each cut of the port flows as CSV", HelpName = "FILE" };
        var raw = new Option<string?>("--raw-csv") { Description = "write every reading of the port as it was typed, as CSV", HelpName = "FILE" };
        var xlsx = new Option<string?>("--xlsx") { Description = "write both as a workbook", HelpName = "FILE" };
        var document = new Option<string?>("--document") { Description = "write the whole job, bench and pictures with it, as one JSON document", HelpName = "FILE" };
        var (data, json, si) = (CommandWords.Data(), CommandWords.Json(), CommandWords.Si());
        return new Command("export", "a port as CSV or workbook, a whole job as one document") { port, job, head, csv, raw, xlsx, document, data, json, si }.Does(parsed =>
        {
            using var record = OpenRecord.At(parsed.GetValue(data));
            RecordVerb.Warn(parsed, record);
            var units = parsed.GetValue(si) ? UnitSystem.Si : UnitSystem.UsCustomary;
            var of = record.JobNamed(parsed.GetValue(job));
            var written = new List<string>();
            void Put(string? path, Func<byte[]> bytes)
            {
                if (path is null) return;
                File.WriteAllBytes(path, bytes());
                written.Add(Path.GetFullPath(path));
            }
            Guid Port() => record.PortNamed(of, parsed.GetValue(port), parsed.GetValue(head)).Id;
            Put(parsed.GetValue(csv), () => CsvFile.Write(SweepSheets.Reduced(record.Ledger, Port(), units)));
            Put(parsed.GetValue(raw), () => CsvFile.Write(SweepSheets.Raw(record.Ledger, Port())));
            Put(parsed.GetValue(xlsx), () => XlsxFile.WriteAsync([SweepSheets.Reduced(record.Ledger, Port(), units), SweepSheets.Raw(record.Ledger, Port())]).GetAwaiter().GetResult());
            Put(parsed.GetValue(document), () => Document(record, of));
            if (written.Count == 0) throw new Refusal("Say what to write: --csv FILE, --raw-csv FILE, --xlsx FILE or --document FILE.");
            var output = parsed.InvocationConfiguration.Output;
            if (parsed.GetValue(json))
            {
                JsonText.Write(output, j =>
                {
                    j.WriteStartObject();
                    j.WriteStartArray("written");
                    foreach (var path in written) j.WriteStringValue(path);
                    j.WriteEndArray();
                    j.WriteEndObject();
                });
            }
            else
            {
                foreach (var path in written) new Page(output).Paragraph($"Written: {path}");
            }

            return ExitCode.Done;
        }).Example(
            "portwright export --document tamarack.json",
            "portwright export \"head B intake 2\" --xlsx intake-2.xlsx");
    }

    private static byte[] Document(OpenRecord record, Kept<Job> job)
    {
        // Half a job handed on as a whole one would be believed.
        if (record.LeftOut.Count > 0) throw new Refusal("Some entries cannot be read, so the document would not be the whole job. Restore a sound backup first.", ExitCode.File);
        return JobDocumentFile.Write(JobDocument.Of(record.Ledger.Entries, job.Id, record.Journal.Attachment));
    }
}
