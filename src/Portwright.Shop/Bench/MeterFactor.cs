using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;

namespace Portwright.Shop.Bench;

/// <summary>
/// What a range's flow must be multiplied by so that a check plate measures what its certificate says: certified effective area over
/// measured effective area, fitted over the readings of one calibration.
/// </summary>
/// <param name="Factor">The factor, with the doubt of certificate, reading and repeat.</param>
/// <param name="Each">The factor of each reading alone, in the order read.</param>
/// <param name="From">The calibration it comes from; null where the range was never calibrated and the factor is 1.</param>
public sealed record MeterFactor(Estimate Factor, IReadOnlyList<double> Each, Kept<Calibration>? From)
{
    /// <summary>The factor of a range on a day: its latest calibration up to that day, else the first one after it, else 1 with the
    /// bench card's accuracy.</summary>
    public static MeterFactor On(DateOnly day, Kept<BenchCard> bench, RangeCard range, Ledger ledger)
    {
        var calibrations = ledger.All<Calibration>()
            .Where(c => c.Fact.Bench == bench.Id && c.Fact.Range.Equals(range.Name, StringComparison.OrdinalIgnoreCase))
            .OrderBy(c => c.Fact.Date).ThenBy(c => c.Sequence)
            .ToList();
        var applies = calibrations.LastOrDefault(c => c.Fact.Date <= day) ?? calibrations.FirstOrDefault();
        return applies is null ? Uncalibrated(bench, range) : Fit(applies, bench);
    }

    /// <summary>Fits the factor of one calibration.</summary>
    /// <exception cref="ArgumentException">A reading names a plate or range that is not on the bench card.</exception>
    public static MeterFactor Fit(Kept<Calibration> calibration, Kept<BenchCard> bench)
    {
        var doubt = bench.Fact.Doubt;
        var each = calibration.Fact.Readings.Select((r, i) => PlateFactor(r, calibration.Fact.Air, bench, $"{Sources.CalibrationOf(calibration.Id)} reading {i}")).ToArray();
        if (each.Length == 0)
        {
            throw new ArgumentException($"The calibration of range {calibration.Fact.Range} on {calibration.Fact.Date:yyyy-MM-dd} has no reading.");
        }

        var mean = Estimate.Mean(each);
        var scatter = PooledScatter.WithCard([[.. each.Select(f => f.Value)]], doubt.RepeatScatter, doubt.RepeatDegrees);
        var repeat = new Contribution(
            Sources.CalibrationOf(calibration.Id),
            mean.Value * scatter.StandardDeviation / Math.Sqrt(each.Length),
            scatter.DegreesOfFreedom,
            ContributionKind.Calibration);
        // Putting the plate on the bench is a set-up too; the plate seals better than a head, but its scatter is not known apart.
        return new MeterFactor(mean.With(repeat), [.. each.Select(f => f.Value)], calibration);
    }

    private static MeterFactor Uncalibrated(Kept<BenchCard> bench, RangeCard range) => new(
        Estimate.Exact(1).With(new Contribution(
            Sources.MeterOf(bench.Id, range.Name), range.Accuracy, double.PositiveInfinity, ContributionKind.Calibration)),
        [],
        null);

    private static Estimate PlateFactor(PlateReading reading, RoomAir air, Kept<BenchCard> bench, string name)
    {
        var plate = bench.Fact.Plates.FirstOrDefault(p => p.Name.Equals(reading.Plate, StringComparison.OrdinalIgnoreCase))
            ?? throw new ArgumentException($"The bench card has no check plate named '{reading.Plate}'. Add it to the card, or correct the name.");
        var measured = PlateArea.Measure(reading, air, bench, Estimate.Exact(1), leakArea: null, name);
        return Estimate.Ratio(CertifiedArea.Of(bench.Id, plate), measured);
    }
}
