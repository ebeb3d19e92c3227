using System.CommandLine;
using System.Globalization;
using Portwright.Cli.Terminal;
using Portwright.Physics.Statistics;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Units;

namespace Portwright.Cli.Calc;

/// <summary><c>calc line</c>: a straight calibration line, such as of a pressure sensor held against a manometer.</summary>
internal static class LineCommand
{
    private const string Source = "least squares, scatter in y alone";

    public static Command Make()
    {
        var points = new Argument<string[]>("X:Y") { Description = "what the sensor showed and what was true, plain numbers, \"0.512:2.01\"; at least three", Arity = ArgumentArity.OneOrMore };
        var at = new Option<string[]>("--at") { Description = "read the line at these x, inside what was tried", HelpName = "X", AllowMultipleArgumentsPerToken = true };
        return ListCommands.Make("line", "straight line through calibration points, with its doubt", [points], [at],
            (parsed, system, work) =>
            {
                var tried = parsed.GetRequiredValue(points).Select(Point).ToArray();
                foreach (var (x, y) in tried) work.Given.Add(($"x {Plain(x)}", Plain(y)));
                var line = StraightLineFit.Of([.. tried.Select(p => p.X)], [.. tried.Select(p => p.Y)]);
                var w = work.Working;
                w.Line("points", "points", line.Points, Dimension.Count, "as typed");
                w.Line("scatter", "scatter of a point about the line", line.ResidualStandardDeviation, Dimension.Ratio, "sqrt(sum of squares/(points - 2)), in the unit of y");
                work.Plus("slope", "slope", Estimated(line.Slope, line.StandardUncertaintyOfSlope), Dimension.Ratio, Source);
                work.Plus("intercept", "y at x = 0", Estimated(line.Intercept, line.StandardUncertaintyOfIntercept), Dimension.Ratio, Source);
                foreach (var text in parsed.GetValue(at) ?? [])
                    work.Plus("at_" + text.Replace('.', '_'), $"y at x = {text}", line.At(Number(text, "--at"), "line"), Dimension.Ratio, "level and slope independent at the mean of x (JCGM 100:2008, H.3)");

                Estimate Estimated(double value, double u) => new(value, [new("scatter of the points", u, line.DegreesOfFreedom, ContributionKind.Calibration)]);
            },
            "portwright calc line 0.512:2.01 1.498:5.98 2.503:10.02 3.497:13.99 --at 2.0");
    }

    private static (double X, double Y) Point(string typed)
    {
        var colon = typed.IndexOf(':', StringComparison.Ordinal);
        if (colon < 0) throw new Refusal($"\"{typed}\" is not a point. Type x and y with a colon between, as 0.512:2.01");
        return (Number(typed[..colon], "x"), Number(typed[(colon + 1)..], "y"));
    }

    private static double Number(string text, string field) => NumberList.Read(text, field, Dimension.Ratio, UnitSystem.Si)[0];

    private static string Plain(double value) => value.ToString("G6", CultureInfo.InvariantCulture);
}
