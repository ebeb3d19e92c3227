using System.Text.RegularExpressions;
using Portwright.Cli.Terminal;
using Portwright.Shop.Units;
using Portwright.Web.Sums;

namespace Portwright.Cli.Calc;

/// <summary>The sums of <c>calc</c> asked from a page: a question becomes a command line, and that is run as in the terminal.</summary>
internal sealed partial class SumDesk : ISumDesk
{
    /// <summary>What most are after, with a sentence that asks for it.</summary>
    private static readonly (string Name, string Sentence)[] Often =
    [
        ("restate", "194.9 cfm at 10 to 28"), ("area", "194.9 cfm at 28"), ("nozzle", "0.202 in2 at 28 inH2O"), ("direct", "direct 88.0 cfm at 10"),
        ("percent", "71.4 % of 300 cfm at 28"), ("leak", "leak 224 cfm leak-flow 3.1 cfm"), ("air", "air 29.4 inHg 75 F 45 %"), ("pitot", "pitot 28 inH2O ± 0.2 inH2O"),
        ("window", "window head 1.985 throat 1.75 lift .500"), ("compare", "compare \"221.9 +- 1.1 cfm\" \"226.3 +- 1.2 cfm\""),
    ];

    public IReadOnlyList<SumOffered> Offered { get; } = Offer();

    public SumAnswer Ask(string text, UnitSystem units, bool kept)
    {
        ArgumentNullException.ThrowIfNull(text);
        var asked = SumQuestion.Read(text, units);
        if (asked.Problem.Length > 0) return new SumAnswer(null, asked.Problem, Also: asked.Also);
        if (!kept && asked.Doubtful is { } doubtful) return new SumAnswer(null, Question: doubtful.Words, Likely: doubtful.Likely, MayKeep: doubtful.MayKeep, Also: asked.Also);
        using var taker = new SheetTaker();
        using var error = new StringWriter { NewLine = " " };
        string[] line = ["calc", .. asked.Words, .. units == UnitSystem.Si ? ["--si"] : Array.Empty<string>()];
        var code = CommandLine.Run(line, taker, error);
        return code == ExitCode.Done && taker.Sheet is { } sheet
            ? new SumAnswer(sheet, Command: "portwright " + string.Join(' ', line.Select(Quoted)), Also: asked.Also)
            : new SumAnswer(null, OfThePage(error.ToString()), Also: asked.Also);
    }

    private static SumOffered[] Offer()
    {
        var commands = CalcCommand.Make().Subcommands;
        return
        [
            .. commands.Select(c => new SumOffered(
                    c.Name, c.Description ?? "", Often.Any(o => o.Name == c.Name),
                    [.. Often.Where(o => o.Name == c.Name).Select(o => o.Sentence), .. CommandWords.ExamplesOf(c).Select(e => e["portwright calc ".Length..])]))
                .OrderBy(o => Array.FindIndex(Often, f => f.Name == o.Name) is >= 0 and var place ? place : Often.Length),
        ];
    }

    /// <summary>Fields are named without the terminal's dashes, and no command line is shown as the cure.</summary>
    private static string OfThePage(string said) => Spaces().Replace(Dashes().Replace(ExampleLine().Replace(said, ""), "$1"), " ").Trim();

    private static string Quoted(string word) => word.Contains(' ', StringComparison.Ordinal) ? $"\"{word}\"" : word;

    [GeneratedRegex(@"(?<![\w-])--([a-z][a-z-]*)")] private static partial Regex Dashes();

    [GeneratedRegex(@"Example: portwright\s[^\n]*?(?=(?:--[a-z-]+ is missing)|$)|What there is: portwright [^\n]*")] private static partial Regex ExampleLine();

    [GeneratedRegex(@"\s+")] private static partial Regex Spaces();
}
