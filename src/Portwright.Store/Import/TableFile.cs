using System.Security.Cryptography;

namespace Portwright.Store.Import;

/// <summary>
/// Reads a table out of a file's bytes: separated text of any delimiter, or a workbook (.xlsx). The content decides,
/// not the name. Nothing in the file is opened, followed, called or worked out.
/// </summary>
public static class TableFile
{
    /// <summary>Reads the file; on failure <paramref name="problem"/> says in a sentence what it is and what to do.</summary>
    /// <param name="bytes">The whole file.</param>
    /// <param name="fileName">Its name, for messages; a folder in it is dropped.</param>
    /// <param name="sheet">The sheet of a workbook; null for the first with cells in use.</param>
    public static bool TryRead(byte[] bytes, string fileName, string? sheet, out RawTable table, out string problem)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        ArgumentNullException.ThrowIfNull(fileName);
        table = null!;
        problem = "";
        var name = ShownName(fileName);
        try
        {
            var kind = FileContent.Recognise(bytes, name);
            var hash = Convert.ToHexStringLower(SHA256.HashData(bytes));
            table = kind == FileContent.Kind.Workbook ? Workbook.Read(bytes, name, hash, sheet) : DelimitedText.Read(bytes, name, hash);
            return true;
        }
        catch (UnreadableFileException e)
        {
            problem = e.Message;
            return false;
        }
    }

    /// <summary>The last part of a path of either kind, without control characters, at most 80 characters.</summary>
    internal static string ShownName(string fileName)
    {
        var name = fileName[(fileName.AsSpan().LastIndexOfAny('/', '\\') + 1)..];
        name = new string([.. name.Where(c => !char.IsControl(c))]).Trim();
        if (name.Length > 80) name = name[..79] + "…";
        return name.Length == 0 ? "The file" : name;
    }
}
