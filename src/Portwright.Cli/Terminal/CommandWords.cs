using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace Portwright.Cli.Terminal;

/// <summary>Parts every verb is made of.</summary>
internal static class CommandWords
{
    /// <summary>Results as JSON. On every verb that prints one.</summary>
    public static Option<bool> Json() => new("--json") { Description = "print the result as JSON, SI numbers with full precision" };

    /// <summary>SI units in place of US customary ones.</summary>
    public static Option<bool> Si() => new("--si") { Description = "take bare numbers in, and print, mm, l/s, kPa, °C instead of in, cfm, inH2O, °F" };

    public static Option<string?> Data() => new("--data")
    {
        Description = "the data folder; without it the one of this user account",
        HelpName = "DIR",
    };

    /// <summary>The port a verb speaks of.</summary>
    public static Argument<string?> Port() => new("PORT")
    {
        Description = "\"intake 2\", or \"head B intake 2\"; without it the port tested last",
        Arity = ArgumentArity.ZeroOrOne,
    };

    public static Option<string?> Job() => new("--job") { Description = "the job, by its name or part of it", HelpName = "NAME" };

    public static Option<string?> Head() => new("--head") { Description = "the head, by its name or part of it", HelpName = "NAME" };

    public static Option<int?> Cut() => new("--cut") { Description = "the number of the cut; without it the latest", HelpName = "N" };

    /// <summary>The usual help with examples under it, at 80 columns.</summary>
    public static Command Example(this Command command, params string[] examples)
    {
        Examples.AddOrUpdate(command, examples);
        return command;
    }

    /// <summary>Gives the root's help option the examples of whichever command it is asked for.</summary>
    public static void ShowExamples(RootCommand root)
    {
        foreach (var option in root.Options.OfType<HelpOption>())
        {
            if (option.Action is HelpAction usual) option.Action = new HelpWithExamples(usual);
        }
    }

    /// <summary>The examples of a command and of all below it.</summary>
    public static IReadOnlyList<string> ExamplesOf(Command command) =>
        [.. Examples.TryGetValue(command, out var own) ? own : [], .. command.Subcommands.SelectMany(ExamplesOf)];

    private static readonly System.Runtime.CompilerServices.ConditionalWeakTable<Command, string[]> Examples = [];

    private sealed class HelpWithExamples(HelpAction usual) : SynchronousCommandLineAction
    {
        public override int Invoke(ParseResult parseResult)
        {
            usual.MaxWidth = Page.Width;
            var code = usual.Invoke(parseResult);
            if (Examples.TryGetValue(parseResult.CommandResult.Command, out var examples))
            {
                var output = parseResult.InvocationConfiguration.Output;
                output.WriteLine(examples.Length == 1 ? "Example:" : "Examples:");
                foreach (var example in examples) output.WriteLine("  " + example);
                output.WriteLine();
            }
            return code;
        }

        public override bool ClearsParseErrors => true;
    }
}
