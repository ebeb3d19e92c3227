using System.Globalization;
using Portwright.Cli.Terminal;
using Portwright.Shop.Record;
using Portwright.Store;
using Portwright.Store.Export;
using Portwright.Store.Import;

namespace Portwright.Cli.Import;

/// <summary>A whole job out of the document <c>portwright export --document</c> writes.</summary>
internal static class DocumentImport
{
    public static int Run(string file, string? data, bool save, bool json, TextWriter output)
    {
        if (!File.Exists(file)) throw new Refusal($"There is no file {file}.", ExitCode.File);
        if (new FileInfo(file).Length > JobDocumentFile.LargestFile) throw new Refusal($"{file} is larger than {JobDocumentFile.LargestFile / (1024 * 1024)} MB.", ExitCode.File);
        if (!JobDocumentFile.TryRead(File.ReadAllBytes(file), file, out var document, out var problem)) throw new Refusal(problem, ExitCode.File);
        var jobs = string.Join(", ", document.Entries.Select(e => e.Fact).OfType<Job>().Select(j => j.Name).Distinct());
        var added = 0;
        if (save)
        {
            using var journal = Journal.Open(DataFolder.Resolve(data));
            foreach (var picture in document.Pictures) journal.Attach(picture.Bytes);
            // Read before the document is saved: a hiding it brings with it is no hiding to undo.
            var shown = ImportedAgain.Shown(document, Ledger.Of(journal.ReadAll()), DateTimeOffset.Now, "", Path.GetFileName(file));
            added = journal.Append([.. document.Entries, .. shown]);
        }
        if (json)
        {
            JsonText.Write(output, j =>
            {
                j.WriteStartObject();
                j.WriteString("job", jobs);
                j.WriteNumber("entries", document.Entries.Count);
                j.WriteNumber("pictures", document.Pictures.Count);
                j.WriteNumber("saved", added);
                j.WriteEndObject();
            });
            return ExitCode.Done;
        }
        var page = new Page(output);
        page.Paragraph(string.Create(CultureInfo.InvariantCulture, $"{jobs}: {document.Entries.Count} entries, {document.Pictures.Count} pictures."));
        page.Paragraph(!save ? "Nothing is saved yet. Say --yes to save this." : added == 0 ? "Imported before: the record has all of this already." : $"Saved: {added} entries.");
        return ExitCode.Done;
    }
}
