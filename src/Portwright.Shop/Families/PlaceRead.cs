using Portwright.Shop.Balls;
using Portwright.Shop.Judgement;
using Portwright.Shop.Survey;
using Portwright.Shop.Walls;

namespace Portwright.Shop.Families;

/// <summary>One place at the wall of a section that probe, ball or both have looked at, and what they say together.</summary>
/// <param name="Bearing">Clock hour.</param>
/// <param name="Air">The probe's; null where it was not read there.</param>
/// <param name="Ball">Null where none was held there.</param>
/// <param name="Said">Of the two together.</param>
/// <param name="Usual">Logarithm of the speed over even air's that a sound port shows here, by the sisters read at the place.</param>
/// <param name="Spread">Its standard deviation.</param>
/// <param name="Sisters">Sister ports read at the place.</param>
public sealed record PlaceRead(
    SurveyedStation Station, double Bearing, LocalAir? Air, BallPlace? Ball, AirLikelihood Said, double Usual, double Spread, int Sisters)
{
    /// <summary>Sound sisters differ so at one place, standard deviation of the logarithm; judgement (docs/theory/judgement.md).</summary>
    public const double BetweenSisters = 0.05;

    /// <summary>Places nearer together than this are one, hours.</summary>
    public const double SamePlace = 0.5;

    /// <summary>Likelihood ratio of a step of the local speed against a place as sound ports show it.</summary>
    public double Ratio(Step step) => Said.Ratio(Usual, Spread, step);

    /// <summary>Likelihood ratio of one instrument being wrong here.</summary>
    public double Contradiction => Said.Contradiction(Usual, Spread);

    /// <summary>Every place of a port that was read, each against what its sisters show there.</summary>
    public static IReadOnlyList<PlaceRead> AllOf(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        return port.Remembered(() => (IReadOnlyList<PlaceRead>)[.. port.Stations.SelectMany(s => Of(port, s))]);
    }

    private static IEnumerable<PlaceRead> Of(PortSurvey port, SurveyedStation station)
    {
        var open = port.InTheBend.Contains(station) ? SharedFactor.InTheBend : SharedFactor.AheadOfTheBend;
        foreach (var alone in ByItself(port, station))
        {
            var (usual, spread, sisters) = Usually(port, alone, open);
            yield return alone with { Usual = usual, Spread = spread, Sisters = sisters };
        }
    }

    /// <summary>The places of a station by their own readings, not yet held against any sister's: worked out once a port, for each of its sisters asks.</summary>
    private static IEnumerable<PlaceRead> ByItself(PortSurvey port, SurveyedStation station) =>
        port.Remembered(() => port.Stations.SelectMany(s => Alone(s, port.BallChecks)).ToLookup(p => p.Station.Station.Id))[station.Station.Id];

    private static IEnumerable<PlaceRead> Alone(SurveyedStation station, IReadOnlyList<ReducedBallCheck> checks)
    {
        var air = LocalAir.Round(station.Ring).ToList();
        var balls = station.Balls.Where(b => b.PublishedDue is not null && b.Bearing is not null).ToList();
        var bearings = air.Select(a => a.Bearing).ToList();
        bearings.AddRange(balls.Select(b => b.Bearing!.Value).Where(h => !bearings.Exists(a => WallState.Apart(a, h) <= SamePlace)).Distinct().ToList());
        foreach (var bearing in bearings)
        {
            var probe = air.Where(a => WallState.Apart(a.Bearing, bearing) <= SamePlace).MinBy(a => WallState.Apart(a.Bearing, bearing));
            // Where a place was read in two checks the later word stands.
            var ball = balls.LastOrDefault(b => WallState.Apart(b.Bearing!.Value, bearing) <= SamePlace);
            var factor = ball is null ? null : checks.First(c => c.Check.Id == ball.Check.Id).Factor;
            var word = ball is null || factor is null ? null : BallsTogether.Word(ball, factor.Log, factor.Doubt);
            if (probe is not { OverEven.Value: > 0 } && word is null)
            {
                continue;
            }

            (double, double)? read = probe is { OverEven: { Value: > 0 } over } ? (Math.Log(over.Value), over.StandardUncertainty / over.Value) : null;
            yield return new PlaceRead(station, bearing, read is null ? null : probe, word is null ? null : ball, AirLikelihood.Of(read, word), 0, 0, 0);
        }
    }

    /// <summary>What a sound port shows at a place: even air, drawn to what the sisters show there.</summary>
    private static (double Mean, double Spread, int Sisters) Usually(PortSurvey port, PlaceRead place, double open)
    {
        List<(double Mean, double Variance)> read = [];
        foreach (var sister in port.Sisters)
        {
            if (SameStation(sister, place.Station) is { } station
                && ByItself(sister, station).Where(p => WallState.Apart(p.Bearing, place.Bearing) <= SamePlace).Select(p => p.Said.Best).FirstOrDefault() is { } best)
            {
                read.Add((best.Mean, best.Spread * best.Spread + BetweenSisters * BetweenSisters));
            }
        }

        if (read.Count == 0)
        {
            return (0, open, 0);
        }

        // One sister with a fault of her own is drawn in to the middle.
        var middle = Family.Median([.. read.Select(r => r.Mean)]);
        var prior = 1 / (open * open);
        var weight = prior + read.Sum(r => 1 / r.Variance);
        var mean = read.Sum(r => (middle + Math.Clamp(r.Mean - middle, -Family.DrawnIn * BetweenSisters, Family.DrawnIn * BetweenSisters)) / r.Variance) / weight;
        return (mean, Math.Sqrt(BetweenSisters * BetweenSisters + 1 / weight), read.Count);
    }

    /// <summary>The same station of a sister: by what it is, else by letter and distance.</summary>
    internal static SurveyedStation? SameStation(PortSurvey sister, SurveyedStation station)
    {
        ArgumentNullException.ThrowIfNull(sister);
        ArgumentNullException.ThrowIfNull(station);
        return sister.Stations.FirstOrDefault(s => s.Letter == station.Letter && Math.Abs(s.Distance - station.Distance) <= Math.Max(0.005, 0.1 * station.Distance))
            ?? (station.Role is { } role ? sister.At(role) : null);
    }
}
