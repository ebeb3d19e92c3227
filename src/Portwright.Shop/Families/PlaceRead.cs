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
    public double Ratio(Step step) => Said.Ratio(Usual, Spread, step, BesideOfAPlace);

    /// <summary>The same where sound places of the kind are faster by so much.</summary>
    public double Ratio(Step step, double faster) => Said.Ratio(Usual + faster, Spread, step, BesideOfAPlace);

    /// <summary>The same of a fault that may take in all of a wall.</summary>
    public double RatioOfAWall(Step step) => Said.Ratio(Usual, Spread, step, Beside);

    /// <summary>What the places beside it say of a step here, by the half width of the fault.</summary>
    internal IReadOnlyList<Beside> Beside { get; init; } = [default];

    internal IReadOnlyList<Beside> BesideOfAPlace => [.. Beside.Take(Judgement.Beside.OfAPlace)];

    /// <summary>Likelihood ratio of one instrument being wrong here, against both being right in sound air.</summary>
    public double OneWrong => Said.OneWrong(Usual, Spread);

    /// <summary>Likelihood ratio of one instrument being wrong here.</summary>
    public double Contradiction => Said.Contradiction(Usual, Spread);

    /// <summary>Every place of a port that was read, each against what its sisters show there.</summary>
    public static IReadOnlyList<PlaceRead> AllOf(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        return port.Remembered(() => (IReadOnlyList<PlaceRead>)[.. ByItself(port).Select(place => Against(place, Together(port).Of(place)))]);
    }

    /// <summary>The same place where what it gains another, across from it, loses.</summary>
    public PlaceRead Leaning(PortSurvey port, PlaceRead other)
    {
        ArgumentNullException.ThrowIfNull(other);
        PlaceRead Alone(PlaceRead place) => ByItself(port).First(p => p.Station == place.Station && p.Bearing == place.Bearing);
        return Against(Alone(this), Together(port).Of(Alone(this), Alone(other)));
    }

    internal static PlacesTogether Together(PortSurvey port) => port.Remembered(() => new PlacesTogether(port, ByItself));

    /// <summary>A place against what all else that was read says of it: what probe and ball have in common is the air, the rest each one's own.</summary>
    private static PlaceRead Against(PlaceRead place, PlacesTogether.Expected sound)
    {
        var common = Math.Clamp(sound.Both, Narrowest * Narrowest, Math.Max(Narrowest * Narrowest, Math.Min(sound.ProbeVariance, sound.BallVariance)));
        (double, double)? probe = place.Air?.OverEven is { Value: > 0 } over
            ? (Math.Log(over.Value), Math.Sqrt(over.StandardUncertainty / over.Value * (over.StandardUncertainty / over.Value) + Math.Max(0, sound.ProbeVariance - common)))
            : null;
        (double Fall, double Doubt, double Due, double DueDoubt)? ball = place.Ball is { } held && BallsTogether.Word(held, 3 * (sound.Ball - sound.Probe), 0) is { } word
            ? word with { DueDoubt = 3 * Math.Sqrt(Math.Max(0, sound.BallVariance - common)) }
            : null;
        return place with { Said = AirLikelihood.Of(probe, ball), Usual = sound.Probe, Spread = Math.Sqrt(common), Sisters = sound.Sisters, Beside = sound.Beside };
    }

    /// <summary>No sound place is known closer than this; our own choice.</summary>
    private const double Narrowest = 0.02;

    /// <summary>The places of a port by their own readings, not yet held against any other: worked out once a port, for each of its sisters asks.</summary>
    private static List<PlaceRead> ByItself(PortSurvey port) => port.Remembered(() => port.Stations.SelectMany(Alone).ToList());

    private static IEnumerable<PlaceRead> Alone(SurveyedStation station)
    {
        var air = LocalAir.Round(station.Ring).ToList();
        var balls = station.Balls.Where(b => b.PublishedDue is not null && b.Bearing is not null).ToList();
        var bearings = air.Select(a => a.Bearing).ToList();
        bearings.AddRange(balls.Select(b => b.Bearing!.Value).Where(h => !bearings.Exists(a => WallState.Apart(a, h) <= SamePlace)).Distinct().ToList());
        foreach (var bearing in bearings)
        {
            var probe = air.Where(a => a.OverEven.Value > 0 && WallState.Apart(a.Bearing, bearing) <= SamePlace).MinBy(a => WallState.Apart(a.Bearing, bearing));
            // Where a place was read in two checks the later word stands.
            var ball = balls.LastOrDefault(b => WallState.Apart(b.Bearing!.Value, bearing) <= SamePlace && BallsTogether.Word(b, 0, 0) is not null);
            if (probe is not null || ball is not null)
            {
                yield return new PlaceRead(station, bearing, probe, ball, AirLikelihood.Of(null, null), 0, 0, 0);
            }
        }
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
