using Portwright.Physics.Statistics;
using Portwright.Shop.Record;

namespace Portwright.Shop.Bench;

/// <summary>
/// Scatter between set-ups of one head, told apart from the repeats within a set-up: one-way analysis of variance, random effects
/// (Searle, Casella, McCulloch 1992).
/// </summary>
/// <param name="SetUpShare">Standard deviation between set-ups as a share of the mean reading.</param>
/// <param name="SetUpDegrees">Its effective degrees of freedom (Satterthwaite); zero where the set-ups cannot be told from repeats.</param>
/// <param name="RepeatShare">Standard deviation of repeats within a set-up as a share.</param>
public sealed record SetUpScatter(double SetUpShare, double SetUpDegrees, double RepeatShare, double RepeatDegrees, int SetUps)
{
    /// <summary>From a study on the bench; null where there are fewer than two set-ups with a reading.</summary>
    public static SetUpScatter? Of(SetUpStudy study)
    {
        var groups = study.SetUps.Where(g => g.Count > 0).Select(g => g.Select(r => r.Value).ToArray()).ToArray();
        if (groups.Length < 2)
        {
            return null;
        }

        var mean = groups.SelectMany(g => g).Average();
        if (groups.All(g => g.Length == 1))
        {
            // One reading a set-up: repeat scatter is inside the set-up scatter and cannot be told apart.
            var values = groups.Select(g => g[0]).ToArray();
            var spread = Math.Sqrt(values.Sum(v => (v - mean) * (v - mean)) / (values.Length - 1));
            return new SetUpScatter(spread / mean, values.Length - 1, 0, 0, groups.Length);
        }

        var variance = OneWayVariance.Of(groups);
        return new SetUpScatter(
            variance.StandardDeviationBetween / mean,
            variance.EffectiveDegreesOfFreedomBetween,
            variance.StandardDeviationWithin / mean,
            variance.DegreesOfFreedomWithin,
            groups.Length);
    }

    /// <summary>The bench card with what the study found on it.</summary>
    public BenchDoubt PutOn(BenchDoubt doubt) => doubt with
    {
        SetUpScatter = SetUpShare,
        SetUpDegrees = Math.Max(1, SetUpDegrees),
        RepeatScatter = RepeatDegrees > 0 ? RepeatShare : doubt.RepeatScatter,
        RepeatDegrees = RepeatDegrees > 0 ? RepeatDegrees : doubt.RepeatDegrees,
    };
}
