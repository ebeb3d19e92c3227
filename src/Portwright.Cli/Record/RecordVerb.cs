using System.CommandLine;
using Portwright.Cli.Terminal;
using Portwright.Store;

namespace Portwright.Cli.Record;

/// <summary>What the verbs that open the record have in common. Kept apart so that the others never load the store.</summary>
internal static class RecordVerb
{
    /// <summary>Sets what a verb does; the record's own complaints end as sentences.</summary>
    public static Command Does(this Command command, Func<ParseResult, int> action)
    {
        command.SetAction(parsed =>
        {
            try
            {
                return action(parsed);
            }
            catch (RecordProblem problem)
            {
                throw new Refusal(problem.Message, ExitCode.File);
            }
        });
        return command;
    }

    /// <summary>Says what of the record could not be read; results without it may be wrong.</summary>
    public static void Warn(ParseResult parsed, OpenRecord record)
    {
        var page = new Page(parsed.InvocationConfiguration.Error);
        foreach (var sentence in record.LeftOut) page.Paragraph(sentence);
    }
}
