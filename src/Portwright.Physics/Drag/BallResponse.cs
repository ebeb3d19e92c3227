using Portwright.Physics.Statistics;
using Portwright.Physics.Uncertainty;

namespace Portwright.Physics.Drag;

/// <summary>What the air does at a place, told by what a ball takes from the flow there.</summary>
public enum BallAnswer
{
    /// <summary>Not enough to tell.</summary>
    Undecided,

    /// <summary>The ball takes what air at that speed should lose.</summary>
    Working,

    /// <summary>It takes more: the place carries more than its area.</summary>
    Busier,

    /// <summary>It takes less: the air there does little.</summary>
    Lazy,

    /// <summary>The flow rose: the air was off the wall and the ball helped it.</summary>
    TornOff,
}

/// <summary>A ball check at one place: measured loss, expected loss, and what their difference says.</summary>
/// <remarks>
/// Each probability is Student's distribution function at a difference over its standard uncertainty with the effective degrees of freedom,
/// as in <see cref="Comparison"/>: never of a ratio of two doubtful figures. With y the measured and e the expected fall: torn off, y under 0;
/// lazy, y under (1 - band) e; busier, y over (1 + band) e. A fault is named from <see cref="FaultLevel"/> on, working from
/// <see cref="WorkingLevel"/>, otherwise it stays undecided. The band is common practice, no source: a port is judged by eye no finer.
/// </remarks>
public sealed record BallResponse
{
    /// <summary>Within a third of the expected loss a place is working, no unit.</summary>
    public const double Band = 1.0 / 3;

    /// <summary>Probability from which a fault is named.</summary>
    public const double FaultLevel = 0.95;

    /// <summary>Probability from which a place is called working: four to one.</summary>
    public const double WorkingLevel = 0.8;

    private BallResponse(Estimate fall, ExpectedBallLoss expected)
    {
        (Fall, Expected) = (fall, expected);
        var e = expected.Fall;
        ProbabilityTornOff = Below(fall);
        // "Under a third less" takes in the flow that rose; what is lazy and not torn off is the rest.
        var little = Below(Estimate.Combine((1, fall), (-(1 - Band), e)));
        var notMore = Below(Estimate.Combine((1, fall), (-(1 + Band), e)));
        ProbabilityLazy = Math.Max(0, little - ProbabilityTornOff);
        ProbabilityWorking = Math.Max(0, notMore - Math.Max(little, ProbabilityTornOff));
        ProbabilityBusier = 1 - notMore;
        (Answer, Probability) = Decide(little);
    }

    /// <summary>Measured fall of flow over flow; below zero where the flow rose.</summary>
    public Estimate Fall { get; }

    public ExpectedBallLoss Expected { get; }

    public BallAnswer Answer { get; }

    /// <summary>Of the answer; of the likeliest of the four where it is undecided, no unit.</summary>
    public double Probability { get; }

    /// <summary>Probability, 0 to 1.</summary>
    public double ProbabilityTornOff { get; }

    /// <summary>Probability, 0 to 1.</summary>
    public double ProbabilityLazy { get; }

    /// <summary>Probability, 0 to 1.</summary>
    public double ProbabilityWorking { get; }

    /// <summary>Probability, 0 to 1.</summary>
    public double ProbabilityBusier { get; }

    /// <summary>Measured less expected fall.</summary>
    public Estimate Difference => Fall.Subtract(Expected.Fall);

    /// <summary>Measured over expected, to first order, for reading; the answer rests on differences. Null where no loss is expected.</summary>
    public Estimate? Ratio => Expected.Fall.Value == 0 ? null : Estimate.Ratio(Fall, Expected.Fall);

    /// <summary>
    /// The interval that holds measured over expected (E. C. Fieller, J. R. Statist. Soc. B 16 (1954) 175-185): every ratio r for which
    /// y - r e is within its doubt. Null where the expected loss itself is not clear of zero, and the ratio could be anything.
    /// </summary>
    /// <param name="level">Coverage probability, above 0 and below 1.</param>
    public CoverageInterval? RatioInterval(double level = 0.95)
    {
        var (y, e) = (Fall, Expected.Fall);
        if (e.Value == 0) return null;
        var t = Student.TwoSidedFactor(level, Difference.EffectiveDegreesOfFreedom);
        var a = e.Value * e.Value - t * t * e.Variance;
        var b = y.Value * e.Value - t * t * Estimate.Covariance(y, e);
        var c = y.Value * y.Value - t * t * y.Variance;
        if (!(a > 0)) return null;
        var root = Math.Sqrt(Math.Max(0, b * b - a * c));
        return new((b - root) / a, (b + root) / a);
    }

    public static BallResponse Of(Estimate measuredFall, ExpectedBallLoss expected) => new(measuredFall, expected);

    /// <summary>
    /// Fall of flow over flow from a reading with the ball between two without it, the drift taken as linear in the order of readings.
    /// </summary>
    /// <param name="before">Flow (or effective area) before, any one unit.</param>
    /// <param name="after">The same afterwards; null where it was not taken again: then no drift is seen and none corrected.</param>
    /// <param name="withBall">With the ball in place.</param>
    /// <param name="place">Names the doubt that a drift may not have been linear.</param>
    /// <param name="order">Where the reading with the ball stands between the two: 0 right after the first, 1 right before the second. No unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">A reference flow is not above zero, or the order not in 0 to 1.</exception>
    public static Estimate MeasuredFall(Estimate before, Estimate? after, Estimate withBall, string place, double order = 0.5)
    {
        Require.Between(order, 0, 1, nameof(order), "(share of the way between the reference readings)");
        Require.Positive(before.Value, nameof(before), "(flow)");
        var reference = before;
        if (after is not null)
        {
            Require.Positive(after.Value, nameof(after), "(flow)");
            reference = Estimate.Combine((1 - order, before), (order, after));
            // A drift that came all at once leaves the line by up to its own size: limits of half of it, rectangular.
            var drift = Math.Abs(after.Value - before.Value);
            if (drift > 0) reference = reference.With(new($"{place}: drift not linear", drift / Math.Sqrt(12), Kind: ContributionKind.Drift, Shape: InputShape.Rectangular));
        }
        return Estimate.Linear(1 - withBall.Value / reference.Value,
            (-1 / reference.Value, withBall), (withBall.Value / (reference.Value * reference.Value), reference));
    }

    /// <summary>Whether the bench drifted between the two reference readings by more than their noise.</summary>
    /// <param name="level">Coverage probability, above 0 and below 1.</param>
    public static Difference Drift(Estimate before, Estimate after, double level = 0.95) => Comparison.Compare(before, after, level);

    private (BallAnswer, double) Decide(double little)
    {
        var likeliest = Math.Max(Math.Max(ProbabilityTornOff, ProbabilityLazy), Math.Max(ProbabilityWorking, ProbabilityBusier));
        if (Expected.Fall.Value == 0 || Difference.EffectiveDegreesOfFreedom < Comparison.FewestDegreesOfFreedom)
            return (BallAnswer.Undecided, likeliest);
        if (ProbabilityTornOff >= FaultLevel) return (BallAnswer.TornOff, ProbabilityTornOff);
        if (little >= FaultLevel) return (BallAnswer.Lazy, little);
        if (ProbabilityBusier >= FaultLevel) return (BallAnswer.Busier, ProbabilityBusier);
        if (ProbabilityWorking >= WorkingLevel) return (BallAnswer.Working, ProbabilityWorking);
        return (BallAnswer.Undecided, likeliest);
    }

    /// <summary>Probability that the true value lies under zero; even where it is zero without doubt.</summary>
    private static double Below(Estimate value)
    {
        var u = value.StandardUncertainty;
        return u > 0 ? Student.Cdf(-value.Value / u, value.EffectiveDegreesOfFreedom) : value.Value < 0 ? 1 : value.Value > 0 ? 0 : 0.5;
    }
}
