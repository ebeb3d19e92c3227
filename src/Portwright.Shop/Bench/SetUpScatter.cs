using Portwright.Physics.Metering;
using Portwright.Physics.Statistics;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Shop.Bench;

/// <summary>
/// Scatter between set-ups of one head, told apart from the repeats within a set-up: one-way analysis of variance of the effective areas,
/// random effects (Searle, Casella, McCulloch 1992). The numbers on the scale are no measure of it: where they go as the square of the
/// flow, they scatter twice as much.
/// </summary>
/// <param name="SetUpShare">Standard deviation between set-ups as a share of the mean area.</param>
/// <param name="SetUpDegrees">Its effective degrees of freedom (Satterthwaite); zero where the set-ups cannot be told from repeats.</param>
/// <param name="RepeatShare">Standard deviation of repeats within a set-up as a share.</param>
/// <param name="Remarks">What had to be assumed or left out, in sentences.</param>
public sealed record SetUpScatter(double SetUpShare, double SetUpDegrees, double RepeatShare, double RepeatDegrees, int SetUps, IReadOnlyList<string> Remarks)
{
    /// <summary>From a study on the bench; null where there are fewer than two set-ups with a reading that counts.</summary>
    /// <exception cref="ArgumentException">The study's range is not on the bench card, or is not stated and what was read is not in proportion to the flow.</exception>
    public static SetUpScatter? Of(SetUpStudy study, Kept<BenchCard> bench)
    {
        ArgumentNullException.ThrowIfNull(study);
        ArgumentNullException.ThrowIfNull(bench);
        var remarks = new List<string>();
        var groups = Areas(study, bench, remarks).Where(g => g.Length > 0).ToArray();
        if (groups.Length < 2)
        {
            return null;
        }

        var mean = groups.SelectMany(g => g).Average();
        if (!(mean > 0))
        {
            throw new ArgumentException("The readings of the study show no flow: nothing can be a share of it. Look at the range and the unit.", nameof(study));
        }

        if (groups.All(g => g.Length == 1))
        {
            // One reading a set-up: repeat scatter is inside the set-up scatter and cannot be told apart.
            var values = groups.Select(g => g[0]).ToArray();
            var spread = Math.Sqrt(values.Sum(v => (v - mean) * (v - mean)) / (values.Length - 1));
            return new SetUpScatter(spread / mean, values.Length - 1, 0, 0, groups.Length, remarks);
        }

        var variance = OneWayVariance.Of(groups);
        return new SetUpScatter(
            variance.StandardDeviationBetween / mean,
            variance.EffectiveDegreesOfFreedomBetween,
            variance.StandardDeviationWithin / mean,
            variance.DegreesOfFreedomWithin,
            groups.Length,
            remarks);
    }

    /// <summary>The bench card with what the study found on it.</summary>
    public BenchDoubt PutOn(BenchDoubt doubt) => doubt with
    {
        SetUpScatter = SetUpShare,
        SetUpDegrees = Math.Max(1, SetUpDegrees),
        RepeatScatter = RepeatDegrees > 0 ? RepeatShare : doubt.RepeatScatter,
        RepeatDegrees = RepeatDegrees > 0 ? RepeatDegrees : doubt.RepeatDegrees,
    };

    /// <summary>Each reading's effective area; where its range is not known, the reading itself, as a share of the flow will do.</summary>
    private static IEnumerable<double[]> Areas(SetUpStudy study, Kept<BenchCard> bench, List<string> remarks)
    {
        if (RangeOf(study, bench.Fact, remarks) is not { } range)
        {
            return study.SetUps.Select(g => g.Select(r => r.Value).ToArray());
        }

        // One factor for all readings of the range: it is not in their shares.
        var room = study.Air is { } air ? RoomState.Of(air, bench) : RoomState.Assumed(bench.Fact);
        var inputs = new ReadingInputs(bench, range, room, Estimate.Exact(1), null);
        var pressure = study.TestPressure ?? Typed.Of(bench.Fact.RestatedAt, "Pa");
        double? Area(Typed reading)
        {
            try
            {
                return inputs.Reduce(reading, pressure, study.Direction, null, null, "").EffectiveArea.Value;
            }
            catch (ArgumentException trouble)
            {
                remarks.Add($"The reading {reading.Text} of the study cannot be an air flow on range {range.Name} and does not count: {Refusal.Sentence(trouble)}");
                return null;
            }
        }

        return [.. study.SetUps.Select(g => g.Select(Area).OfType<double>().ToArray())];
    }

    private static RangeCard? RangeOf(SetUpStudy study, BenchCard card, List<string> remarks)
    {
        if (study.Range.Length > 0)
        {
            return card.RangeNamed(study.Range)
                ?? throw new ArgumentException($"The bench card has no range named '{study.Range}'. Add it to the card, or study the set-ups again on one that is.", nameof(study));
        }

        if (card.Ranges is [var only])
        {
            return only;
        }

        var unit = study.SetUps.SelectMany(g => g).Select(r => r.Unit).FirstOrDefault() ?? "";
        var read = card.Ranges.Where(r => r.Unit == unit).ToList();
        if (read.Count == 0 || !read.All(ShowsFlow))
        {
            throw new ArgumentException(FormattableString.Invariant(
                $"The study of {study.Head} on {study.Date:yyyy-MM-dd} does not say on which range it was read, and a number in {(unit.Length > 0 ? unit : "that unit")} need not be in proportion to the flow. Type the study again and choose its range."), nameof(study));
        }

        remarks.Add(FormattableString.Invariant(
            $"The study of {study.Head} on {study.Date:yyyy-MM-dd} does not say on which range it was read: its readings in {unit} are taken as shares of the flow."));
        return null;
    }

    /// <summary>True where twice the reading is twice the flow.</summary>
    private static bool ShowsFlow(RangeCard range) => range.Meter is DirectCard or LaminarCard or PercentCard { Scale: RangeScale.SquareRoot, Tube: null };
}
