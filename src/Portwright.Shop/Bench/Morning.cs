using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;

namespace Portwright.Shop.Bench;

/// <summary>One check of the bench, measured: a point on the chart.</summary>
/// <param name="PlateRatio">Measured over certified effective area of each plate read: 1 when bench and plate agree.</param>
/// <param name="LeakArea">Effective area of the leak, m2; null where the leak test was not made.</param>
/// <param name="Remarks">Readings that cannot be an air flow and do not count, in sentences.</param>
public sealed record Morning(
    Kept<MorningCheck> Check,
    BenchMoment When,
    IReadOnlyList<(string Plate, string Range, Estimate Ratio)> PlateRatio,
    Estimate? LeakArea,
    IReadOnlyList<string> Remarks)
{
    /// <summary>One check, each plate and the leak; what cannot be an air flow is left out with a remark.</summary>
    /// <param name="factors">Whose factors are used: those that held when something else was read; null: those that held when the check was made.</param>
    public static Morning Measure(Kept<MorningCheck> check, Kept<BenchCard> bench, Ledger ledger, BenchMoment? factors = null)
    {
        ArgumentNullException.ThrowIfNull(check);
        ArgumentNullException.ThrowIfNull(bench);
        var when = BenchMoment.Of(ledger, check);
        var remarks = new List<string>();
        Estimate Factor(string range) => bench.Fact.RangeNamed(range) is { } card
            ? MeterFactor.At(factors ?? when, bench, card, ledger).Factor
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
            ? Read($"The leak test ({read.Reading.Text})", () => Leak(read, check, bench, Factor(read.Range)))
            : null;
        var ratios = check.Fact.Plates
            .Select((p, i) => (p.Plate, p.Range, Ratio: Read($"Plate {p.Plate} ({p.Reading.Text})", () => RatioOf(p, i, check, bench, Factor(p.Range), leak))))
            .Where(p => p.Ratio is not null)
            .GroupBy(p => (Plate: p.Plate.ToUpperInvariant(), Range: p.Range.ToUpperInvariant()))
            .Select(g => (g.First().Plate, g.First().Range, Together([.. g.Select(p => p.Ratio!)], $"{g.Key.Plate} on {g.Key.Range}", check, bench)))
            .ToList();
        return new Morning(check, when, ratios, leak, remarks);
    }

    private static Estimate Leak(PlateReading reading, Kept<MorningCheck> check, Kept<BenchCard> bench, Estimate factor)
    {
        var leak = PlateArea.Measure(reading, check.Fact.Air, bench, factor, null, $"leak of check {check.Id:N}");
        return leak.With(new Contribution(Sources.Leak(check.Id), leak.Value * bench.Fact.Doubt.Leak, double.PositiveInfinity, ContributionKind.Leak));
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
    /// A plate read more than once in one check is one point on its chart. The plate is set up anew each time, and the bench is
    /// allowed its shift from day to day: that is what the chart watches.
    /// </summary>
    private static Estimate Together(Estimate[] readings, string what, Kept<MorningCheck> check, Kept<BenchCard> bench)
    {
        var doubt = bench.Fact.Doubt;
        var ratio = Estimate.Mean(readings);
        return ratio
            .With(new Contribution(Sources.PlateRepeat(check.Id, what), ratio.Value * doubt.RepeatScatter / Math.Sqrt(readings.Length), doubt.RepeatDegrees ?? double.PositiveInfinity, ContributionKind.Repeat))
            .With(new Contribution(Sources.Day(bench.Id, check.Fact.Date), ratio.Value * doubt.Drift, double.PositiveInfinity, ContributionKind.Drift));
    }
}
