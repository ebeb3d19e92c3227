using Portwright.Physics.Uncertainty;
using Portwright.Shop.Words;

namespace Portwright.Shop.Ports;

/// <summary>Where the doubt comes from: where a better bench would show first.</summary>
internal static class DoubtSaid
{
    /// <summary>Shares of the variance below this are not told by name.</summary>
    private const double WorthTelling = 0.05;

    public static Part? Of(PortAtCut port)
    {
        if (port.Sheet is not { Flow.Curve.Points: [.., var top], Bench: { } bench }) return null;
        var kinds = top.Flow.ByKind().Where(k => k.ShareOfVariance >= WorthTelling);
        var doubt = bench.Fact.Doubt;
        return new Part("doubt", $"Where the doubt comes from",
        [
            new Values("shares", [.. kinds.Select(k => new NamedValue(
                k.Kind.ToString().ToLowerInvariant(), $"{Name(k.Kind)}, at {Quantity.Lift(top.Lift)}", $"{Quantity.Share(k.ShareOfVariance).About(2)} of the variance, {Quantity.Flow(k.StandardUncertainty).About(2)} standard"))]),
            new Values("bench-card",
            [
                new("set-up", $"set-up scatter", $"{Quantity.Share(doubt.SetUpScatter).About(2)} standard, by the bench card"),
                new("repeat", $"repeat", $"{Quantity.Share(doubt.RepeatScatter).About(2)} standard, by the bench card"),
                new("day", $"day to day", $"{Quantity.Share(doubt.Drift).About(2)} standard, by the bench card"),
            ]),
        ], Reader.Engineer);
    }

    private static string Name(ContributionKind kind) => kind switch
    {
        ContributionKind.SetUp => "set-up",
        ContributionKind.Other => "other causes",
        _ => kind.ToString().ToLowerInvariant(),
    };
}
