using Portwright.Shop.Balls;
using Portwright.Shop.Judgement;
using Portwright.Shop.Survey;
using Portwright.Shop.Walls;

namespace Portwright.Shop.Families;

/// <summary>All that probe and ball read in a port and in its sisters, held together: what the rest of it says of one place.</summary>
/// <remarks>
/// In logarithms of the speed over even air's, each reading is a sum: what sound ports of this casting show at the place, what this port shows there by itself, what all places
/// of a ball share on this bench and in this check, what the mean of a ring leaves open, and the reading's own doubt. Readings that have a part in common vary
/// together, so that what is shared cancels where places are held against each other.
/// </remarks>
internal sealed partial class PlacesTogether
{
    /// <summary>A ball at a place of a port that is no pipe leaves so much of its due open there in all sisters alike, and so much anew each time it is held; the parts of the 10 percent of docs/theory/balls.md, judgement.</summary>
    public const double PlaceOfSisters = 0.07, HeldAnew = 0.07;

    /// <summary>A ring of few readings leaves so much of its mean open, standard deviation of the logarithm; judgement.</summary>
    public const double RingMean = 0.04;

    /// <summary>
    /// Two places across from each other, such as 3 and 9 o'clock, differ so in sound ports, standard deviation of the logarithm: a port is much the same to its left and right, but
    /// for the angle it comes in at. Judgement.
    /// </summary>
    public const double BetweenSides = 0.08;

    /// <summary>
    /// Another place, or the same of a sister, has a fault of its own so often, and is then off by so much either way, standard deviation of the logarithm: four faults of the air with a prior
    /// of about a sixth each, one at some of a port's dozen places and those beside it. Judgement.
    /// </summary>
    public const double Faulty = 0.10, FaultyBy = 0.40;

    /// <summary>Of more sisters than this a faulty one is outvoted: she is drawn in.</summary>
    private const int FewSisters = 2;

    /// <summary>Nearer to across from each other than this two places are that, hours.</summary>
    private const double Across = 0.25;

    /// <summary>Rounds in which what a ball lost is made a logarithm about what is likely there.</summary>
    private const int Rounds = 4;

    /// <summary>No place is taken to be further off even air than this while that is done.</summary>
    private const double Furthest = 0.8;

    /// <summary>Spreads between sound sisters at one place that are weighed by what the sisters themselves show, and by what factor castings lie about the usual one; judgement.</summary>
    private static readonly double[] Spreads = [0.025, 0.035, PlaceRead.BetweenSisters, 0.07];

    private const double SpreadsWithin = 1.5;

    private readonly List<Reading> _readings = [];
    private readonly List<(double Apart, double LogPrior, JointNormal Held)> _together;

    public PlacesTogether(PortSurvey port, Func<PortSurvey, IEnumerable<PlaceRead>> placesOf)
    {
        List<(string Station, double? Bearing, double Open)> places = [];
        PortSurvey[] ports = [port, .. port.Sisters];
        for (var p = 0; p < ports.Length; p++)
        {
            var of = ports[p];
            string Name(SurveyedStation station) => p == 0 ? station.Letter : port.Stations.FirstOrDefault(s => PlaceRead.SameStation(of, s) == station)?.Letter ?? $"{of.Sheet.Port.Id:N} {station.Letter}";
            int Place(SurveyedStation station, double? bearing)
            {
                var name = Name(station);
                var known = places.FindIndex(k => k.Station == name && (bearing is { } b ? k.Bearing is { } h && WallState.Apart(b, h) <= PlaceRead.SamePlace : k.Bearing is null));
                if (known < 0)
                {
                    known = places.Count;
                    places.Add((name, bearing, of.InTheBend.Contains(station) ? SharedFactor.InTheBend : SharedFactor.AheadOfTheBend));
                }

                return known;
            }

            foreach (var read in placesOf(of))
            {
                var at = Place(read.Station, read.Bearing);
                if (read.Air?.OverEven is { Value: > 0 } over)
                {
                    _readings.Add(new Reading(p, read.Station.Station.Id, at, places[at].Station, places[at].Bearing, places[at].Open, read, false, read.Station.Station.Id.ToString("N"), 0) { Log = Math.Log(over.Value), Doubt = over.StandardUncertainty / over.Value });
                }

                if (read.Ball is { } ball && Ball(of, p, at, places[at], ball, read) is { } held)
                {
                    _readings.Add(held);
                }
            }

            // A ball in the middle of a section is no place of the wall; it knows the ball.
            foreach (var station in of.Stations)
            {
                foreach (var ball in station.Balls.Where(b => b.Bearing is null && b.PublishedDue is not null))
                {
                    var at = Place(station, null);
                    if (Ball(of, p, at, places[at], ball, null) is { } held)
                    {
                        _readings.Add(held);
                    }
                }
            }
        }

        _together = HeldWithEachSpread();
    }

    private static Reading? Ball(PortSurvey of, int port, int at, (string Station, double? Bearing, double Open) place, BallPlace ball, PlaceRead? read)
    {
        if (BallsTogether.Word(ball, 0, 0) is not { } word)
        {
            return null;
        }

        var check = of.BallChecks.First(c => c.Check.Id == ball.Check.Id);
        return new Reading(port, ball.Station.Id, at, place.Station, place.Bearing, place.Open, read, true, BallsTogether.RoundOf(check), check.AfterPipe ? SharedFactor.AfterPipe : SharedFactor.Usual) { Fall = word };
    }

    /// <summary>
    /// What all other readings say of a place: the logarithm a probe and a ball there should find in sound air, their variances and what is common to both, the readings' own doubt left out.
    /// </summary>
    /// <param name="place">Of the port itself.</param>
    /// <param name="loser">Place across from it that loses what it gains; null: a step here is its own.</param>
    public Expected Of(PlaceRead place, PlaceRead? loser = null)
    {
        int[] here = [.. Enumerable.Range(0, _readings.Count).Where(i => ReferenceEquals(_readings[i].Of, place))];
        var first = _readings[here[0]];
        // Where one instrument did not look, the air itself stands in its place.
        var probe = here.Select(i => _readings[i]).FirstOrDefault(r => ReferenceEquals(r.Of, place) && !r.IsBall) ?? new Reading(0, first.Station, first.Place, first.Section, first.Bearing, first.Open, place, false, "", 0);
        var ball = here.Select(i => _readings[i]).FirstOrDefault(r => ReferenceEquals(r.Of, place) && r.IsBall) ?? probe;
        // A step here reaches the port's own places beside it.
        double[][] reached = [.. Beside.HalfWidths.Select(w => _readings.Select((r, i) => Array.IndexOf(here, i) < 0 ? Reached(place, loser, r, w) : 0).ToArray())];
        List<(double Weight, Expected Said)> each = [];
        foreach (var (apart, prior, held) in _together)
        {
            var left = held.Without(here);
            double[] With(Reading of) => [.. _readings.Select(r => Common(of, r, apart))];
            var (withProbe, withBall) = (With(probe), With(ball));
            foreach (var (log, others) in Trusted(left, here, first.Place))
            {
                each.Add((prior + log, new Expected(
                    others.Mean(withProbe),
                    Common(probe, probe, apart) - others.Taken(withProbe, withProbe),
                    others.Mean(withBall),
                    Common(ball, ball, apart) - others.Taken(withBall, withBall),
                    Common(probe, ball, apart) - others.Taken(withProbe, withBall),
                    [.. reached.Select(r => new Beside(others.Mean(r), others.Taken(r, r), others.Taken(probe.Shares.Length > 0 ? withProbe : withBall, r)))],
                    _readings.Where(r => r.Place == first.Place && r.Port != 0).Select(r => r.Port).Distinct().Count())));
            }
        }

        return Expected.Mixed(each);
    }

    /// <summary>All others sound, or one of those a place leans on faulty, each with the logarithm of how likely that is.</summary>
    private IEnumerable<(double Log, JointNormal Others)> Trusted(JointNormal left, int[] here, int place)
    {
        var sound = left.DrawnIn(Family.DrawnIn);
        int[][] suspects = [.. Suspects(left, here, place)];
        yield return (sound.LogLikelihood + Math.Log(1 - suspects.Length * Faulty), sound);
        foreach (var suspect in suspects)
        {
            var loosened = left.Loosened(suspect, FaultyBy * FaultyBy);
            yield return (sound.LogLikelihood + Math.Log(Faulty) + loosened.LogLikelihood - left.LogLikelihood, loosened.DrawnIn(Family.DrawnIn));
        }
    }

    /// <summary>The same place of each sister where they are few, and of the port's other places the one that lies furthest off what all say of it: readings of each.</summary>
    private IEnumerable<int[]> Suspects(JointNormal left, int[] here, int place)
    {
        int[] All(Func<Reading, bool> which) => [.. Enumerable.Range(0, _readings.Count).Where(i => which(_readings[i]))];
        int[] sisters = [.. All(r => r.Place == place && r.Port != 0).Select(i => _readings[i].Port).Distinct()];
        foreach (var sister in sisters.Length <= FewSisters ? sisters : [])
        {
            yield return All(r => r.Place == place && r.Port == sister);
        }

        int[] own = [.. All(r => r.Port == 0).Except(here)];
        if (own.Length > 0)
        {
            var furthest = _readings[own.MaxBy(left.Deviations)].Place;
            yield return [.. own.Where(i => _readings[i].Place == furthest)];
        }
    }

    private static double Reached(PlaceRead place, PlaceRead? loser, Reading reading, double halfWidth)
    {
        double? From(PlaceRead middle) => reading.Of is { } other ? WallState.Apart(other.Bearing, middle.Bearing) : null;
        return reading.Port != 0 || reading.Station != place.Station.Station.Id ? 0
            : loser is null ? Beside.Reaches(From(place), halfWidth)
            : Beside.Leans(From(place), From(loser), WallState.Apart(place.Bearing, loser.Bearing), halfWidth);
    }

    /// <summary>By the usual spread between sisters, and by the others where there are sisters to tell it.</summary>
    private List<(double, double, JointNormal)> HeldWithEachSpread()
    {
        var usual = Held(PlaceRead.BetweenSisters, out var values, out var doubts);
        if (_readings.TrueForAll(r => r.Port == 0))
        {
            return [(PlaceRead.BetweenSisters, 0, usual)];
        }

        return [.. Spreads.Select(apart =>
        {
            var off = Math.Log(apart / PlaceRead.BetweenSisters) / Math.Log(SpreadsWithin);
            return (apart, -off * off / 2, apart == PlaceRead.BetweenSisters ? usual : JointNormal.Of(Covariance(apart, doubts), values));
        })];
    }

    private double[,] Covariance(double apart, double[] doubts)
    {
        var n = _readings.Count;
        var covariance = new double[n, n];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                covariance[i, j] = covariance[j, i] = Common(_readings[i], _readings[j], apart) + (i == j ? doubts[i] * doubts[i] + 1e-6 : 0);
            }
        }

        return covariance;
    }

    /// <summary>What a ball lost is made a logarithm about what all readings together make likely there, round after round.</summary>
    private JointNormal Held(double apart, out double[] values, out double[] doubts)
    {
        var n = _readings.Count;
        var middles = new double[n];
        var common = Covariance(apart, new double[n]);
        for (var round = 0; ; round++)
        {
            (double Value, double Doubt)[] about = [.. _readings.Select((r, i) => r.About(middles[i]))];
            (values, doubts) = ([.. about.Select(a => a.Value)], [.. about.Select(a => a.Doubt)]);
            var together = JointNormal.Of(Covariance(apart, doubts), values);
            if (round == Rounds)
            {
                return together;
            }

            for (var i = 0; i < n; i++)
            {
                middles[i] = Math.Clamp(together.Mean([.. Enumerable.Range(0, n).Select(j => common[i, j])]), -Furthest, Furthest);
            }
        }
    }

    /// <summary>Covariance of what two readings look at, their own doubts left out.</summary>
    /// <param name="apart">Spread between sound sisters at one place.</param>
    private static double Common(Reading a, Reading b, double apart)
    {
        var (samePort, samePlace) = (a.Port == b.Port, a.Place == b.Place);
        var sum = samePlace ? a.Open * a.Open - PlaceRead.BetweenSisters * PlaceRead.BetweenSisters + (samePort ? apart * apart : 0)
            : AreAcross(a, b) ? Math.Max(0, a.Open * a.Open - BetweenSides * BetweenSides / 2) : 0;
        if (a.IsBall && b.IsBall)
        {
            sum += samePlace ? (PlaceOfSisters * PlaceOfSisters + (samePort ? HeldAnew * HeldAnew : 0)) / 9 : 0;
            if (a.Shares == b.Shares)
            {
                var check = SharedFactor.CheckToCheck * SharedFactor.CheckToCheck;
                sum += (Math.Max(0, a.SharedOpen * a.SharedOpen - check) + (samePort ? check : 0)) / 9;
            }
        }
        else if (!a.IsBall && !b.IsBall && samePort && a.Shares == b.Shares && a.Shares.Length > 0)
        {
            sum += RingMean * RingMean;
        }

        return sum;
    }

    private static bool AreAcross(Reading a, Reading b) =>
        a.Section == b.Section && a.Bearing is { } here && b.Bearing is { } there && WallState.Apart(12 - here, there) < Across;

    /// <param name="Probe">Mean of what a probe should find.</param>
    /// <param name="Ball">Mean of what a ball should find, its shared factor's third in it.</param>
    /// <param name="Both">Covariance of the two.</param>
    /// <param name="Beside">What the port's own places beside it say of a step here, by its half width.</param>
    internal readonly record struct Expected(double Probe, double ProbeVariance, double Ball, double BallVariance, double Both, IReadOnlyList<Beside> Beside, int Sisters)
    {
        /// <summary>One normal in the place of several, with their mean and their spread.</summary>
        internal static Expected Mixed(IReadOnlyList<(double LogWeight, Expected Said)> each)
        {
            var highest = each.Max(e => e.LogWeight);
            var sum = each.Sum(e => Math.Exp(e.LogWeight - highest));
            double Mean(Func<Expected, double> of) => each.Sum(e => Math.Exp(e.LogWeight - highest) * of(e.Said)) / sum;
            var (probe, ball) = (Mean(e => e.Probe), Mean(e => e.Ball));
            return new Expected(
                probe,
                Mean(e => e.ProbeVariance + (e.Probe - probe) * (e.Probe - probe)),
                ball,
                Mean(e => e.BallVariance + (e.Ball - ball) * (e.Ball - ball)),
                Mean(e => e.Both + (e.Probe - probe) * (e.Ball - ball)),
                [.. each[0].Said.Beside.Select((_, w) => new Beside(Mean(e => e.Beside[w].Slope), Mean(e => e.Beside[w].Bend), Mean(e => e.Beside[w].Follows)))],
                each[0].Said.Sisters);
        }
    }

    /// <param name="Port">0: the port itself.</param>
    /// <param name="Shares">Names the ring or the round of a ball it belongs to.</param>
    /// <param name="SharedOpen">Standard deviation of the ball's shared logarithm before any reading.</param>
    private sealed record Reading(int Port, Guid Station, int Place, string Section, double? Bearing, double Open, PlaceRead? Of, bool IsBall, string Shares, double SharedOpen)
    {
        public double Log { get; init; }

        public double Doubt { get; init; }

        public (double Fall, double Doubt, double Due, double DueDoubt) Fall { get; init; }

        /// <summary>The reading as a logarithm and its own standard deviation, taken about a likely one.</summary>
        public (double Value, double Doubt) About(double middle)
        {
            if (!IsBall)
            {
                return (Log, Math.Sqrt(Doubt * Doubt + AirLikelihood.ProbePlace * AirLikelihood.ProbePlace));
            }

            var due = Fall.Due * Math.Exp(3 * middle);
            return (middle + (Fall.Fall / due - 1) / 3, Fall.Doubt / due / 3);
        }
    }
}
