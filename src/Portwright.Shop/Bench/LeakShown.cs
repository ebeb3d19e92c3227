using Portwright.Physics.Statistics;

namespace Portwright.Shop.Bench;

/// <summary>
/// What a leak test shows. A scale that goes as the square of the flow shows nothing of a leak of some percent: then the leak is anything
/// under its first step, and not that much more or less than nothing.
/// </summary>
/// <param name="Area">Effective area as read, m2: what is taken off.</param>
/// <param name="Low">Effective area half a step under what was read, m2; negative infinity at the bottom of the scale.</param>
/// <param name="High">Half a step over it, m2.</param>
/// <param name="Doubt">The leak's own doubt, as a share of it.</param>
internal sealed record LeakShown(double Area, double Low, double High, double Doubt)
{
    /// <summary>No leak is told better than to this share of itself: between the test and the plate the lid is changed. Our own judgement, no source.</summary>
    public const double BestKnown = 0.05;

    /// <summary>Probability that a leak (m2, above zero) would have read as it did.</summary>
    public double Likelihood(double leak)
    {
        var spread = Math.Max(Doubt, BestKnown) * leak;
        return Student.Cdf((High - leak) / spread, double.PositiveInfinity) - Student.Cdf((Low - leak) / spread, double.PositiveInfinity);
    }
}
