using Portwright.Physics.Statistics;
using Portwright.Shop.Record;

namespace Portwright.Shop.Bench;

/// <summary>
/// The checks of a bench up to one of them, each plate on its control chart, and what the last one says: go, look or stop. A verdict
/// stands as it was given, with the factor that held then; what is known since is said beside it.
/// </summary>
/// <param name="Charts">One chart a plate and range, in the order first read.</param>
/// <param name="Answer">The most cautious answer of all charts and the leak.</param>
/// <param name="Words">Why, in sentences.</param>
public sealed record BenchMorning(
    IReadOnlyList<Morning> Mornings,
    IReadOnlyList<PlateChart> Charts,
    ChartAnswer Answer,
    IReadOnlyList<string> Words)
{
    /// <summary>A change of the leak, or a doubt of it, over this share of the flow it is taken off asks for a look; common practice, no source.</summary>
    public const double LeakWorthALook = 0.005;

    /// <summary>A plate further off its certificate than the 95 percent doubt of plate and meter asks for a look: with several plates a
    /// sound bench does that now and then.</summary>
    private const double LookCoverage = 0.95;

    /// <summary>A plate further off than this is a stop, whatever the chart says: three standard deviations, as on the chart itself.</summary>
    private const double StopCoverage = 0.9973;

    /// <summary>The checks of a bench up to and with a day; null where there are none.</summary>
    public static BenchMorning? Of(Ledger ledger, Guid bench, DateOnly through) => Of(ledger, bench, BenchMoment.EndOf(through));

    /// <summary>
    /// The checks up to the one that speaks for a reading: the last of its day before it, where there is none the first of its day after it,
    /// and where the day has none the last there was. Null where there is none at all.
    /// </summary>
    public static BenchMorning? Of(Ledger ledger, Guid bench, BenchMoment read)
    {
        ArgumentNullException.ThrowIfNull(ledger);
        var card = ledger.Get<BenchCard>(bench);
        var checks = Checks(ledger, bench);
        if ((Speaking(checks, read) ?? checks.LastOrDefault(c => c.When.Day < read.Day).Check) is not { } last)
        {
            return null;
        }

        var mornings = checks.TakeWhile(c => c.Check.Id != last.Id).Select(c => c.Check).Append(last).Select(c => Morning.Measure(c, card, ledger)).ToList();
        var charts = mornings
            .SelectMany(m => m.PlateRatio.Select(p => (p.Plate, p.Range, Point: (m.Check.Fact.Date, p.Ratio))))
            .GroupBy(p => (p.Plate, p.Range))
            .Select(g => PlateChart.Of(g.Key.Plate, g.Key.Range, [.. g.Select(p => p.Point)]))
            .ToList();
        var (answer, words) = Judge(mornings, charts, card.Fact);
        return new BenchMorning(mornings, charts, answer, [.. words, .. KnownSince(mornings[^1], card, ledger, read.Day)]);
    }

    /// <summary>The check of its own day that speaks for a reading; null where none was made that day.</summary>
    internal static Kept<MorningCheck>? SpeakingOn(Ledger ledger, Guid bench, BenchMoment read) => Speaking(Checks(ledger, bench), read);

    /// <summary>All checks of a bench in the order made.</summary>
    internal static IReadOnlyList<(Kept<MorningCheck> Check, BenchMoment When)> Checks(Ledger ledger, Guid bench) =>
    [
        .. ledger.All<MorningCheck>()
            .Where(m => m.Fact.Bench == bench)
            .Select(m => (m, BenchMoment.Of(ledger, m)))
            .OrderBy(m => m.Item2.Day).ThenBy(m => m.Item2.Sequence),
    ];

    private static Kept<MorningCheck>? Speaking(IReadOnlyList<(Kept<MorningCheck> Check, BenchMoment When)> checks, BenchMoment read) =>
        checks.LastOrDefault(c => c.When.Day == read.Day && (c.When.IsBefore(read) || !c.When.IsOrderedWith(read))).Check
        ?? checks.FirstOrDefault(c => c.When.Day == read.Day).Check;

    /// <summary>What a calibration made after the check makes of the same plate: beside the verdict, not in its place.</summary>
    private static IEnumerable<string> KnownSince(Morning check, Kept<BenchCard> card, Ledger ledger, DateOnly through)
    {
        foreach (var (plate, range, _) in check.PlateRatio)
        {
            if (Calibrated.Of(ledger, card, range).LastOrDefault(c => check.When.IsBefore(c.When) && c.When.Day <= through) is not { } since
                || Morning.Measure(check.Check, card, ledger, BenchMoment.EndOf(since.When.Day)).PlateRatio.FirstOrDefault(p => p.Plate == plate && p.Range == range) is not { Ratio: { } now })
            {
                continue;
            }

            var day = since.When.Day == check.When.Day ? "" : FormattableString.Invariant($" on {since.When.Day:yyyy-MM-dd}");
            yield return FormattableString.Invariant(
                $"Range {range} was calibrated{day}{since.When.Clock} since: with that factor the same reading of plate {plate} is {Math.Abs(now.Value - 1) * 100:F1} percent {(now.Value < 1 ? "under" : "over")} its certificate.");
        }
    }

    private static (ChartAnswer Answer, IReadOnlyList<string> Words) Judge(IReadOnlyList<Morning> mornings, IReadOnlyList<PlateChart> charts, BenchCard card)
    {
        var last = mornings[^1];
        var answer = ChartAnswer.Go;
        var words = new List<string>();

        void Say(ChartAnswer level, string sentence)
        {
            answer = (ChartAnswer)Math.Max((int)answer, (int)level);
            words.Add(sentence);
        }

        foreach (var (plate, range, ratio) in last.PlateRatio)
        {
            var off = Math.Abs(ratio.Value - 1);
            if (off > ratio.Expanded(LookCoverage))
            {
                var stop = off > ratio.Expanded(StopCoverage);
                Say(stop ? ChartAnswer.Stop : ChartAnswer.Look, FormattableString.Invariant(
                    $"Plate {plate} on range {range} reads {off * 100:F1} percent {(ratio.Value > 1 ? "over" : "under")} its certificate, more than their doubt allows ({ratio.Expanded(LookCoverage) * 100:F1} percent). ")
                    + (stop ? "Look for a wrong plate, a leak, fluid off zero, or a bad calibration before testing." : "Read it again before testing; a sound bench does that one morning in twenty."));
            }

            var chart = charts.First(c => c.Plate == plate && c.Range == range);
            if (chart.Answer == ChartAnswer.Go)
            {
                // A point where it always lies needs no words.
                continue;
            }

            foreach (var sentence in chart.Words)
            {
                Say(chart.Answer, sentence);
            }
        }

        foreach (var remark in last.Remarks)
        {
            Say(ChartAnswer.Look, remark);
        }

        if (last.LeakArea is not { } leak)
        {
            Say(ChartAnswer.Look, "The leak test was not made this morning. Close the opening off, pull the test pressure, and read.");
        }
        else if (card.Plates.Count > 0 && LeakWatch.Words(leak, mornings.SkipLast(1), card.Plates.Min(p => p.EffectiveArea)) is { } changed)
        {
            Say(ChartAnswer.Look, changed);
        }

        if (last.PlateRatio.Count == 0)
        {
            Say(ChartAnswer.Look, "No check plate was read this morning: nothing proves the meter. Read one plate.");
        }

        if (answer == ChartAnswer.Go && words.Count == 0)
        {
            words.Add("Leak and plate read as they always do. Fit to work.");
        }

        return (answer, words);
    }
}
