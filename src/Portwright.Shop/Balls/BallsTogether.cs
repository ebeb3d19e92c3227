using Portwright.Physics.Drag;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Judgement;
using Portwright.Shop.Units;

namespace Portwright.Shop.Balls;

/// <summary>
/// The places of one ball in one port are judged against each other: what all share (its diameter, the rod, the drag of a sphere in a port) is found
/// first, and only what is left is the place's own.
/// </summary>
internal static class BallsTogether
{
    /// <summary>Places a ball must have been held at before its places say what it takes; our own choice.</summary>
    public const int FewestPlaces = 3;

    /// <summary>The checks with each place's answer.</summary>
    public static IReadOnlyList<ReducedBallCheck> Judge(IReadOnlyList<ReducedBallCheck> checks)
    {
        // Checks with the same ball are one round: a porter may write each place down by itself.
        var factors = checks.GroupBy(KeyOf).ToDictionary(g => g.Key, g => FactorOf([.. g]));
        return [.. checks.Select(c => Answered(c, factors[KeyOf(c)]))];
    }

    /// <summary>What the places of checks with one ball share; null where none has a due.</summary>
    private static SharedFactor? FactorOf(IReadOnlyList<ReducedBallCheck> checks)
    {
        AirLikelihood[] places = [.. checks.SelectMany(c => c.Places).Select(Likelihood).OfType<AirLikelihood>()];
        var spread = checks[0].AfterPipe ? SharedFactor.AfterPipe : SharedFactor.Usual;
        return places.Length switch
        {
            0 => null,
            // Fewer places than this do not tell a slow place from a ball that takes little.
            < FewestPlaces => new SharedFactor(0, spread, places.Length),
            _ => SharedFactor.Of(places, (0, spread)),
        };
    }

    /// <summary>What a ball says of its place against its published due, before what its places share is known; null without a due.</summary>
    internal static AirLikelihood? Likelihood(BallPlace place) => Word(place, 0, 0) is { } word ? AirLikelihood.Of(null, word) : null;

    /// <summary>What it took and what even air should take of it there; null without a due.</summary>
    /// <param name="factorLog">Natural logarithm of the factor that its places share.</param>
    /// <param name="factorDoubt">Its standard uncertainty.</param>
    internal static (double Fall, double Doubt, double Due, double DueDoubt)? Word(BallPlace place, double factorLog, double factorDoubt) =>
        place.PublishedDue is { Fall.Value: > 0 } due
            ? (place.Fall.Value, Math.Max(1e-6, place.Fall.StandardUncertainty), due.Fall.Value * Math.Exp(factorLog), Math.Sqrt(BallLoss.PortUncertainty * BallLoss.PortUncertainty + factorDoubt * factorDoubt))
            : null;

    private static ReducedBallCheck Answered(ReducedBallCheck check, SharedFactor? factor) => factor is null ? check : check with
    {
        Factor = factor,
        Places = [.. check.Places.Select(p => p.Air is not { } air || p.PublishedDue is not { } due ? p : p with
        {
            Response = BallResponse.Of(p.Fall, BallLoss.Expected(air, new BallCalibration(
                Estimate.Exact(factor.Factor * (due.Calibration?.Factor.Value ?? 1)).With(new Contribution(
                    $"what the balls of check {check.Check.Id:N} share", factor.Factor * factor.Doubt, double.PositiveInfinity, ContributionKind.Other)),
                due.Working.Reynolds,
                due.Working.DiameterRatio))),
        })],
    };

    /// <summary>Names the round a check belongs to: what its places share, checks of the same ball on the same bench share.</summary>
    internal static string RoundOf(ReducedBallCheck check) => KeyOf(check).ToString();

    private static (Guid Bench, double Millimetres, bool AfterPipe) KeyOf(ReducedBallCheck check) =>
        (check.Check.Fact.Setting.Bench, Math.Round(check.Check.Fact.Ball.Si(Dimension.Length) * 1e3, 2), check.AfterPipe);
}
