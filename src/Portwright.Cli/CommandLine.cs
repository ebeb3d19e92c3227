using System.CommandLine;
using Portwright.Cli.Bench;
using Portwright.Cli.Calc;
using Portwright.Cli.Export;
using Portwright.Cli.Import;
using Portwright.Cli.Record;
using Portwright.Cli.Serve;
using Portwright.Cli.Sheet;
using Portwright.Cli.Terminal;
using Portwright.Web.Sums;

namespace Portwright.Cli;

/// <summary>The <c>portwright</c> command: its verbs, and what happens when one of them cannot go on.</summary>
public static class CommandLine
{
    /// <summary>Runs one command line and returns its exit code. Nothing is read from or written to the console itself.</summary>
    public static int Run(IReadOnlyList<string> args, TextWriter output, TextWriter error)
    {
        ArgumentNullException.ThrowIfNull(args);
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(error);
        var root = Root();
        // A typed @ is text, not the name of a file with more arguments in it.
        var parsed = root.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        var asks = parsed.Action is System.CommandLine.Invocation.ParseErrorAction;
        if (asks) return NotUnderstood.Say(parsed, output, error);
        try
        {
            return parsed.Invoke(new InvocationConfiguration { Output = output, Error = error, EnableDefaultExceptionHandler = false });
        }
        catch (Refusal refusal)
        {
            var page = new Page(error);
            foreach (var sentence in refusal.Message.Split('\n')) page.Paragraph(sentence);
            return refusal.ExitCode;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            new Page(error).Paragraph(fault.Message);
            return ExitCode.File;
        }
#pragma warning disable CA1031 // The last line of defence: a porter gets a sentence, whoever looks after the program gets the trace when asked for.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            new Page(error).Paragraph($"portwright stopped because of a fault of its own: {fault.Message} Nothing that was shown as saved is lost. Set PORTWRIGHT_TRACE=1 and run it again to see where.");
            if (Environment.GetEnvironmentVariable("PORTWRIGHT_TRACE") == "1") error.WriteLine(fault);
            return ExitCode.Fault;
        }
    }

    /// <summary>The examples of <c>calc</c>'s help, each a command line that works.</summary>
    public static IReadOnlyList<string> CalcExamples() => CommandWords.ExamplesOf(CalcCommand.Make());

    /// <summary>The sums of <c>calc</c> for a page.</summary>
    public static ISumDesk Sums() => new SumDesk();

    private static RootCommand Root()
    {
        var root = new RootCommand("Portwright: from flow-bench readings to a port sheet, with the doubt of every number.");
        root.Subcommands.Add(DemoCommand.Make());
        root.Subcommands.Add(ServeCommand.Make());
        root.Subcommands.Add(JobsCommand.Make());
        root.Subcommands.Add(SheetCommand.Make());
        root.Subcommands.Add(BudgetCommand.Make());
        root.Subcommands.Add(Engine.EngineCommand.Make());
        root.Subcommands.Add(ImportCommand.Make());
        root.Subcommands.Add(ExportCommand.Make());
        root.Subcommands.Add(CheckCommand.Make());
        root.Subcommands.Add(CalcCommand.Make());
        root.Subcommands.Add(KeepingCommands.Backup());
        root.Subcommands.Add(KeepingCommands.Restore());
        root.Example(
            "portwright demo",
            "portwright calc restate --flow 180cfm --from 10inH2O",
            "portwright calc --help");
        CommandWords.ShowExamples(root);
        return root;
    }
}
