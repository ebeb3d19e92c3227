using System.CommandLine;
using System.Globalization;
using Portwright.Cli.Terminal;
using Portwright.Store;

namespace Portwright.Cli.Record;

/// <summary><c>backup</c> and <c>restore</c>.</summary>
internal static class KeepingCommands
{
    public static Command Backup()
    {
        var file = new Argument<string>("FILE") { Description = "where the backup goes; must not exist yet" };
        var (data, json) = (CommandWords.Data(), CommandWords.Json());
        return new Command("backup", "a copy of the whole record in one file, opened and checked after it is written") { file, data, json }.Does(parsed =>
        {
            using var journal = Journal.Open(DataFolder.Resolve(parsed.GetValue(data)));
            var done = journal.Backup(Path.GetFullPath(parsed.GetRequiredValue(file)));
            var output = parsed.InvocationConfiguration.Output;
            if (parsed.GetValue(json))
            {
                JsonText.Write(output, j =>
                {
                    j.WriteStartObject();
                    j.WriteString("file", done.File);
                    j.WriteNumber("size_bytes", done.Size);
                    j.WriteString("sha256", done.Fingerprint);
                    j.WriteNumber("entries", done.Health.Entries);
                    j.WriteBoolean("sound", done.Health.IsSound);
                    j.WriteEndObject();
                });
                return ExitCode.Done;
            }
            var page = new Page(output);
            page.Paragraph($"Written: {done.File}");
            page.Pair("size", string.Create(CultureInfo.InvariantCulture, $"{done.Size / 1024.0:F0} kB"));
            page.Pair("SHA-256", done.Fingerprint);
            foreach (var words in done.Health.Words) page.Paragraph(words);
            return ExitCode.Done;
        }).Example("portwright backup /media/stick/portwright-2026-04-10.db");
    }

    public static Command Restore()
    {
        var file = new Argument<string>("FILE") { Description = "a backup made by portwright backup" };
        var anyway = new Option<bool>("--even-if-damaged") { Description = "bring back what can be read of a damaged backup" };
        var (data, json) = (CommandWords.Data(), CommandWords.Json());
        return new Command("restore", "brings a backup back; the record that was there is kept beside it") { file, anyway, data, json }.Does(parsed =>
        {
            var done = Journal.Restore(Path.GetFullPath(parsed.GetRequiredValue(file)), DataFolder.Resolve(parsed.GetValue(data)), parsed.GetValue(anyway));
            var output = parsed.InvocationConfiguration.Output;
            if (parsed.GetValue(json))
            {
                JsonText.Write(output, j =>
                {
                    j.WriteStartObject();
                    j.WriteNumber("entries", done.Health.Entries);
                    j.WriteBoolean("sound", done.Health.IsSound);
                    if (done.KeptOld is { } kept) j.WriteString("kept_old", kept);
                    j.WriteEndObject();
                });
                return ExitCode.Done;
            }
            var page = new Page(output);
            foreach (var words in done.Health.Words) page.Paragraph(words);
            page.Paragraph(done.KeptOld is { } old ? $"Restored. The record that was there before is kept as {old}." : "Restored.");
            return ExitCode.Done;
        }).Example("portwright restore /media/stick/portwright-2026-04-10.db");
    }
}
