using Portwright.Physics.Statistics;
using Portwright.Physics.Uncertainty;

namespace Portwright.Shop.Bench;

/// <summary>
/// A leak that is steady, measured and taken off costs its doubt and nothing more. Worth a word is one that changed against its own
/// history, and one whose doubt alone is a share of the flow that matters.
/// </summary>
internal static class LeakWatch
{
    /// <summary>So many checks back a leak is compared with: older ones were of other seals. Our own choice.</summary>
    private const int History = 10;

    private const double Coverage = 0.95;

    /// <summary>What there is to say of the leak of a check, in a sentence; null where there is nothing.</summary>
    /// <param name="before">The checks before it, oldest first.</param>
    /// <param name="flowAtHand">Effective area the leak is taken off, m2.</param>
    public static string? Words(Estimate leak, IEnumerable<Morning> before, double flowAtHand)
    {
        var share = leak.Value / flowAtHand * 100;
        if (Change(leak, before) is { } change && Math.Abs(change) > BenchMorning.LeakWorthALook * flowAtHand)
        {
            return FormattableString.Invariant(
                $"The leak is {share:F1} percent of the smallest plate and was {(leak.Value - change) / flowAtHand * 100:F1} at the checks before: it changed. Look at the adapter, the plug hole and the clamps.");
        }

        var doubt = leak.StandardUncertainty / flowAtHand;
        return doubt > BenchMorning.LeakWorthALook
            ? FormattableString.Invariant(
                $"The leak is {share:F1} percent of the smallest plate, known to {doubt * 100:F1} percent of it: that doubt is in every flow. Make the leak smaller, or read it on a finer range.")
            : null;
    }

    /// <summary>How much more leaks now than at the checks before, m2; null where that is within its doubt, or nothing was read before.</summary>
    private static double? Change(Estimate leak, IEnumerable<Morning> before)
    {
        Estimate[] history = [.. before.Select(m => m.LeakArea).OfType<Estimate>().TakeLast(History)];
        if (history.Length == 0)
        {
            return null;
        }

        var change = leak - Estimate.Mean(history);
        // A leak that always came and went is not one that changed.
        var scatter = history.Length < 3 ? 0 : Student.TwoSidedFactor(Coverage, history.Length - 1) * Math.Sqrt((1 + 1.0 / history.Length) * Variance(history));
        return Math.Abs(change.Value) > Math.Max(change.Expanded(Coverage), scatter) ? change.Value : null;
    }

    private static double Variance(Estimate[] history)
    {
        var mean = history.Average(h => h.Value);
        return history.Sum(h => (h.Value - mean) * (h.Value - mean)) / (history.Length - 1);
    }
}
