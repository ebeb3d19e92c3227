namespace Portwright.Cli.Terminal;

/// <summary>What the command answers to the shell. Documented in <c>docs/guide/command-line.md</c>.</summary>
internal static class ExitCode
{
    /// <summary>Done.</summary>
    public const int Done = 0;

    /// <summary>The check was made and says look or stop.</summary>
    public const int LookOrStop = 1;

    /// <summary>Something typed is missing or cannot be read.</summary>
    public const int Typed = 2;

    /// <summary>A file or the record cannot be read or written.</summary>
    public const int File = 3;

    /// <summary>A fault of the program itself.</summary>
    public const int Fault = 4;

    /// <summary>Stopped by the person (Ctrl+C) before it was done: 128 and the signal's number, as shells have it.</summary>
    public const int Stopped = 130;
}
