using Portwright.Judging.Ports;

namespace Portwright.Judging.Shops;

/// <summary>
/// What was read of the air, as one sees it who knows how shops, castings and instruments scatter, and the place and width of what may be amiss, but neither this casting's own air
/// nor what this ball and this probe are off by.
/// </summary>
/// <remarks>Each reading as a share over what is due in sound air, which makes all that scatters add up.</remarks>
public sealed class KnownAir
{
    /// <summary>What all balls of a shop are off by, what one check is, and what one place is, standard deviations of the logarithm of the fall.</summary>
    public const double BallOfAShop = 0.20, BallOfACheck = 0.10, BallAtAPlace = 0.065;

    /// <summary>A sound probe is within so much of what is stated of it, either way alike.</summary>
    public const double ProbeWithin = 0.03;

    /// <summary>How far the air of a place may lie off that is not sound, standard deviation as a share.</summary>
    private const double AnyAir = 0.45;

    private readonly List<Reading> _readings = [];

    /// <summary>A probe held at a place, m from the middle.</summary>
    /// <param name="step">Share by which the fault moves it.</param>
    /// <param name="noise">Standard deviation of the reading itself, as a share.</param>
    public void Probe(MadePort port, MadeStation station, double x, double y, double? bearing, double step, double noise) => _readings.Add(new(port, station, x, y, bearing, false, 1, step, noise));

    /// <summary>A ball held at a place: what it takes goes with the cube of the speed.</summary>
    public void Ball(MadePort port, MadeStation station, double x, double y, double? bearing, double step, double noise) => _readings.Add(new(port, station, x, y, bearing, true, 3, step, noise));

    /// <summary>Natural logarithm of how much surer flags make the fault, where they were seen as the fault makes them stand.</summary>
    public double Flags { get; private set; }

    /// <summary>A thing seen that the fault makes sure.</summary>
    /// <param name="inSoundAir">How often it is seen without, 0 to 1.</param>
    public void Seen(double inSoundAir) => Flags -= Math.Log(inSoundAir);

    /// <summary>Deviations by which the fault lies off sound air, all readings taken together: what tells the two apart.</summary>
    /// <remarks>The root of s' C^-1 s for steps s and covariance C (P. C. Mahalanobis 1936; from memory).</remarks>
    /// <param name="anyAir">A place where the air may as well be what it likes, seen by probe and ball alike; null: none.</param>
    public double Apart(PlaceOff? anyAir = null)
    {
        var n = _readings.Count;
        if (n == 0) return 0;
        var covariance = new double[n, n];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j <= i; j++) covariance[i, j] = covariance[j, i] = Common(_readings[i], _readings[j]) + (anyAir is { } any && _readings[i].IsAt(any) && _readings[j].IsAt(any) ? AnyAir * AnyAir * _readings[i].Gain * _readings[j].Gain : 0) + (i == j ? _readings[i].Noise * _readings[i].Noise + 1e-8 : 0);
        }

        return Math.Sqrt(MathNet.Numerics.LinearAlgebra.Double.DenseMatrix.OfArray(covariance).Cholesky()
            .Solve(MathNet.Numerics.LinearAlgebra.Double.DenseVector.OfEnumerable(_readings.Select(r => r.Step)))
            .Zip(_readings, (solved, r) => solved * r.Step).Sum());
    }

    private static double Common(Reading a, Reading b)
    {
        // The bend is drawn evenly between two limits; all sisters share it.
        var sum = a.Station.Role == b.Station.Role && a.Port.Kind == b.Port.Kind
            ? a.Gain * b.Gain * (Third(HeadDesign.SteepestTilt) * a.Tilts * b.Tilts + Third(HeadDesign.SteepestSide) * a.Sides * b.Sides)
            : 0;
        if (a.Station == b.Station) sum += a.Gain * b.Gain * a.Station.Field.OwnCommon((a.X, a.Y), (b.X, b.Y));
        if (a.IsBall && b.IsBall) sum += BallOfAShop * BallOfAShop + (a.Port == b.Port ? BallOfACheck * BallOfACheck : 0);
        if (a.IsBall && a == b) sum += BallAtAPlace * BallAtAPlace;
        if (!a.IsBall && !b.IsBall) sum += Third(ProbeWithin);
        return sum;
    }

    private static double Third(double limit) => limit * limit / 3;

    private sealed record Reading(MadePort Port, MadeStation Station, double X, double Y, double? Bearing, bool IsBall, double Gain, double Step, double Noise)
    {
        public bool IsAt(PlaceOff place) => Port == place.Port && Station.Role == place.Station && Bearing == place.Bearing;

        /// <summary>Change of the logarithm of the speed there per unit of the bend's lean from roof to floor, and from side to side; about no lean.</summary>
        public double Tilts => 0.9 * Y / (Station.Section.Height / 2) * Station.Field.Bent;

        public double Sides => X / (Station.Section.Width / 2) * Station.Field.Bent;
    }
}
