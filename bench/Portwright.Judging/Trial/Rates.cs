using Portwright.Judging.Faults;

namespace Portwright.Judging.Trial;

/// <summary>A rule on healthy jobs.</summary>
/// <param name="Half">Said falsely of a port above 0.5, so many times.</param>
/// <param name="Nine">Above 0.9.</param>
/// <param name="Certain">Above 0.995.</param>
/// <param name="True">Said above 0.9 and true, since castings scatter.</param>
/// <param name="Shops">Numbers of a few shops where it was false above 0.9.</param>
public sealed record RuleRate(string Key, int Half, int Nine, int Certain, int True, IReadOnlyList<long> Shops);

/// <summary>A fault of one size.</summary>
/// <param name="Found">Said with 0.9 or more of the right port with a key that counts.</param>
/// <param name="Sought">Said at all of it, above 0.5.</param>
/// <param name="False">Jobs of it where something else was falsely said above 0.9.</param>
/// <param name="Enough">Jobs of it whose readings suffice to tell it.</param>
/// <param name="FoundOfEnough">Found among those.</param>
public sealed record FaultRate(string Fault, Size Size, int Found, int Sought, int False, int Of, int Enough, int FoundOfEnough);

/// <summary>Of what was said with about that chance, how much was so.</summary>
/// <param name="Said">Chance said, on the mean at the base rate.</param>
/// <param name="Share">Happened, at the base rate.</param>
/// <param name="Of">Things said, as counted.</param>
public sealed record CalibrationRate(double From, double To, double Said, double Share, int Of);

/// <summary>The same of one rule: which one is off.</summary>
public sealed record RuleCalibration(string Key, IReadOnlyList<CalibrationRate> Classes);

/// <summary>What the trial counted.</summary>
/// <param name="AnyFalse">Share of healthy jobs with anything false above 0.9.</param>
/// <param name="AnyCertain">Above 0.995.</param>
/// <param name="AJob">False alarms above 0.9 a healthy job.</param>
/// <param name="Broke">Jobs on which the program gave an error instead of an answer, and the first of them.</param>
public sealed record Rates(
    int Healthy, double AnyFalse, double AnyCertain, double AJob, IReadOnlyList<RuleRate> Rules, IReadOnlyList<FaultRate> Faults, IReadOnlyList<CalibrationRate> Calibration,
    IReadOnlyList<RuleCalibration> ByRule, int Broke, string? FirstBroken)
{
    /// <summary>One job in two has one fault, drawn evenly over kinds and sizes: a guess of what comes through a door, stated so that the chances said can be held against something.</summary>
    public const double BaseRate = 0.5;

    private static readonly double[] Bounds = [0.50, 0.75, 0.90, 0.97, 0.99, 1.0];

    public static Rates Of(Run run)
    {
        ArgumentNullException.ThrowIfNull(run);
        var healthy = run.Healthy;
        var count = Math.Max(1, healthy.Count);
        var said = Weighed(run);
        var broken = healthy.Concat(run.Faulty).Where(t => t.Broke is not null).ToList();
        return new Rates(
            healthy.Count,
            healthy.Count(t => t.AnyFalse(0.9)) / (double)count,
            healthy.Count(t => t.AnyFalse(0.995)) / (double)count,
            healthy.Sum(t => t.Said.Count(s => s.Became == Became.False && s.Chance > 0.9)) / (double)count,
            [.. RulesOn(healthy)],
            [.. FaultsOf(run.Faulty)],
            [.. Calibrated(said)],
            [.. said.Where(s => s.Said.Chance > Bounds[0]).GroupBy(s => s.Said.Key).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => new RuleCalibration(g.Key, [.. Calibrated([.. g])]))],
            broken.Count,
            broken.FirstOrDefault() is { } first ? $"shop {first.Number}: {first.Broke}" : null);
    }

    private static IEnumerable<RuleRate> RulesOn(IReadOnlyList<Tried> healthy) =>
        from s in healthy.SelectMany(t => t.Said.Select(s => (t.Number, Said: s)))
        group s by s.Said.Key into rule
        orderby rule.Key
        let wrong = rule.Where(s => s.Said.Became == Became.False).ToList()
        select new RuleRate(
            rule.Key,
            wrong.Count(s => s.Said.Chance > 0.5),
            wrong.Count(s => s.Said.Chance > 0.9),
            wrong.Count(s => s.Said.Chance > 0.995),
            rule.Count(s => s.Said.Became == Became.True && s.Said.Chance > 0.9),
            [.. wrong.Where(s => s.Said.Chance > 0.9).Select(s => s.Number).Distinct().Take(8)]);

    private static IEnumerable<FaultRate> FaultsOf(IReadOnlyList<Tried> faulty) =>
        from t in faulty
        group t by (t.Fault!.Name, t.Size) into g
        select new FaultRate(g.Key.Name, g.Key.Size, g.Count(t => t.Found(0.9)), g.Count(t => t.Found(0.5)), g.Count(t => t.AnyFalse(0.9)), g.Count(),
            g.Count(t => t.ReadEnough), g.Count(t => t.ReadEnough && t.Found(0.9)));

    /// <summary>What was said, each thing with its weight: every healthy job weighs alike, every faulty one alike, and the two sorts as the base rate says.</summary>
    private static List<(Said Said, double Weight)> Weighed(Run run) =>
    [
        .. new[] { (Jobs: run.Healthy, Share: 1 - BaseRate), (Jobs: run.Faulty, Share: BaseRate) }
            .Where(s => s.Jobs.Count > 0)
            .SelectMany(s => s.Jobs.SelectMany(t => t.Said).Where(x => x.Became != Became.Fair).Select(x => (x, s.Share / s.Jobs.Count))),
    ];

    private static IEnumerable<CalibrationRate> Calibrated(IReadOnlyList<(Said Said, double Weight)> said)
    {
        for (var i = 0; i + 1 < Bounds.Length; i++)
        {
            var (from, to) = (Bounds[i], Bounds[i + 1]);
            var within = said.Where(s => s.Said.Chance > from && s.Said.Chance <= to).ToList();
            var weight = within.Sum(s => s.Weight);
            yield return new CalibrationRate(
                from, to,
                weight > 0 ? within.Sum(s => s.Weight * s.Said.Chance!.Value) / weight : double.NaN,
                weight > 0 ? within.Where(s => s.Said.Became == Became.True).Sum(s => s.Weight) / weight : double.NaN,
                within.Count);
        }
    }
}
