using Portwright.Shop.Families;
using Portwright.Shop.Judgement;
using Portwright.Shop.Survey;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>Probe and ball say different things of one place.</summary>
public sealed record InstrumentsDisagree() : FindingRule("instruments-disagree", "Probe and ball disagree")
{
    /// <inheritdoc/>
    public override double? Prior => FloorAir.DisagreePrior;

    public override Sentence Evidence => $"The probe read and a ball held at one place; the ball at {Balls.BallsTogether.FewestPlaces} places of the port or more.";

    public override Sentence Test => $"No one speed of the air there makes both readings likely, against one of the two being off by about half; what the ball shares with its other places and the probe with its ring is taken out first.";

    public override Sentence ElseExplains => $"A ball held at another hour than written down, or off the wall; a probe that does not point along the air; air that swings, which a ball feels and a probe averages.";

    public override Sentence LookFirst => $"The one that lies further from what the place should show, then the other, with nothing moved between.";

    public override Sentence Cut => $"Nothing on the word of either until they agree.";

    public override Sentence Risk => $"Cutting where one instrument points and the other does not.";

    public override string Source => "common practice, no source; how chances are worked out: docs/theory/judgement.md";

    public override double Minutes => BenchMinutes.OnePlace + BenchMinutes.OnePlace;

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        PlaceRead[] both = [.. PlaceRead.AllOf(port).Where(p => p.Said.IsOfBoth)];
        return both.Zip(Court.AtOneOf(Prior!.Value, [.. both.Select(p => p.Contradiction)]), Found);
    }

    private Finding Found(PlaceRead place, double chance)
    {
        var (probe, ball) = (place.Said.ByProbe!.Value.Mean, place.Said.ByBall?.Mean ?? place.Usual);
        var ballFirst = Math.Abs(ball - place.Usual) >= Math.Abs(probe - place.Usual);
        return new Finding(
            this,
            FindingKind.Measurement,
            $"{place.Seen()} By the probe the air there moves at {OfEven(probe)} of even air's speed, by the ball at {OfEven(ball)}. Nothing is cut here on the word of either.",
            chance,
            place.Station.Station,
            place.Bearing,
            place.Behind(),
            $"Read both again at {place.Station.Letter}, {Bearings.Words(place.Bearing)}, {(ballFirst ? "the ball" : "the probe")} first.");
    }

    /// <summary>To a whole percent, over and under even air alike.</summary>
    private static Quantity OfEven(double log) => Quantity.Share(Math.Exp(log)).About(log < 0 ? 2 : 3);
}
