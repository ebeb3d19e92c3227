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
    /// <summary>Each plate read and whatever leaked beside it.</summary>
    internal IReadOnlyList<PlateTotal> Totals { get; private init; } = [];

    /// <summary>What the leak test shows; null where it was not made.</summary>
    internal LeakShown? Leak { get; private init; }

    /// <summary>One check, each plate and the leak; what cannot be an air flow is left out with a remark.</summary>
    /// <param name="factors">Whose factors are used: those that held when something else was read; null: those that held when the check was made.</param>
    public static Morning Measure(Kept<MorningCheck> check, Kept<BenchCard> bench, Ledger ledger, BenchMoment? factors = null)
    {
        ArgumentNullException.ThrowIfNull(check);
        ArgumentNullException.ThrowIfNull(bench);
        var when = BenchMoment.Of(ledger, check);
        var remarks = new List<string>();
        MeterFactor Of(string range, bool withLeak) => bench.Fact.RangeNamed(range) is { } card
            ? MeterFactor.At(factors ?? when, bench, card, ledger, withLeak)
            : new MeterFactor(Estimate.Exact(1), [], null, []);
        Estimate Factor(string range) => Of(range, withLeak: false).Factor;

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

        var (leak, shown) = Together([.. check.Fact.Leaks.Select((l, i) => Read($"The leak test ({l.Reading.Text})", () => LeakOf(l, i, check, bench, Factor(l.Range)))).OfType<LeakRead>()], check, bench);
        IReadOnlyList<(string Plate, string Range, Estimate Ratio)> Ratios(Func<string, Estimate> factor, Estimate? takenOff) =>
        [
            .. check.Fact.Plates
                .Select((p, i) => (p.Plate, p.Range, Ratio: Read($"Plate {p.Plate} ({p.Reading.Text})", () => RatioOf(p, i, check, bench, factor(p.Range), takenOff))))
                .Where(p => p.Ratio is not null)
                .GroupBy(p => (Plate: p.Plate.ToUpperInvariant(), Range: p.Range.ToUpperInvariant()))
                .Select(g => (g.First().Plate, g.First().Range, Together([.. g.Select(p => p.Ratio!)], $"{g.Key.Plate} on {g.Key.Range}", check, bench))),
        ];
        var ratios = Ratios(Factor, leak);
        string[] said = [.. remarks];
        PlateTotal Total((string Plate, string Range, Estimate Ratio) p) =>
            new(p.Plate, p.Range, bench.Fact.Plates.First(c => c.Name.Equals(p.Plate, StringComparison.OrdinalIgnoreCase)).EffectiveArea, p.Ratio, Of(p.Range, withLeak: true));
        return new Morning(check, when, ratios, leak, said)
        {
            Totals = [.. Ratios(r => Of(r, withLeak: true).Factor, null).Select(Total)],
            Leak = shown,
        };
    }

    private sealed record LeakRead(PlateReading Reading, Estimate Area, LeakShown Shown);

    private static LeakRead LeakOf(PlateReading reading, int index, Kept<MorningCheck> check, Kept<BenchCard> bench, Estimate factor) => new(
        reading,
        PlateArea.Measure(reading, check.Fact.Air, bench, factor, null, index == 0 ? $"leak of check {check.Id:N}" : $"leak {index} of check {check.Id:N}"),
        PlateArea.Leak(reading, check.Fact.Air, bench, factor));

    /// <summary>Of several leak tests those on the range that shows the smallest leak count, as their mean: a coarse scale's nothing says nothing against a fine one's something.</summary>
    private static (Estimate? Area, LeakShown? Shown) Together(IReadOnlyList<LeakRead> leaks, Kept<MorningCheck> check, Kept<BenchCard> bench)
    {
        if (leaks.MinBy(StepOf) is not { } finest) return (null, null);
        var mean = Estimate.Mean([.. leaks.Where(l => l.Reading.Range.Equals(finest.Reading.Range, StringComparison.OrdinalIgnoreCase)).Select(l => l.Area)]);
        return (mean.With(new Contribution(Sources.Leak(check.Id), mean.Value * bench.Fact.Doubt.Leak, double.PositiveInfinity, ContributionKind.Leak)), finest.Shown);

        static double StepOf(LeakRead leak) => leak.Shown.High - leak.Shown.Area;
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
