using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;
using Portwright.Shop.Survey;
using Portwright.Shop.Walls;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>Metal at or near its limit: here cutting stops.</summary>
public sealed record ThinMetal() : FindingRule("thin-metal", "Leave the metal")
{
    public override Sentence Evidence => $"A wall point: thickness at a station and bearing.";

    public override Sentence Test => $"Thickness less twice the doubt of the gauge ({Quantity.Length(WallState.ThicknessDoubt)}) is under the limit. The limit is the shop's own where it states one, else {Usual("", Behind.Water)} of {Term.Aluminum} or {Usual("iron", Behind.Water)} of iron where water, oil, a pushrod hole, a bolt, the spring seat or nobody knows what lies behind it, {Usual("", Behind.Air)} and {Usual("iron", Behind.Air)} over air.";

    public override Sentence ElseExplains => $"The gauge over porosity or a curved wall; core shift in this casting only.";

    public override Sentence LookFirst => $"Measure again from another angle before any cut; sound the metal round the place.";

    public override Sentence Cut => $"Nothing. Where the shape needs it, build up the other side instead.";

    public override Sentence Risk => $"Breaking into water, oil or a bolt hole ruins the casting; a thin wall may crack later in the engine.";

    public override string Source => "common practice, no source";

    public override double Minutes => BenchMinutes.OneReading;

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        foreach (var wall in port.Stations.SelectMany(s => s.Walls).Where(w => w.Stops))
        {
            var left = Estimate.Exact(wall.Left).With(new Contribution(Sources.WallGauge, WallState.ThicknessDoubt, double.PositiveInfinity, ContributionKind.Geometry));
            Sentence limit = $"limit {Quantity.Length(wall.Limit)}{(wall.OwnLimit ? "" : " (common practice)")}";
            yield return new Finding(
                this,
                FindingKind.Stop,
                $"{Quantity.Length(wall.Thickness)} of metal at {Bearings.Words(wall.Point.Fact.Bearing)}, {WallLimit.Words(wall.Point.Fact.Behind)}, {limit}.",
                // Stated wherever cutting stops: probability that no more than twice that margin is left.
                Confidence.Below(left, 4 * WallState.ThicknessDoubt),
                wall.Station,
                wall.Point.Fact.Bearing,
                [wall.Point.Id],
                $"Measure this place again before any cut near it.");
        }
    }

    private static Quantity Usual(string material, Behind behind) => Quantity.Length(WallLimit.Usual(material, behind));
}
