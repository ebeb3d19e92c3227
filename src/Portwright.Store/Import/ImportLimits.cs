namespace Portwright.Store.Import;

/// <summary>
/// What is read of a foreign file at most. A shop's sheets stay a hundred times below; a file above is refused with
/// a sentence naming the limit, so that no file can hold the program up or fill its memory.
/// </summary>
public static class ImportLimits
{
    /// <summary>Size of the file, bytes.</summary>
    public const int FileBytes = 20 * 1024 * 1024;
    /// <summary>Size of the parts of a workbook that are read, unpacked, bytes. Pictures are not unpacked.</summary>
    public const int UnpackedBytes = 32 * 1024 * 1024;
    /// <summary>Parts listed in a workbook.</summary>
    public const int Parts = 2000;
    /// <summary>Columns in use.</summary>
    public const int Columns = 200;
    /// <summary>Rows in use.</summary>
    public const int Rows = 20_000;
    /// <summary>Cells in use.</summary>
    public const int Cells = 100_000;
    /// <summary>Characters in one cell.</summary>
    public const int CellCharacters = 2000;
    /// <summary>Problems listed before the rest is only counted.</summary>
    public const int ListedProblems = 200;
}

/// <summary>A file that cannot be read as a table; the message is for the person who chose it.</summary>
internal sealed class UnreadableFileException : Exception
{
    public UnreadableFileException(string message) : base(message) { }
}
