using System.CommandLine;
using System.Globalization;
using Portwright.Cli.Terminal;
using Portwright.Physics.Statistics;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Units;

namespace Portwright.Cli.Calc;

/// <summary>The calculations that take lists: comparing, curves over lift, calibration, control charts, set-up scatter; the others have files of their own.</summary>
internal static class ListCommands
{
    public static IEnumerable<Command> All() => [CompareCommand.Make(), Curve(), Calibrate(), LineCommand.Make(), Chart(), DriftCommand.Make(), Scatter(), TraverseCommand.Make()];

    private static Command Curve()
    {
        var points = new Argument<string[]>("LIFT:FLOW") { Description = "tested points, \".100:62.1\" \".200:121.4 +- 0.8\"; at least two", Arity = ArgumentArity.OneOrMore };
        var at = new Option<string[]>("--at") { Description = "lifts to read the curve at", HelpName = "LIFT", AllowMultipleArgumentsPerToken = true };
        var from = new Option<string?>("--from") { Description = "mean flow from this lift (usual: the lowest tested)", HelpName = "LIFT" };
        var to = new Option<string?>("--to") { Description = "to this lift (usual: the highest tested)", HelpName = "LIFT" };
        var beyond = new Option<bool>("--beyond") { Description = "go on past the tested range, marked as extrapolated" };
        var kind = Kind();
        return Make("curve", "flow at a lift between the tested ones, and mean flow over lift", [points], [at, from, to, beyond, kind],
            (parsed, system, work) => LiftCurve.Work(
                work, system, NumberList.Kind(parsed.GetValue(kind)), parsed.GetRequiredValue(points), parsed.GetValue(at) ?? [],
                parsed.GetValue(from), parsed.GetValue(to), parsed.GetValue(beyond)),
            "portwright calc curve .100:62 .200:121 .300:174 .400:214 .500:239 --at .450",
            "portwright calc curve \".200:121 +- 1\" \".300:174 +- 1\" \".400:214 +- 1\" --from .200 --to .400");
    }

    private static Command Calibrate()
    {
        var certified = new Argument<string>("CERTIFIED") { Description = "what the plate's certificate says, with its doubt: \"1.234in2 +- 0.004in2\"" };
        var measured = new Argument<string>("MEASURED") { Description = "what the bench read of it, a list of repeats" };
        var kind = Kind();
        return Make("calibrate", "meter factor from readings of a check plate", [certified, measured], [kind],
            (parsed, system, work) =>
            {
                var dimension = NumberList.Kind(parsed.GetValue(kind));
                var plate = NumberList.Result(parsed.GetRequiredValue(certified), "certificate", dimension, system).ToEstimate();
                var bench = NumberList.Result(parsed.GetRequiredValue(measured), "readings", dimension, system).ToEstimate();
                work.Given.Add(("certified", parsed.GetRequiredValue(certified)));
                work.Given.Add(("measured", parsed.GetRequiredValue(measured)));
                if (!(plate.Value > 0 && bench.Value > 0)) throw new Refusal("A meter factor needs a certificate and readings above zero: \"152.0 cfm\" \"153.9 154.2\".");
                var factor = Estimate.Ratio(plate, bench);
                work.Plus("measured", "mean of the readings", bench, dimension, "type A: s/sqrt(n) (JCGM 100:2008, 4.2.3)");
                work.Plus("meter_factor", "meter factor", factor, Dimension.Ratio, "certified/measured; multiplies every flow of this range");
                work.Working.Remark(string.Create(CultureInfo.InvariantCulture, $"The range reads {Math.Abs(1 / factor.Value - 1) * 100:F2} percent {(factor.Value < 1 ? "high" : "low")}."));
            },
            "portwright calc calibrate \"152.0 +- 0.6 cfm\" \"153.9 154.2 154.0\"");
    }

    private static Command Chart()
    {
        var values = new Argument<string>("VALUES") { Description = "the daily check in order of time, the newest last" };
        var step = new Option<string?>("--step") { Description = "smallest step the reading shows", HelpName = "VALUE" };
        var kind = Kind();
        return Make("chart", "control chart of a daily check: go, look or stop", [values], [step, kind],
            (parsed, system, work) =>
            {
                var dimension = NumberList.Kind(parsed.GetValue(kind));
                var points = NumberList.Read(parsed.GetRequiredValue(values), "values", dimension, system);
                var resolution = parsed.GetValue(step) is { } text ? NumberList.Read(text, "--step", dimension, system)[0] : 0;
                var chart = ControlChart.Judge(points, resolution);
                var w = work.Working;
                w.Line("points", "checks on the chart", points.Length, Dimension.Count, "the newest is judged by those before it");
                w.Line("centre", "centre line", chart.Limits.Centre, dimension, "mean of the earlier checks");
                w.Line("sigma", "standard deviation", chart.Limits.Sigma, dimension, chart.Limits.Basis == LimitsBasis.Settled ? "mean moving range/d2" : "widened: few checks yet", "NIST/SEMATECH e-Handbook, 6.3.2.2");
                w.Answer("upper_limit", "upper limit", chart.Limits.UpperLimit, dimension, "centre + 3 standard deviations");
                w.Answer("lower_limit", "lower limit", chart.Limits.LowerLimit, dimension, "centre - 3 standard deviations");
                w.Answer("newest_z", "newest check, from the centre", chart.Z[^1], Dimension.Ratio, "in standard deviations");
                w.Remark($"{chart.Answer}.");
                w.Remark(chart.Sentences);
                work.Words.Add(("answer", chart.Answer.ToString().ToLowerInvariant()));
                work.Words.Add(("rules", string.Join(" ", chart.Rules)));
            },
            "portwright calc chart \"152.1 151.8 152.3 152.0 151.9 152.2 153.6\"");
    }

    private static Command Scatter()
    {
        var groups = new Argument<string[]>("SET-UP") { Description = "the repeats of one set-up, \"221.1 221.4\"; one for each set-up", Arity = ArgumentArity.OneOrMore };
        var kind = Kind();
        return Make("scatter", "set-up scatter told apart from repeats, from one head set up again and again", [groups], [kind],
            (parsed, system, work) =>
            {
                var dimension = NumberList.Kind(parsed.GetValue(kind));
                var read = parsed.GetRequiredValue(groups).Select((t, i) => NumberList.Read(t, $"set-up {i + 1}", dimension, system)).ToArray();
                if (read.Length < 2 || read.All(r => r.Length < 2)) throw new Refusal("Set-up scatter needs at least two set-ups, and two repeats in one of them: \"221.1 221.4\" \"219.8 220.2\".");
                foreach (var (text, i) in parsed.GetRequiredValue(groups).Select((t, i) => (t, i))) work.Given.Add(($"set-up {i + 1}", text));
                var v = OneWayVariance.Of(read);
                var mean = RepeatScatter.Mean([.. read.SelectMany(r => r)]);
                const string source = "one-way analysis of variance (Searle, Casella, McCulloch 1992)";
                work.Working.Line("mean", "mean", mean, dimension, "of all readings");
                work.Working.Line("f", "F", v.F, Dimension.Ratio, "mean square between/within");
                work.Working.Answer("set_up_scatter", "between set-ups", v.StandardDeviationBetween, dimension, $"{Share(v.StandardDeviationBetween, mean)}, {v.EffectiveDegreesOfFreedomBetween.ToString("F1", CultureInfo.InvariantCulture)} degrees of freedom", source);
                work.Working.Answer("repeat_scatter", "of one reading, within a set-up", v.StandardDeviationWithin, dimension, $"{Share(v.StandardDeviationWithin, mean)}, {v.DegreesOfFreedomWithin} degrees of freedom", source);
                if (dimension is Dimension.Pressure or Dimension.Length)
                    work.Working.Remark("The flow through a plate goes as the square root of its differential: these numbers scatter twice as much as the flow does. The study of set-ups on the bench page reduces each reading first.");
                work.Words.Add(("set_up_degrees_of_freedom", v.EffectiveDegreesOfFreedomBetween.ToString("R", CultureInfo.InvariantCulture)));
            },
            "portwright calc scatter \"221.1 221.4\" \"219.8 220.2\" \"222.0 221.7\" \"220.5 220.9\"");
    }

    private static string Share(double part, double mean) =>
        mean == 0 ? "the mean is nothing" : string.Create(CultureInfo.InvariantCulture, $"{part / Math.Abs(mean) * 100:F2} percent of the mean");

    public static Option<string?> Kind() => new("--of") { Description = $"what the numbers are: {string.Join(", ", NumberList.Kinds.Keys)} (usual: flow)", HelpName = "WORD" };

    public static Command Make(string name, string summary, Argument[] arguments, Option[] options, Action<ParseResult, UnitSystem, ListWork> work, params string[] examples)
    {
        var command = new Command(name, summary);
        foreach (var argument in arguments) command.Arguments.Add(argument);
        foreach (var option in options) command.Options.Add(option);
        var (json, si) = (CommandWords.Json(), CommandWords.Si());
        command.Options.Add(json);
        command.Options.Add(si);
        command.SetAction(parsed =>
        {
            var system = parsed.GetValue(si) ? UnitSystem.Si : UnitSystem.UsCustomary;
            var done = new ListWork();
            try
            {
                work(parsed, system, done);
            }
            catch (ArgumentException wrong)
            {
                // The physics says what it needs; the number came from the command line.
                throw new Refusal($"calc {name}: {wrong.Message.Split('\n')[0].Split(" (Parameter", StringSplitOptions.None)[0]}");
            }
            done.Write(parsed.InvocationConfiguration.Output, name, summary, parsed.GetValue(json), system);
            return ExitCode.Done;
        });
        return command.Example(examples);
    }
}
