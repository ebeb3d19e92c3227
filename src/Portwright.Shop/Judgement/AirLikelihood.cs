namespace Portwright.Shop.Judgement;

/// <summary>What probe and ball say of one place: how likely their readings are for each speed the air there may have.</summary>
/// <remarks>
/// Speed is counted over what even air would show there, as a natural logarithm. A probe reads it; what a ball takes goes with its cube
/// (drag times speed, docs/theory/balls.md). Both look at the same air, so their likelihoods multiply, and where they contradict each other
/// no speed is likely. Each instrument may be wrong at a place (held elsewhere, read wrong): a small share of its likelihood is blind.
/// </remarks>
public sealed class AirLikelihood
{
    /// <summary>Share of readings that are not of the place they are said to be; judgement, no source.</summary>
    public const double Blind = 0.0003;

    /// <summary>How far an instrument that is wrong may lie off, standard deviation of the logarithm; judgement, no source.</summary>
    public const double WrongBy = 0.45;

    /// <summary>Held at a place, a probe's mouth and the wall's law leave so much of its logarithm open besides its own doubt; common practice, no source.</summary>
    public const double ProbePlace = 0.02;

    /// <summary>Share of sound places that lie wider; judgement.</summary>
    private const double Wide = 0.03;

    private const double Lowest = -1.6, Highest = 0.9, Width = 0.02;

    private static readonly double[] Grid = [.. Enumerable.Range(0, (int)Math.Round((Highest - Lowest) / Width) + 1).Select(i => Lowest + i * Width)];

    private readonly double[]? _probe, _ball;
    private readonly double[] _together;

    private AirLikelihood(double[]? probe, double[]? ball)
    {
        (_probe, _ball) = (probe, ball);
        _together = [.. Grid.Select(_ => 1.0)];
        foreach (var instrument in new[] { probe, ball }.OfType<double[]>())
        {
            var trusted = Trusted(instrument);
            for (var i = 0; i < trusted.Length; i++)
            {
                _together[i] *= trusted[i];
            }
        }
    }

    private static double[] Trusted(double[] instrument)
    {
        var blind = Blind * instrument.Average();
        return [.. instrument.Select(l => (1 - Blind) * l + blind)];
    }

    /// <summary>Steps of the logarithm the likelihoods are worked out at.</summary>
    internal static double LogStep => Width;

    /// <summary>True where two instruments looked.</summary>
    public bool IsOfBoth => _probe is not null && _ball is not null;

    /// <param name="probe">Logarithm of speed over even air's, and its standard uncertainty; null: not read.</param>
    /// <param name="ball">Fall of flow over flow, its standard uncertainty, what even air would take, and the standard uncertainty of that as a share; null: not held.</param>
    public static AirLikelihood Of((double Log, double Doubt)? probe, (double Fall, double Doubt, double Due, double DueDoubt)? ball) => new(
        probe is not { } p ? null : [.. Grid.Select(g => Density.Normal(p.Log - g, Math.Sqrt(p.Doubt * p.Doubt + ProbePlace * ProbePlace)))],
        ball is not { } b ? null : [.. Grid.Select(g =>
        {
            var due = b.Due * Math.Exp(3 * g);
            return Density.Normal(b.Fall - due, Math.Sqrt(b.Doubt * b.Doubt + due * due * b.DueDoubt * b.DueDoubt));
        })]);

    /// <summary>Likelihood where the air's logarithm is spread so (a few places in a hundred wider).</summary>
    public double Under(double mean, double spread) => (1 - Wide) * Sum(_together, mean, spread) + Wide * Sum(_together, mean, 1.7 * spread);

    /// <summary>The same with the mean moved by a step of unknown size.</summary>
    public double Under(double mean, double spread, Step step)
    {
        ArgumentNullException.ThrowIfNull(step);
        return step.Sizes.Average(size => Sum(_together, mean + size, spread));
    }

    /// <summary>Likelihood ratio of a step against none.</summary>
    public double Ratio(double mean, double spread, Step step) => Ratio(mean, spread, step, [default]);

    /// <summary>The same where places beside it were read that a step here moves as well, by one of several shapes of equal chance.</summary>
    public double Ratio(double mean, double spread, Step step, IReadOnlyList<Beside> beside) =>
        Stepped(_together, mean, spread, step, beside) / Math.Max(double.Epsilon, Under(mean, spread));

    /// <summary>Likelihood ratio of air that is off the wall here against air that follows it as sound air does: a probe finds it slow; what a ball takes goes with its speed no more.</summary>
    /// <param name="ball">Likelihood of the ball's reading where the air is off.</param>
    public double TornOff(double mean, double spread, Step slower, double ball, IReadOnlyList<Beside> beside)
    {
        // Under sound air the two look at one speed: a slow one surprises them once, not twice.
        var off = _ball is null ? 1 : (1 - Blind) * ball + Blind * _ball.Average();
        return off * Stepped(_probe is null ? null : Trusted(_probe), mean, spread, slower, beside) / Math.Max(double.Epsilon, Under(mean, spread));
    }

    private static double Stepped(double[]? likelihood, double mean, double spread, Step step, IReadOnlyList<Beside> beside)
    {
        ArgumentNullException.ThrowIfNull(step);
        ArgumentNullException.ThrowIfNull(beside);
        return step.Sizes.Average(size => beside.Average(b => b.Ratio(size) * (likelihood is null ? 1 : Sum(likelihood, mean + size * (1 - b.Follows), spread))));
    }

    /// <summary>Likelihood ratio of one of the two instruments being wrong here against both being right; 1 where only one looked.</summary>
    public double Contradiction(double mean, double spread)
    {
        if (_probe is null || _ball is null)
        {
            return 1;
        }

        double[] same = [.. Grid.Select((_, i) => _probe[i] * _ball[i])];
        return OneWrong(_probe, _ball, mean, spread) / Math.Max(double.Epsilon, AnyAir(same, mean, spread));
    }

    /// <summary>The same against both being right in air that is sound; 0 where only one looked.</summary>
    public double OneWrong(double mean, double spread) =>
        _probe is null || _ball is null ? 0 : OneWrong(_probe, _ball, mean, spread) / Math.Max(double.Epsilon, Under(mean, spread));

    private static double OneWrong(double[] probe, double[] ball, double mean, double spread)
    {
        var wide = Math.Sqrt(spread * spread + WrongBy * WrongBy);
        return (AnyAir(probe, mean, spread) * Sum(ball, mean, wide) + AnyAir(ball, mean, spread) * Sum(probe, mean, wide)) / 2;
    }

    /// <summary>The air itself may be sound or far from it: that alone is no contradiction.</summary>
    private static double AnyAir(double[] of, double mean, double spread) => 0.8 * Sum(of, mean, spread) + 0.2 * Sum(of, mean, WrongBy);

    /// <summary>
    /// Likelihood of the ball's reading where its due is another by a factor, each logarithm of the factor over three a whole number of <see cref="LogStep"/>s:
    /// as if the air's logarithm lay so many steps higher.
    /// </summary>
    internal double BallUnder(double mean, double spread, int steps) => _ball is null ? 1 : 0.85 * Sum(_ball, mean + steps * Width, spread) + 0.15 * Sum(_ball, mean + steps * Width, WrongBy);

    /// <summary>Mean and standard deviation of the logarithm by these readings alone, taken at their word; null where they say nothing.</summary>
    public (double Mean, double Spread)? Best => BestOf([.. Grid.Select((_, i) => (_probe?[i] ?? 1) * (_ball?[i] ?? 1))]);

    /// <summary>By the probe alone; null without one.</summary>
    public (double Mean, double Spread)? ByProbe => _probe is null ? null : BestOf(_probe);

    /// <summary>By the ball alone; null without one.</summary>
    public (double Mean, double Spread)? ByBall => _ball is null ? null : BestOf(_ball);

    private static (double Mean, double Spread)? BestOf(double[] likelihood)
    {
        var sum = likelihood.Sum();
        if (!(sum > 0))
        {
            return null;
        }

        var mean = likelihood.Select((l, i) => l * Grid[i]).Sum() / sum;
        return (mean, Math.Sqrt(likelihood.Select((l, i) => l * (Grid[i] - mean) * (Grid[i] - mean)).Sum() / sum + Width * Width / 12));
    }

    private static double Sum(double[] likelihood, double mean, double spread)
    {
        double sum = 0, weights = 0;
        for (var i = 0; i < Grid.Length; i++)
        {
            var weight = Density.Normal(Grid[i] - mean, spread);
            sum += weight * likelihood[i];
            weights += weight;
        }

        return weights > 0 ? sum / weights : 0;
    }
}
