using Portwright.Shop.Balls;
using Portwright.Shop.Families;
using Portwright.Shop.Judgement;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>All places of a ball take more, or less, than a ball of that size can.</summary>
public sealed record BallNotAsWritten() : FindingRule("ball-not-as-written", "The ball is not the one written down")
{
    /// <inheritdoc/>
    public override double? Prior => 0.08;

    public override Sentence Evidence => $"A ball held at {BallsTogether.FewestPlaces} places or more of sections that were measured.";

    public override Sentence Test => $"What all places of the ball take is held against what probe and sister ports say of the same places. Published drag, walls, rod and a port that is no pipe leave it open by about {SharedFactor.Usual * 100:0} percent, {SharedFactor.AfterPipe * 100:0} after the ball was read in a straight pipe, {SharedFactor.CheckToCheck * 100:0} against sister ports read with the same ball: it lies much further off.";

    public override Sentence ElseExplains => $"A thick rod or a hand in the port; a test pressure or a range other than written down; sections all measured too large or too small.";

    public override Sentence LookFirst => $"The caliper on the ball. Then the ball in a straight pipe of known bore.";

    public override Sentence Cut => $"Nothing by the ball until its size is sure: places are still told against each other, not absolutely.";

    public override Sentence Risk => $"A whole port called busy or lazy that is neither.";

    public override string Source => "Spread of published sphere drag: docs/theory/balls.md; how chances are worked out: docs/theory/judgement.md";

    public override double Minutes => BenchMinutes.OneFigure;

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        foreach (var round in Rounds(port))
        {
            var (here, inASister) = PlaceRead.Together(port).BallMistyped(BallsTogether.RoundOf(round.Checks[0]), SharedFactor.Mistyped);
            yield return new Finding(
                this,
                FindingKind.Measurement,
                $"All {round.Places} places of the {Quantity.Length(round.Diameter)} ball together take {Quantity.Share(round.Factor.Factor).About(2)} of what a ball of that size takes of even air. A ball of {Quantity.Length(round.Diameter * Math.Sqrt(round.Factor.Factor)).About(2)} would take as much.",
                Court.Chance([new Explanation(Prior!.Value, here), .. inASister.Select(r => new Explanation(Prior.Value, r))]),
                null,
                null,
                [.. round.Checks.Select(c => c.Check.Id)],
                $"Put the caliper on the ball, then correct the size or hold it in a straight pipe.");
        }
    }

    private static IEnumerable<Round> Rounds(PortSurvey port) => port.BallChecks
        .GroupBy(c => Math.Round(c.Check.Fact.Ball.Si(Dimension.Length) * 1e3, 2))
        .Select(g => new Round(
            g.First().Check.Fact.Ball.Si(Dimension.Length),
            [.. g],
            g.SelectMany(c => c.Places).Count(p => BallsTogether.Word(p, 0, 0) is not null),
            g.First().Factor!))
        .Where(r => r.Places >= BallsTogether.FewestPlaces);

    private sealed record Round(double Diameter, IReadOnlyList<ReducedBallCheck> Checks, int Places, SharedFactor Factor);
}
