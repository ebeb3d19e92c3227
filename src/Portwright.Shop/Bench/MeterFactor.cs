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
/// <param name="When">When that calibration was made.</param>
/// <param name="Since">When on the same day the range was calibrated after what was read; what was read keeps its factor. Null where it was not.</param>
public sealed record MeterFactor(
    Estimate Factor,
    IReadOnlyList<double> Each,
    Kept<Calibration>? From,
    IReadOnlyList<string> Remarks,
    BenchMoment? When = null,
    BenchMoment? Since = null)
{
    /// <summary>
    /// What a bench may leak through its own seals with a plate on it, as a share of the plate, where no leak test was made with the
    /// calibration: anything from nothing to this is as likely. Common practice, no source.
    /// </summary>
    public const double LeakNotTested = 0.005;

    /// <summary>
    /// Standard uncertainty, as a share, of carrying a factor from one hole to another that is read on the same instrument: the instrument's
    /// error is the same, the hole's is not. A range whose own accuracy is better costs that. Common practice, no source.
    /// </summary>
    public const double AnotherHole = 0.01;

    /// <summary>
    /// The factor to be told: that of the scale as the card has it. What of the scale was only assumed moves factor and reading against each
    /// other and stays out of their product.
    /// </summary>
    public Estimate OfTheScale => new(Factor.Value, [.. Factor.Contributions.Where(c => !Sources.IsAssumed(c.Source))]);

    /// <summary>
    /// The factor of a range when something was read: its latest calibration before that (<see cref="BenchMoment"/> says what comes before
    /// within a day), else the first one after it, with the meter's own accuracy left in the doubt, else 1 with the bench card's accuracy.
    /// </summary>
    /// <param name="withLeak">True: what leaked is left in, for a flow in which it is left as well.</param>
    public static MeterFactor At(BenchMoment when, Kept<BenchCard> bench, RangeCard range, Ledger ledger, bool withLeak = false)
    {
        var calibrations = Calibrated.Of(ledger, bench, range.Name);
        // Of the same day and no place in its order: the day's calibration holds for all of it.
        bool Holds(Calibrated c) => c.When.IsBefore(when) || (c.When.Day == when.Day && !c.When.IsOrderedWith(when));
        var applies = calibrations.LastOrDefault(Holds) ?? calibrations.FirstOrDefault();
        if (applies is null)
        {
            return new MeterFactor(Estimate.Exact(1).With(Accuracy(bench, range, 1)), [], null, []);
        }

        MeterFactor fitted;
        try
        {
            fitted = Carried(Fit(applies.Calibration, bench, withLeak), applies, bench, range);
        }
        catch (ArgumentException trouble)
        {
            return new MeterFactor(Estimate.Exact(1).With(Accuracy(bench, range, 1)), [], null, [FormattableString.Invariant(
                $"The calibration of range {applies.Calibration.Fact.Range} on {applies.When.Day:yyyy-MM-dd} was left out: {Refusal.Sentence(trouble)}")]);
        }

        var since = calibrations.FirstOrDefault(c => c.When.Day == when.Day && when.IsBefore(c.When));
        fitted = fitted with { When = applies.When, Since = since == applies ? null : since?.When };
        if (!Holds(applies))
        {
            var after = applies.When.Day == when.Day
                ? $"on this day{applies.When.Clock}, after this was read"
                : FormattableString.Invariant($"on {applies.When.Day:yyyy-MM-dd}, after this day");
            return fitted with
            {
                // Nobody knows what the meter read before it was ever checked.
                Factor = fitted.Factor.With(Accuracy(bench, range, fitted.Factor.Value)),
                Remarks = [.. fitted.Remarks, $"Range {range.Name} was first calibrated {after}: that factor is used, and the meter's own accuracy stays in the doubt."],
            };
        }

        return applies.When.Day != when.Day || applies.When.IsBefore(when) ? fitted : fitted with
        {
            Remarks = [.. fitted.Remarks, FormattableString.Invariant(
                $"Range {range.Name} was calibrated on the day of these readings, {applies.When.Day:yyyy-MM-dd}, and one of the two was written down on another day: which came first is not known, and that calibration is used.")],
        };
    }

    /// <summary>The factor of another range of the same instrument, with what it costs to carry it; the range's own as it is.</summary>
    private static MeterFactor Carried(MeterFactor fitted, Calibrated from, Kept<BenchCard> bench, RangeCard range)
    {
        var other = from.Calibration.Fact.Range;
        if (other.Equals(range.Name, StringComparison.OrdinalIgnoreCase))
        {
            return fitted;
        }

        var share = Math.Min(AnotherHole, range.Accuracy);
        return fitted with
        {
            Factor = fitted.Factor.With(new(Sources.MeterOf(bench.Id, range.Name), fitted.Factor.Value * share, double.PositiveInfinity, ContributionKind.Calibration)),
            Remarks = [.. fitted.Remarks, FormattableString.Invariant(
                $"Range {range.Name} was never calibrated. It is read on the same instrument as range {other}, whose calibration of {from.When.Day:yyyy-MM-dd} is used with {share * 100:0.#} percent more doubt for another hole (common practice, no source).")],
        };
    }

    /// <summary>Fits the factor of one calibration.</summary>
    /// <param name="withLeak">True: what leaked counts as flow of the plate, and nothing is doubted for it.</param>
    /// <exception cref="ArgumentException">A reading names a plate or range that is not on the bench card, or cannot be an air flow.</exception>
    public static MeterFactor Fit(Kept<Calibration> calibration, Kept<BenchCard> bench, bool withLeak = false)
    {
        var doubt = bench.Fact.Doubt;
        var fact = calibration.Fact;
        if (fact.Readings.Count == 0)
        {
            throw new ArgumentException($"The calibration of range {fact.Range} on {fact.Date:yyyy-MM-dd} has no reading.");
        }

        var leak = !withLeak && fact.Leak is { } read
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
        return leak is not null || withLeak
            ? new MeterFactor(factor, values, calibration, [])
            : new MeterFactor(
                factor.With(new Contribution(
                    $"{Sources.CalibrationOf(calibration.Id)} leak", mean.Value * LeakNotTested / Math.Sqrt(3), Kind: ContributionKind.Leak, Shape: InputShape.Rectangular)),
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
