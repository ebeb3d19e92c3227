namespace Portwright.Cli.Terminal;

/// <summary>Ends a command with a sentence the porter can act on: field, value, cure. Caught in one place, printed without a trace.</summary>
internal sealed class Refusal(string sentence, int exitCode = ExitCode.Typed) : Exception(sentence)
{
    public int ExitCode { get; } = exitCode;
}
