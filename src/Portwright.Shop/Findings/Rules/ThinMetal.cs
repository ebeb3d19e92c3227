using Portwright.Physics.Uncertainty;
using Portwright.Shop.Survey;
using Portwright.Shop.Walls;

namespace Portwright.Shop.Findings.Rules;

/// <summary>Metal at or near its limit: here cutting stops.</summary>
public sealed record ThinMetal() : FindingRule("thin-metal", "Leave the metal")
{
    public override string Evidence => "A wall point: thickness at a station and bearing.";

    public override string Test => "Thickness less twice the doubt of the gauge (.003 in) is under the limit. The limit is the shop's own where it states one, else .120 in of aluminium or .100 in of iron over water, .020 in less over air.";

    public override string ElseExplains => "The gauge over porosity or a curved wall; core shift in this casting only.";

    public override string LookFirst => "Measure again from another angle before any cut; sound the metal round the place.";

    public override string Cut => "Nothing. Where the shape needs it, build up the other side instead.";

    public override string Risk => "Breaking into water, oil or a bolt hole ruins the casting; a thin wall may crack later in the engine.";

    public override string Source => "common practice, no source";

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        foreach (var wall in port.Stations.SelectMany(s => s.Walls).Where(w => w.Stops))
        {
            var left = Estimate.Exact(wall.Left).With(new Contribution("wall gauge", WallState.ThicknessDoubt, double.PositiveInfinity, ContributionKind.Geometry));
            var limit = $"limit {FindingWords.Length(wall.Limit)}{(wall.OwnLimit ? "" : " (common practice)")}";
            yield return new Finding(
                this,
                FindingKind.Stop,
                $"{FindingWords.Length(wall.Thickness)} of metal at {FindingWords.Bearing(wall.Point.Fact.Bearing)}, {WallLimit.Words(wall.Point.Fact.Behind)}, {limit}.",
                // Stated wherever cutting stops: probability that no more than twice that margin is left.
                Confidence.Below(left, 4 * WallState.ThicknessDoubt),
                wall.Station,
                wall.Point.Fact.Bearing,
                [wall.Point.Id],
                "Measure this place again before any cut near it.");
        }
    }
}
