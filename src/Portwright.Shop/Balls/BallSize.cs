using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Shop.Balls;

/// <summary>A ball's diameter with its doubt; balls of one size share it, so that it cancels between places and against the pipe.</summary>
internal static class BallSize
{
    /// <summary>Standard uncertainty as a share: bought to size, painted, worn; common practice, no source.</summary>
    internal const double Doubt = 0.002;

    /// <summary>m.</summary>
    public static Estimate Of(Typed ball)
    {
        var diameter = ball.Si(Dimension.Length);
        return Estimate.Exact(diameter).With(new Contribution(Sources.Ball(diameter), diameter * Doubt, double.PositiveInfinity, ContributionKind.Geometry));
    }
}
