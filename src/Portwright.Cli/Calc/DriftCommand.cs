using System.CommandLine;
using Portwright.Cli.Terminal;
using Portwright.Physics.Statistics;
using Portwright.Shop.Units;

namespace Portwright.Cli.Calc;

/// <summary><c>calc drift</c>: a moving average of the daily check, which sees a slow drift before a single check does.</summary>
internal static class DriftCommand
{
    private const string Source = "NIST/SEMATECH e-Handbook, 6.3.2.4";

    public static Command Make()
    {
        var values = new Argument<string>("VALUES") { Description = "the daily check in order of time, the newest last" };
        var centre = new Option<string?>("--centre") { Description = "what the check should read (usual: the mean of the earlier ones)", HelpName = "VALUE" };
        var sigma = new Option<string?>("--sigma") { Description = "standard deviation of single checks, with --centre (usual: from the earlier ones)", HelpName = "VALUE" };
        var weight = new Option<string?>("--weight") { Description = "weight of the newest check, above 0 to 1 (usual: 0.3)", HelpName = "NUMBER" };
        var step = new Option<string?>("--step") { Description = "smallest step the reading shows", HelpName = "VALUE" };
        var kind = ListCommands.Kind();
        return ListCommands.Make("drift", "moving average of a daily check: has the bench drifted?", [values], [centre, sigma, weight, step, kind],
            (parsed, system, work) =>
            {
                var dimension = NumberList.Kind(parsed.GetValue(kind));
                double? Find(Option<string?> option, Dimension of) => parsed.GetValue(option) is { } text ? NumberList.Read(text, option.Name, of, system)[0] : null;
                var points = NumberList.Read(parsed.GetRequiredValue(values), "values", dimension, system);
                var limits = Limits(points, Find(centre, dimension), Find(sigma, dimension), Find(step, dimension) ?? 0);
                var chart = ExponentiallyWeightedChart.Of(points, limits.Centre, limits.Sigma, Find(weight, Dimension.Ratio) ?? 0.3);
                var w = work.Working;
                w.Line("points", "checks in the average", points.Length, Dimension.Count, "as typed");
                w.Line("centre", "centre line", chart.Start, dimension, limits.Points == 0 ? "as typed" : "mean of the earlier checks");
                w.Line("sigma", "standard deviation of single checks", chart.Sigma, dimension, limits.Points == 0 ? "as typed" : "from the earlier checks", "NIST/SEMATECH e-Handbook, 6.3.2.2");
                w.Line("run_length_of_single_checks", "single checks until they show a drift of one standard deviation", AverageRunLength.Of(1), Dimension.Ratio, "on average, beyond 3 standard deviations");
                w.Answer("average", "moving average", chart.Averages[^1], dimension, "weight x check + (1 - weight) x average before", Source);
                w.Answer("upper_limit", "its upper limit", chart.Start + chart.HalfWidthAt(points.Length), dimension, "at this many checks", Source);
                w.Answer("lower_limit", "its lower limit", chart.Start - chart.HalfWidthAt(points.Length), dimension, "at this many checks", Source);
                w.Remark(chart.Signals ? "Drifted: the average lies beyond its limits. Find what has changed before testing." : "No drift seen: the average lies inside its limits.");
                work.Words.Add(("answer", chart.Signals ? "drifted" : "no drift"));
            },
            "portwright calc drift \"152.0 151.8 152.3 152.1 152.5 152.4 152.7 152.6\" --centre 152.0 --sigma 0.25");
    }

    private static ChartLimits Limits(double[] points, double? centre, double? sigma, double step)
    {
        if (centre is { } c && sigma is { } s) return ChartLimits.Stated(c, s);
        if (centre is not null || sigma is not null) throw new Refusal("--centre and --sigma go together: type both, or neither.");
        var limits = ChartLimits.From(points.AsSpan(0, points.Length - 1), step);
        return limits.Sigma > 0 ? limits : throw new Refusal($"The {points.Length - 1} earlier checks set no limits: type {ChartLimits.FewestPoints} or more that scatter, or --centre and --sigma.");
    }
}
