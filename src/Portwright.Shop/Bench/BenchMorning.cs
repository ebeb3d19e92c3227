using Portwright.Physics.Statistics;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;

namespace Portwright.Shop.Bench;

/// <summary>One morning on the chart.</summary>
/// <param name="PlateRatio">Measured over certified effective area of each plate read: 1 when bench and plate agree.</param>
/// <param name="LeakArea">Effective area of the leak, m2; null where the leak test was not made.</param>
/// <param name="Remarks">Readings that cannot be an air flow and do not count, in sentences.</param>
public sealed record Morning(
    Kept<MorningCheck> Check,
    IReadOnlyList<(string Plate, string Range, Estimate Ratio)> PlateRatio,
    Estimate? LeakArea,
    IReadOnlyList<string> Remarks);

/// <summary>
/// The morning checks of a bench up to one day, each plate on its control chart, and what the last one says: go, look or stop.
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
    /// <summary>A leak over this share of the smallest plate's area asks for a look; common practice, no source.</summary>
    public const double LeakWorthALook = 0.005;

    /// <summary>A plate further off its certificate than the 95 percent doubt of plate and meter asks for a look: with several plates a
    /// sound bench does that now and then.</summary>
    private const double LookCoverage = 0.95;

    /// <summary>A plate further off than this is a stop, whatever the chart says: three standard deviations, as on the chart itself.</summary>
    private const double StopCoverage = 0.9973;

    /// <summary>Reads the mornings of a bench up to and with <paramref name="through"/>; null where there are none.</summary>
    public static BenchMorning? Of(Ledger ledger, Guid bench, DateOnly through)
    {
        var card = ledger.Get<BenchCard>(bench);
        var mornings = ledger.All<MorningCheck>()
            .Where(m => m.Fact.Bench == bench && m.Fact.Date <= through)
            .OrderBy(m => m.Fact.Date).ThenBy(m => m.Sequence)
            .Select(m => Measure(m, card, ledger))
            .ToList();
        if (mornings.Count == 0)
        {
            return null;
        }

        var charts = mornings
            .SelectMany(m => m.PlateRatio.Select(p => (p.Plate, p.Range, Point: (m.Check.Fact.Date, p.Ratio))))
            .GroupBy(p => (p.Plate, p.Range))
            .Select(g => PlateChart.Of(g.Key.Plate, g.Key.Range, [.. g.Select(p => p.Point)]))
            .ToList();
        var (answer, words) = Judge(mornings[^1], charts, card.Fact);
        return new BenchMorning(mornings, charts, answer, words);
    }

    /// <summary>One check, each plate and the leak; what cannot be an air flow is left out with a remark.</summary>
    public static Morning Measure(Kept<MorningCheck> check, Kept<BenchCard> bench, Ledger ledger)
    {
        var remarks = new List<string>();
        Estimate Factor(string range) => bench.Fact.RangeNamed(range) is { } card
            ? MeterFactor.On(check.Fact.Date, bench, card, ledger).Factor
            : Estimate.Exact(1);

        T? Read<T>(string what, Func<T> measure)
            where T : class
        {
            try
            {
                return measure();
            }
            catch (ArgumentException trouble)
            {
                remarks.Add($"{what} does not count: {Refusal.Sentence(trouble)}");
                return null;
            }
        }

        var leak = check.Fact.Leak is { } read
            ? Read($"The leak test ({read.Reading.Text})", () => PlateArea.Measure(read, check.Fact.Air, bench, Factor(read.Range), null, $"leak of check {check.Id:N}"))
            : null;
        var ratios = check.Fact.Plates
            .Select((p, i) => (p.Plate, p.Range, Ratio: Read($"Plate {p.Plate} ({p.Reading.Text})", () => RatioOf(p, i, check, bench, Factor(p.Range), leak))))
            .Where(p => p.Ratio is not null)
            .GroupBy(p => (Plate: p.Plate.ToUpperInvariant(), Range: p.Range.ToUpperInvariant()))
            .Select(g => (g.First().Plate, g.First().Range, Together([.. g.Select(p => p.Ratio!)], check, bench)))
            .ToList();
        return new Morning(check, ratios, leak, remarks);
    }

    /// <summary>Measured over certified effective area of one reading of a plate.</summary>
    private static Estimate RatioOf(PlateReading reading, int index, Kept<MorningCheck> check, Kept<BenchCard> bench, Estimate factor, Estimate? leak)
    {
        var plate = bench.Fact.Plates.FirstOrDefault(c => c.Name.Equals(reading.Plate, StringComparison.OrdinalIgnoreCase))
            ?? throw new ArgumentException($"The bench card has no check plate named '{reading.Plate}'. Add it to the card, or correct the name.");
        var measured = PlateArea.Measure(reading, check.Fact.Air, bench, factor, leak, $"plate {index} of check {check.Id:N}");
        return Estimate.Ratio(measured, CertifiedArea.Of(bench.Id, plate));
    }

    /// <summary>
    /// A plate read more than once in one morning is one point on its chart. The plate is set up anew each morning, and the bench is
    /// allowed its shift from day to day: that is what the chart watches.
    /// </summary>
    private static Estimate Together(Estimate[] readings, Kept<MorningCheck> check, Kept<BenchCard> bench)
    {
        var doubt = bench.Fact.Doubt;
        var ratio = Estimate.Mean(readings);
        return ratio
            .With(new Contribution(Sources.Repeat(check.Id, 0), ratio.Value * doubt.RepeatScatter / Math.Sqrt(readings.Length), doubt.RepeatDegrees ?? double.PositiveInfinity, ContributionKind.Repeat))
            .With(new Contribution(Sources.Day(bench.Id, check.Fact.Date), ratio.Value * doubt.Drift, double.PositiveInfinity, ContributionKind.Drift));
    }

    private static (ChartAnswer Answer, IReadOnlyList<string> Words) Judge(Morning last, IReadOnlyList<PlateChart> charts, BenchCard card)
    {
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
        else if (card.Plates.Count > 0 && leak.Value > LeakWorthALook * card.Plates.Min(p => p.EffectiveArea))
        {
            var share = leak.Value / card.Plates.Min(p => p.EffectiveArea) * 100;
            Say(ChartAnswer.Look, FormattableString.Invariant(
                $"The leak is {share:F1} percent of the smallest plate. Look for it at the adapter, the plug hole and the clamps (common practice, no source)."));
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
