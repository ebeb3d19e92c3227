namespace Portwright.Shop.Judgement;

/// <summary>The factor all places of one ball share (its diameter, the rod, drag in a port that is no pipe), found from the places themselves.</summary>
/// <param name="Log">Natural logarithm of the factor.</param>
/// <param name="Doubt">Its standard deviation.</param>
/// <param name="Places">Places it was found from.</param>
public sealed record SharedFactor(double Log, double Doubt, int Places)
{
    /// <summary>
    /// Standard deviation of the logarithm before any reading: published drags of spheres part by 6 percent, walls by as much, a rod and a port that is no
    /// pipe by more. Judgement on published spread, docs/theory/balls.md.
    /// </summary>
    public const double Usual = 0.22;

    /// <summary>The same after the ball was read in a straight pipe on this bench; judgement.</summary>
    public const double AfterPipe = 0.10;

    /// <summary>Balls of one diameter on one bench share their factor this closely from check to check; judgement.</summary>
    public const double CheckToCheck = 0.08;

    /// <summary>
    /// Sound places of one port differ so in the logarithm of their speed over even air's, ahead of the bend and in it, where the air leans to one side; judgement
    /// (docs/theory/judgement.md).
    /// </summary>
    public const double AheadOfTheBend = 0.08, InTheBend = 0.12;

    /// <summary>The same of the places of one ball, wherever they lie.</summary>
    private const double PlaceSpread = 0.10;

    /// <summary>A ball that is not as written moves its factor so: a size mistyped by two steps of an eighth doubles it; judgement.</summary>
    public static Step Mistyped { get; } = new(0.75, 1.5, StepWay.EitherWay);

    private const int Half = 32;

    public double Factor => Math.Exp(Log);

    /// <summary>From the places of one ball in one port, each against its due of even air.</summary>
    /// <param name="prior">Mean and standard deviation of the logarithm before these readings.</param>
    public static SharedFactor Of(IReadOnlyList<AirLikelihood> places, (double Mean, double Spread) prior)
    {
        ArgumentNullException.ThrowIfNull(places);
        var log = LogLikelihoods(places);
        double sum = 0, mean = 0, square = 0;
        var highest = log.Max();
        for (var j = -Half; j <= Half; j++)
        {
            var k = 3 * j * AirLikelihood.LogStep;
            var weight = Math.Exp(log[j + Half] - highest - (k - prior.Mean) * (k - prior.Mean) / (2 * prior.Spread * prior.Spread));
            (sum, mean, square) = (sum + weight, mean + weight * k, square + weight * k * k);
        }

        mean /= sum;
        return new SharedFactor(mean, Math.Sqrt(Math.Max(0, square / sum - mean * mean) + LogWidth * LogWidth / 12), places.Count);
    }

    private static double LogWidth => 3 * AirLikelihood.LogStep;

    private static double[] LogLikelihoods(IReadOnlyList<AirLikelihood> places) =>
        [.. Enumerable.Range(-Half, 2 * Half + 1).Select(j => places.Sum(p => Math.Log(Math.Max(1e-300, p.BallUnder(0, PlaceSpread, j)))))];
}
