using System.CommandLine;
using Portwright.Cli.Terminal;
using Portwright.Shop.Units;

namespace Portwright.Cli.Calc;

/// <summary><c>portwright calc</c>: one number from one formula, with the working shown. Touches neither the record nor the workbench.</summary>
internal static class CalcCommand
{
    public static Command Make()
    {
        var command = new Command("calc", "one number from one formula, with its working and its doubt");
        foreach (var calculation in Calculations.All) command.Subcommands.Add(Of(calculation));
        foreach (var list in ListCommands.All()) command.Subcommands.Add(list);
        return command.Example(
            "portwright calc restate --flow 180cfm --from 10inH2O",
            "portwright calc pitot --dp \"28 inH2O +- 0.2 inH2O\"",
            "portwright calc pitot --dp \"1 inH2O +- 0.4 inH2O\" --trials 20000",
            "portwright calc window --head 1.985in --throat 1.75in --lift .500",
            "portwright calc compare \"221.9 +- 1.1\" \"226.3 +- 1.2\"");
    }

    private static Command Of(Calculation calculation)
    {
        var command = new Command(calculation.Name, calculation.Summary);
        var numbers = calculation.Inputs.Select(i => (Input: i, Option: new Option<string[]>("--" + i.Name)
        {
            Description = i.Words + (i.Usual is null ? i.MayMiss ? " (may be left out)" : "" : $" (usual: {i.Usual})"),
            HelpName = "VALUE",
            Arity = ArgumentArity.OneOrMore,
        })).ToList();
        var choices = calculation.Choices.Select(c => (Choice: c, Option: new Option<string?>("--" + c.Name)
        {
            Description = $"{c.Words}: {string.Join(", ", c.Options)} (usual: {c.Options[0]})",
            HelpName = "WORD",
        })).ToList();
        var doubts = new Option<string[]>("--doubt")
        {
            Description = "doubt of a number typed elsewhere, as NAME=\"0.2 %\"; half of a 95 percent interval",
            HelpName = "NAME=VALUE",
        };
        var trials = new Option<int?>("--trials")
        {
            Description = "draw the doubt this many times as well, to check its budget (100000 is enough for two figures)",
            HelpName = "COUNT",
        };
        var (json, si) = (CommandWords.Json(), CommandWords.Si());
        foreach (var (_, option) in numbers) command.Options.Add(option);
        foreach (var (_, option) in choices) command.Options.Add(option);
        command.Options.Add(doubts);
        command.Options.Add(trials);
        command.Options.Add(json);
        command.Options.Add(si);
        command.SetAction(parsed =>
        {
            var system = parsed.GetValue(si) ? UnitSystem.Si : UnitSystem.UsCustomary;
            var reader = new GivenReader(calculation, system);
            foreach (var (input, option) in numbers) reader.Number(input, parsed.GetValue(option) ?? []);
            foreach (var (choice, option) in choices) reader.Choose(choice, parsed.GetValue(option));
            reader.Doubts(parsed.GetValue(doubts) ?? []);
            var given = reader.Read();
            var (working, answers) = calculation.Run(given);
            if (parsed.GetValue(trials) is { } count) calculation.Draw(given, working, answers, count);
            var output = parsed.InvocationConfiguration.Output;
            if (parsed.GetValue(json)) CalcJson.Write(output, calculation.Name, given, calculation.Inputs, working, answers);
            else CalcPage.Write(output, Title(calculation), reader.Shown(), working, answers, system);
            return ExitCode.Done;
        });
        return command.Example([.. calculation.Examples.Select(e => "portwright calc " + e)]);
    }

    private static string Title(Calculation calculation) => char.ToUpperInvariant(calculation.Summary[0]) + calculation.Summary[1..];
}
