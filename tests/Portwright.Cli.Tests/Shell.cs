using System.Text.Json.Nodes;

namespace Portwright.Cli.Tests;

/// <summary>One command line run in this process, as a shell would see it.</summary>
internal sealed record Shell(int ExitCode, string Output, string Error)
{
    public static Shell Run(params string[] args)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        var code = CommandLine.Run(args, output, error);
        return new Shell(code, output.ToString(), error.ToString());
    }

    /// <summary>Runs with <c>--json</c> and reads what comes out.</summary>
    public static JsonObject Json(params string[] args)
    {
        var shell = Run([.. args, "--json"]);
        // A check that says look still prints its result.
        Assert.True(shell.ExitCode is 0 or 1, shell.Error);
        return JsonNode.Parse(shell.Output)!.AsObject();
    }

    public IEnumerable<string> Lines => Output.Split('\n');
}
