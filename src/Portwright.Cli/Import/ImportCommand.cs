using System.CommandLine;
using System.Globalization;
using Portwright.Cli.Record;
using Portwright.Cli.Terminal;
using Portwright.Physics.TestPiece;
using Portwright.Shop.Units;
using Portwright.Store.Import;

namespace Portwright.Cli.Import;

/// <summary><c>portwright import</c>: sweeps out of files as shops keep them; first shown, then saved with <c>--yes</c>, all or nothing.</summary>
internal static class ImportCommand
{
    public static Command Make()
    {
        var files = new Argument<string[]>("FILE") { Description = "CSV, text or .xlsx; or one .json job document", Arity = ArgumentArity.OneOrMore };
        var job = new Option<string?>("--job") { Description = "the job the readings belong to, by its name or part of it", HelpName = "NAME" };
        var head = new Option<string?>("--head") { Description = "the head", HelpName = "NAME" };
        var port = new Option<string?>("--port-name") { Description = "the port, where the file names none: \"intake 2\"", HelpName = "PORT" };
        var cut = new Option<int?>("--cut") { Description = "the cut, where the file names none; without it the port's latest", HelpName = "N" };
        var done = new Option<string?>("--done") { Description = "what was done at that cut: makes the cut where the record has none of that number", HelpName = "TEXT" };
        var bench = new Option<string?>("--bench") { Description = "the bench, by its name or part of it", HelpName = "NAME" };
        var range = new Option<string?>("--range") { Description = "the range read, where the file names none", HelpName = "NAME" };
        var pressure = new Option<string?>("--test-pressure") { Description = "the test pressure, where the file names none (usual: 28 inH2O)", HelpName = "VALUE" };
        var direction = new Option<string?>("--direction") { Description = "draw or blow (usual: intakes drawn, exhausts blown)", HelpName = "WORD" };
        var date = new Option<string?>("--date") { Description = "the day of the test, which says which calibration holds (usual: today)", HelpName = "YYYY-MM-DD" };
        var sheet = new Option<string?>("--sheet") { Description = "the sheet of a workbook (usual: the first with cells)", HelpName = "NAME" };
        var yes = new Option<bool>("--yes") { Description = "save; without it the preview is shown and nothing saved" };
        var (data, json, si) = (CommandWords.Data(), CommandWords.Json(), CommandWords.Si());
        var command = new Command("import", "sweeps out of CSV files and workbooks; shown first, saved with --yes")
        {
            files, job, head, port, cut, done, bench, range, pressure, direction, date, sheet, yes, data, json, si,
        };
        return command.Does(parsed =>
        {
            var units = parsed.GetValue(si) ? UnitSystem.Si : UnitSystem.UsCustomary;
            if (parsed.GetRequiredValue(files) is [var only] && only.EndsWith(".json", StringComparison.OrdinalIgnoreCase))
                return DocumentImport.Run(only, parsed.GetValue(data), parsed.GetValue(yes), parsed.GetValue(json), parsed.InvocationConfiguration.Output);
            var previews = parsed.GetRequiredValue(files).Select(f => Preview(f, parsed.GetValue(sheet), units)).ToList();
            var output = parsed.InvocationConfiguration.Output;
            if (parsed.GetValue(json)) PreviewPage.Json(output, previews);
            else foreach (var preview in previews) PreviewPage.Text(new Page(output), preview, units);
            if (previews.Any(p => !p.CanBeSaved)) throw new Refusal("Nothing was saved. Put the cells right and import again.", ExitCode.File);
            if (!parsed.GetValue(yes))
            {
                if (!parsed.GetValue(json)) new Page(output).Paragraph("Nothing is saved yet. Say --yes to save this.");
                return ExitCode.Done;
            }

            using var record = OpenRecord.At(parsed.GetValue(data));
            var target = new ImportInto(
                record, parsed.GetValue(job), parsed.GetValue(head), parsed.GetValue(port), parsed.GetValue(cut), parsed.GetValue(done),
                parsed.GetValue(bench), parsed.GetValue(range), parsed.GetValue(pressure) ?? "28 inH2O", Way(parsed.GetValue(direction)), Day(parsed.GetValue(date)), units);
            // One time for all files: they came in together.
            var now = DateTimeOffset.Now;
            var entries = previews.SelectMany(p => target.Entries(p, now)).ToList();
            var saved = record.Journal.Append(entries);
            if (!parsed.GetValue(json)) new Page(output).Paragraph(saved == 0 ? "Imported before: the record has all of this already." : $"Saved: {saved} entries.");
            return ExitCode.Done;
        }).Example(
            "portwright import sweep.csv",
            "portwright import tamarack.json --yes",
            "portwright import sweep.csv --port-name \"head B intake 2\" --cut 3 --range large --yes");
    }

    private static ImportPreview Preview(string file, string? sheet, UnitSystem units)
    {
        if (!File.Exists(file)) throw new Refusal($"There is no file {file}.", ExitCode.File);
        if (new FileInfo(file).Length > ImportLimits.FileBytes) throw new Refusal($"{file} is larger than {ImportLimits.FileBytes / (1024 * 1024)} MB: no sheet of readings is. Choose the right file.", ExitCode.File);
        return TableFile.TryRead(File.ReadAllBytes(file), file, sheet, out var table, out var problem)
            ? SweepTable.Guess(table, units)
            : throw new Refusal(problem, ExitCode.File);
    }

    private static DateOnly? Day(string? typed) => typed is null ? null
        : DateOnly.TryParseExact(typed, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) && day <= DateOnly.FromDateTime(DateTime.Now) ? day
        : throw new Refusal($"--date \"{typed}\" is no day up to today. Write it as 2026-03-18.");

    private static FlowDirection? Way(string? typed) => typed?.ToUpperInvariant() switch
    {
        null => null,
        "DRAW" => FlowDirection.Draw,
        "BLOW" => FlowDirection.Blow,
        _ => throw new Refusal($"--direction \"{typed}\" is neither draw nor blow."),
    };
}
