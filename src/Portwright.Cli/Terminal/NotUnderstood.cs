using System.CommandLine;
using System.CommandLine.Parsing;

namespace Portwright.Cli.Terminal;

/// <summary>What is said when a command line cannot be read: which word, and where the right ones are listed.</summary>
internal static class NotUnderstood
{
    public static int Say(ParseResult parsed, TextWriter output, TextWriter error)
    {
        var command = parsed.CommandResult.Command;
        var name = FullName(parsed.CommandResult);
        if (parsed.UnmatchedTokens.Count == 0 && command.Subcommands.Count > 0 && parsed.Tokens.Count == Depth(parsed.CommandResult))
        {
            // A verb that only groups others: show what there is.
            command.Parse([.. Path(parsed.CommandResult).Skip(1), "--help"]);
            parsed.RootCommandResult.Command.Parse([.. Path(parsed.CommandResult).Skip(1), "--help"])
                .Invoke(new InvocationConfiguration { Output = output, Error = error });
            return ExitCode.Typed;
        }

        var page = new Page(error);
        foreach (var word in parsed.UnmatchedTokens)
        {
            var known = word.StartsWith('-')
                ? command.Options.Where(o => !o.Hidden).Select(o => o.Name)
                : command.Subcommands.Select(c => c.Name);
            var near = known.Select(k => (Name: k, Far: Distance(word, k))).Where(k => k.Far <= Math.Max(2, word.Length / 3)).OrderBy(k => k.Far).FirstOrDefault().Name;
            page.Paragraph($"{name} knows no \"{word}\"." + (near is null ? "" : $" Meant was perhaps {near}."));
        }
        foreach (var problem in parsed.Errors.Where(e => !parsed.UnmatchedTokens.Any(t => e.Message.Contains($"'{t}'", StringComparison.Ordinal))))
        {
            if (parsed.UnmatchedTokens.Count == 0 || problem.SymbolResult is not CommandResult) page.Paragraph(problem.Message);
        }
        page.Line($"What there is: {name} --help");
        return ExitCode.Typed;
    }

    private static string FullName(CommandResult result) => "portwright" + string.Concat(Path(result).Skip(1).Select(n => " " + n));

    private static int Depth(CommandResult result) => Path(result).Count() - 1;

    private static IEnumerable<string> Path(SymbolResult? result) =>
        result is null ? [] : Path(result.Parent).Append(((CommandResult)result).Command.Name);

    /// <summary>Letters to add, drop or change (Levenshtein) from one word to the other.</summary>
    private static int Distance(string a, string b)
    {
        var row = Enumerable.Range(0, b.Length + 1).ToArray();
        for (var i = 1; i <= a.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var change = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.Min(change, Math.Min(row[j], row[j - 1]) + 1);
            }
        }
        return row[^1];
    }
}
