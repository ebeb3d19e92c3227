using Portwright.Shop.Families;
using Portwright.Shop.Judgement;
using Portwright.Shop.Survey;
using Portwright.Shop.Walls;

namespace Portwright.Shop.Findings;

/// <summary>What the air on the floor of the bend may be: lazy, off the wall, too fast. Each is judged knowing of the others.</summary>
internal static class FloorAir
{
    /// <summary>Chance that a port has a lazy floor or corner, and that its air is off the short side, before anything is read; judgement.</summary>
    public const double LazyPrior = 0.20, TornOffPrior = 0.12;

    /// <summary>Chance that probe and ball disagree somewhere in a port, before anything is read; judgement.</summary>
    public const double DisagreePrior = 0.12;

    /// <summary>A lazy place carries this much less than a sound one, as a logarithm of the speed; judgement.</summary>
    public static readonly Step Slower = new(0.42, 1.9, StepWay.Down);

    /// <summary>With a ball in torn-off air the flow rises by about this share of itself; judgement.</summary>
    public static readonly Step Rises = new(0.005, 2, StepWay.Up);

    /// <summary>Share of torn-off places where the flow rises; at the others the ball loses next to nothing. Judgement.</summary>
    private const double RisesIn = 0.7;

    /// <summary>Standard deviation of what a ball loses at the others, as a share of its due; judgement.</summary>
    private const double NextToNothing = 0.12;

    /// <summary>Hours to each side of 6 that are the floor of the bend.</summary>
    public static bool IsFloor(double bearing) => WallState.Apart(bearing, 6) <= 2;

    /// <summary>Places where the air may be off: on the floor of the bend, a ball held there.</summary>
    public static IReadOnlyList<PlaceRead> MayBeTornOff(PortSurvey port) => [.. Places.Of(port, port.InTheBend).Where(p => p.Ball is not null && IsFloor(p.Bearing))];

    /// <summary>Likelihood ratio of air off the wall against air that follows it, sound or lazy, by the ball.</summary>
    /// <remarks>Where the probe finds sound air and the ball none, one of the two may as well be wrong.</remarks>
    /// <param name="places">Places looked at, which share the prior of a lazy one and of an instrument that is wrong.</param>
    public static double TornOff(PlaceRead place, int places) =>
        Torn(place) / (1 + (LazyPrior * place.Ratio(Slower) + DisagreePrior * place.OneWrong) / Math.Max(1, places));

    /// <summary>Likelihood ratio of a lazy place against a sound one or, on the floor of the bend, one where the air is off.</summary>
    /// <remarks>
    /// Slow air on the floor of the bend that may as well be off the wall is told as lazy, either way area without air: only where off the wall is the
    /// likelier of the two it is that and not this.
    /// </remarks>
    public static double Lazy(PlaceRead place, bool inTheBend, int places)
    {
        var lazy = place.Ratio(Slower);
        if (!inTheBend || !IsFloor(place.Bearing))
        {
            return lazy;
        }

        var torn = TornOffPrior / LazyPrior * Torn(place);
        return torn <= lazy ? lazy + torn : lazy / (1 + TornOffPrior / Math.Max(1, places) * Torn(place));
    }

    /// <summary>Likelihood ratio of fast air on the floor of the bend against sound air or, as a ball may tell, air off the wall or one of two instruments that is wrong.</summary>
    /// <param name="fast">The same against sound air alone.</param>
    /// <param name="places">Places looked at, which share the priors of the others.</param>
    public static double Fast(PlaceRead place, double fast, int places) =>
        fast / (1 + ((place.Ball is null ? 0 : TornOffPrior * Torn(place)) + DisagreePrior * place.OneWrong) / Math.Max(1, places));

    private static double Torn(PlaceRead place)
    {
        if (place.Ball is not { PublishedDue: { } published } ball)
        {
            return 1;
        }

        var (fall, doubt) = (ball.Fall.Value, Math.Max(1e-6, ball.Fall.StandardUncertainty));
        var due = ball.Response?.Expected.Fall.Value ?? published.Fall.Value;
        var torn = RisesIn * Rises.Sizes.Average(rise => Density.Normal(fall + rise, doubt))
            + (1 - RisesIn) * Density.Normal(fall, Math.Sqrt(doubt * doubt + NextToNothing * NextToNothing * due * due));
        return place.Said.TornOff(place.Usual, place.Spread, Slower, torn, place.BesideOfAPlace);
    }
}
