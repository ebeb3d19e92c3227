using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;

namespace Portwright.Shop.Bench;

/// <summary>
/// What a range's flow must be multiplied by so that a check plate measures what its certificate says: certified effective area over
/// measured effective area, fitted over the readings of one calibration.
/// </summary>
/// <param name="Factor">The factor, with the doubt of certificate, reading and repeat.</param>
/// <param name="Each">The factor of each reading alone, in the order read.</param>
/// <param name="From">The calibration it comes from; null where the range was never calibrated and the factor is 1.</param>
/// <param name="Remarks">What had to be assumed, in sentences.</param>
public sealed record MeterFactor(Estimate Factor, IReadOnlyList<double> Each, Kept<Calibration>? From, IReadOnlyList<string> Remarks)
{
    /// <summary>
    /// What a bench may leak through its own seals with a plate on it, as a share of the plate, where no leak test was made with the
    /// calibration: anything from nothing to this is as likely. Common practice, no source.
    /// </summary>
    public const double LeakNotTested = 0.005;

    /// <summary>
    /// The factor of a range on a day: its latest calibration up to that day, else the first one after it, with the meter's own accuracy
    /// left in the doubt, else 1 with the bench card's accuracy.
    /// </summary>
    public static MeterFactor On(DateOnly day, Kept<BenchCard> bench, RangeCard range, Ledger ledger)
    {
        var calibrations = ledger.All<Calibration>()
            .Where(c => c.Fact.Bench == bench.Id && c.Fact.Range.Equals(range.Name, StringComparison.OrdinalIgnoreCase))
            .OrderBy(c => c.Fact.Date).ThenBy(c => c.Sequence)
            .ToList();
        var applies = calibrations.LastOrDefault(c => c.Fact.Date <= day) ?? calibrations.FirstOrDefault();
        if (applies is null)
        {
            return new MeterFactor(Estimate.Exact(1).With(Accuracy(bench, range, 1)), [], null, []);
        }

        try
        {
            var fitted = Fit(applies, bench);
            return applies.Fact.Date <= day ? fitted : fitted with
            {
                // Nobody knows what the meter read before it was ever checked.
                Factor = fitted.Factor.With(Accuracy(bench, range, fitted.Factor.Value)),
                Remarks = [.. fitted.Remarks, FormattableString.Invariant(
                    $"Range {range.Name} was first calibrated on {applies.Fact.Date:yyyy-MM-dd}, after this day: that factor is used, and the meter's own accuracy stays in the doubt.")],
            };
        }
        catch (ArgumentException trouble)
        {
            return new MeterFactor(Estimate.Exact(1).With(Accuracy(bench, range, 1)), [], null, [FormattableString.Invariant(
                $"The calibration of range {range.Name} on {applies.Fact.Date:yyyy-MM-dd} was left out: {Refusal.Sentence(trouble)}")]);
        }
    }

    /// <summary>Fits the factor of one calibration.</summary>
    /// <exception cref="ArgumentException">A reading names a plate or range that is not on the bench card, or cannot be an air flow.</exception>
    public static MeterFactor Fit(Kept<Calibration> calibration, Kept<BenchCard> bench)
    {
        var doubt = bench.Fact.Doubt;
        var fact = calibration.Fact;
        if (fact.Readings.Count == 0)
        {
            throw new ArgumentException($"The calibration of range {fact.Range} on {fact.Date:yyyy-MM-dd} has no reading.");
        }

        var leak = fact.Leak is { } read
            ? PlateArea.Measure(read, fact.Air, bench, Estimate.Exact(1), null, $"{Sources.CalibrationOf(calibration.Id)} leak")
            : null;
        var each = fact.Readings.Select((r, i) => PlateFactor(r, fact, leak, bench, $"{Sources.CalibrationOf(calibration.Id)} reading {i}")).ToArray();
        var mean = Estimate.Mean(each);
        var scatter = PooledScatter.WithCard([[.. each.Select(f => f.Value)]], doubt.RepeatScatter, doubt.RepeatDegrees);
        // Putting the plate on the bench is a set-up too; the plate seals better than a head, but its scatter is not known apart.
        var factor = mean.With(new Contribution(
            Sources.CalibrationOf(calibration.Id),
            mean.Value * scatter.StandardDeviation / Math.Sqrt(each.Length),
            scatter.DegreesOfFreedom,
            ContributionKind.Calibration));
        double[] values = [.. each.Select(f => f.Value)];
        return leak is not null
            ? new MeterFactor(factor, values, calibration, [])
            : new MeterFactor(
                factor.With(new Contribution(
                    $"{Sources.CalibrationOf(calibration.Id)} leak", mean.Value * LeakNotTested / Math.Sqrt(3), double.PositiveInfinity, ContributionKind.Leak)),
                values,
                calibration,
                [FormattableString.Invariant($"Range {fact.Range} was calibrated on {fact.Date:yyyy-MM-dd} without a leak test: what leaked counts as flow of the plate, and stays in the doubt.")]);
    }

    private static Contribution Accuracy(Kept<BenchCard> bench, RangeCard range, double factor) =>
        new(Sources.MeterOf(bench.Id, range.Name), factor * range.Accuracy, double.PositiveInfinity, ContributionKind.Calibration);

    private static Estimate PlateFactor(PlateReading reading, Calibration calibration, Estimate? leak, Kept<BenchCard> bench, string name)
    {
        var plate = bench.Fact.Plates.FirstOrDefault(p => p.Name.Equals(reading.Plate, StringComparison.OrdinalIgnoreCase))
            ?? throw new ArgumentException($"The bench card has no check plate named '{reading.Plate}'. Add it to the card, or correct the name.");
        // A leak read on the range being calibrated is out by the same factor as the plate; one read on another range is taken as it reads.
        var ownLeak = calibration.Leak is { } l && l.Range.Equals(calibration.Range, StringComparison.OrdinalIgnoreCase);
        var measured = PlateArea.Measure(reading, calibration.Air, bench, Estimate.Exact(1), ownLeak ? leak : null, name);
        var certified = CertifiedArea.Of(bench.Id, plate);
        return Estimate.Ratio(leak is not null && !ownLeak ? certified + leak : certified, measured);
    }
}
