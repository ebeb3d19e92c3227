using Portwright.Shop.Balls;
using Portwright.Shop.Survey;
using Portwright.Shop.Walls;
using Portwright.Shop.Words;

namespace Portwright.Shop.Families;

/// <summary>A place in a porter's words.</summary>
internal static class PlaceWords
{
    /// <summary>What probe and ball showed, and the sisters: <c>the probe shows 241 against 318 ft/s of even air at 12 o'clock (roof); the ball there lost ...</c>.</summary>
    public static Sentence Seen(this PlaceRead place)
    {
        List<Sentence> seen = [];
        if (place.Air is { } air)
        {
            seen.Add($"the probe shows {air.Words}");
        }

        if (place.Ball is { } ball)
        {
            var where = place.Air is { } read && WallState.Apart(read.Bearing, ball.Bearing!.Value) < 0.05 ? "there" : $"at {Bearings.Words(ball.Bearing!.Value)}";
            seen.Add(ball.Fall.Value < 0
                ? $"with the ball {where} the flow rose by {Quantity.Flow(ball.Loss.Scale(-1))}"
                : ball.Expected is { } due
                    ? (Sentence)$"the ball {where} lost {Quantity.Flow(ball.Loss)}, {Quantity.Flow(due.Value)} expected"
                    : $"the ball {where} lost {Quantity.Flow(ball.Loss)}");
        }

        if (place.Sisters > 0)
        {
            seen.Add($"{(place.Sisters == 1 ? "one sister port was" : $"{place.Sisters} sister ports were")} read there too");
        }

        return Sentence.Join("; ", seen).Whole();
    }

    /// <summary>The facts a place rests on.</summary>
    public static IReadOnlyList<Guid> Behind(this PlaceRead place) => [.. place.Air?.Behind ?? [], .. place.Ball?.Readings.Select(r => r.Id) ?? []];

    /// <summary>The measurement that would make a place surer: the instrument that has not looked yet, else the probe where it is least sure.</summary>
    public static Sentence Surer(this PlaceRead place, PortSurvey port) =>
        place.Ball is null ? port.Balls.Count(b => b.Response is not null) >= BallsTogether.FewestPlaces
            ? (Sentence)$"Hold the ball at {place.Station.Letter}, {Bearings.Words(place.Bearing)}, too: what it takes is judged against its other places."
            : $"Hold a ball at {place.Station.Letter}, {Bearings.Words(place.Bearing)}, and at two other places of the port: what it takes is judged against them."
        : place.Air is null ? $"Read the probe at {place.Station.Letter}, {Bearings.Words(place.Bearing)}, and round the section."
        : place.Air.NextReading;
}
