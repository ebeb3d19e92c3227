using System.Globalization;
using System.Text;

namespace Portwright.Store.Import;

/// <summary>Tells from its first bytes what a file is, and refuses by name what is no table.</summary>
internal static class FileContent
{
    internal enum Kind { Text, Workbook }

    internal static Kind Recognise(byte[] bytes, string name)
    {
        if (bytes.Length == 0) throw new UnreadableFileException($"{name} is empty. Save the sheet again and choose the new file.");
        if (bytes.Length > ImportLimits.FileBytes)
            throw new UnreadableFileException($"{name} is {Megabytes(bytes.Length)} MB, more than the {Megabytes(ImportLimits.FileBytes)} MB read here. Save only the sheet with the readings, as CSV.");

        if (Starts(bytes, 0xD0, 0xCF, 0x11, 0xE0, 0xA1, 0xB1, 0x1A, 0xE1))
            throw new UnreadableFileException($"{name} is an old .xls workbook or one locked with a password. Open it in the spreadsheet and save it as .xlsx without a password, or as CSV.");
        if (Starts(bytes, 0x50, 0x4B, 0x03, 0x04)) return Kind.Workbook;
        if (Starts(bytes, 0x50, 0x4B)) throw new UnreadableFileException($"{name} is an archive without a readable workbook in it. Save the sheet again as .xlsx or CSV.");
        if (Named(bytes) is { } what) throw new UnreadableFileException($"{name} is {what}, not a table. Save the sheet as .xlsx or CSV and choose that file.");

        var head = Encoding.Latin1.GetString(bytes, 0, Math.Min(bytes.Length, 2048)).TrimStart('\u00EF', '\u00BB', '\u00BF', ' ', '\t', '\r', '\n', '\0', '\u00FE', '\u00FF').Replace("\0", "", StringComparison.Ordinal);
        if (StartsWithAny(head, "<!doctype html", "<html", "<table", "<head", "<body", "<script", "<meta"))
            throw new UnreadableFileException($"{name} is a web page, not a table. Open it in the spreadsheet and save it as .xlsx or CSV.");
        if (StartsWithAny(head, "<?xml", "<workbook", "<!doctype", "<!entity"))
            throw new UnreadableFileException($"{name} is an XML file, not a table. Open it in the spreadsheet and save it as .xlsx or CSV.");
        if (head.StartsWith("{\\rtf", StringComparison.Ordinal))
            throw new UnreadableFileException($"{name} is a text document, not a table. Copy the table into a spreadsheet and save it as CSV.");
        return Kind.Text;
    }

    internal static string Megabytes(long bytes) => (bytes / (1024.0 * 1024)).ToString("0.#", CultureInfo.InvariantCulture);

    private static string? Named(byte[] b) =>
        Starts(b, 0x25, 0x50, 0x44, 0x46) ? "a PDF"
        : Starts(b, 0x89, 0x50, 0x4E, 0x47) || Starts(b, 0xFF, 0xD8, 0xFF) || Starts(b, 0x47, 0x49, 0x46, 0x38) || Starts(b, 0x52, 0x49, 0x46, 0x46) ? "a picture or recording"
        : Starts(b, 0x1F, 0x8B) || Starts(b, 0x37, 0x7A, 0xBC, 0xAF) || Starts(b, 0x52, 0x61, 0x72, 0x21) || Starts(b, 0x42, 0x5A, 0x68) || Starts(b, 0xFD, 0x37, 0x7A, 0x58) ? "a packed archive"
        : Starts(b, 0x4D, 0x5A) || Starts(b, 0x7F, 0x45, 0x4C, 0x46) ? "a program"
        : Starts(b, 0x53, 0x51, 0x4C, 0x69, 0x74, 0x65) ? "a database"
        : null;

    private static bool Starts(byte[] bytes, params byte[] with) => bytes.AsSpan().StartsWith(with);

    private static bool StartsWithAny(string head, params string[] with) => with.Any(w => head.StartsWith(w, StringComparison.OrdinalIgnoreCase));
}
