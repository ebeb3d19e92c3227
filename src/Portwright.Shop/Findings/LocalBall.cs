using Portwright.Physics.Drag;
using Portwright.Shop.Balls;
using Portwright.Shop.Survey;
using Portwright.Shop.Walls;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings;

/// <summary>A ball's word on one part of a section.</summary>
public sealed record LocalBall(BallPlace Ball, BallResponse Response)
{
    /// <summary>Probability that the place carries little for its speed: lazy, or the flow even rose.</summary>
    public double Little => Math.Min(1, Response.ProbabilityLazy + Response.ProbabilityTornOff);

    public double Busier => Response.ProbabilityBusier;

    public IEnumerable<Guid> Behind => Ball.Readings.Select(r => r.Id);

    /// <summary>In a sentence, without its beginning's capital.</summary>
    public Sentence Words => Ball.Fall.Value < 0
        ? (Sentence)$"with the ball at {Bearings.Words(Ball.Bearing!.Value)} the flow rose by {Quantity.Flow(Ball.Loss.Scale(-1))}"
        : $"the ball at {Bearings.Words(Ball.Bearing!.Value)} lost {Quantity.Flow(Ball.Loss)}, {Quantity.Flow(Response.Expected.Fall.Value * Ball.ReferenceFlow)} expected";

    /// <summary>The balls within some hours of a bearing that say something.</summary>
    public static IEnumerable<LocalBall> Near(SurveyedStation station, double bearing, double reach)
    {
        ArgumentNullException.ThrowIfNull(station);
        return station.Balls
            .Where(b => b.Response is not null && b.Bearing is { } hours && WallState.Apart(hours, bearing) <= reach)
            .Select(b => new LocalBall(b, b.Response!));
    }
}
