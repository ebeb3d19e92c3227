using Portwright.Physics.Drag;
using Portwright.Shop.Balls;
using Portwright.Shop.Survey;
using Portwright.Shop.Walls;

namespace Portwright.Shop.Findings;

/// <summary>A ball's word on one part of a section.</summary>
public sealed record LocalBall(BallPlace Ball, BallResponse Response)
{
    /// <summary>Probability that the place carries little for its speed: lazy, or the flow even rose.</summary>
    public double Little => Math.Min(1, Response.ProbabilityLazy + Response.ProbabilityTornOff);

    public double Busier => Response.ProbabilityBusier;

    public IEnumerable<Guid> Behind => Ball.Readings.Select(r => r.Id);

    /// <summary>In a sentence, without its beginning's capital.</summary>
    public string Words => Ball.Fall.Value < 0
        ? $"with the ball at {FindingWords.Bearing(Ball.Bearing!.Value)} the flow rose by {FindingWords.Flow(Ball.Loss.Scale(-1))}"
        : $"the ball at {FindingWords.Bearing(Ball.Bearing!.Value)} lost {FindingWords.Flow(Ball.Loss)}, {FindingWords.Flow(Response.Expected.Fall.Value * Ball.ReferenceFlow)} expected";

    /// <summary>The balls within some hours of a bearing that say something.</summary>
    public static IEnumerable<LocalBall> Near(SurveyedStation station, double bearing, double reach)
    {
        ArgumentNullException.ThrowIfNull(station);
        return station.Balls
            .Where(b => b.Response is not null && b.Bearing is { } hours && WallState.Apart(hours, bearing) <= reach)
            .Select(b => new LocalBall(b, b.Response!));
    }
}
