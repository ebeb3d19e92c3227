using System.Collections.Immutable;

namespace Portwright.Physics.Uncertainty;

/// <summary>An input of a measurement model: what was read or looked up, and how well it is known.</summary>
/// <param name="Source">Identity of the cause; two inputs with one source move together.</param>
/// <param name="Value">Best value, in the unit the model takes.</param>
/// <param name="StandardUncertainty">In the unit of the value, 0 or more.</param>
/// <param name="DegreesOfFreedom">Above 0; infinite where the standard uncertainty is taken as exact, no unit.</param>
/// <param name="Shape">Distribution, for the Monte Carlo check and to be told in a budget.</param>
/// <param name="Kind">What sort of cause it is.</param>
/// <param name="Pool">See <see cref="Contribution.Pool"/>.</param>
/// <param name="Readings">See <see cref="Contribution.Readings"/>.</param>
/// <exception cref="ArgumentOutOfRangeException">The standard uncertainty is below 0 or not finite.</exception>
public sealed record InputEstimate(
    string Source,
    double Value,
    double StandardUncertainty,
    double DegreesOfFreedom = double.PositiveInfinity,
    InputShape Shape = InputShape.Normal,
    ContributionKind Kind = ContributionKind.Other,
    string? Pool = null,
    int Readings = 1)
{
    public double StandardUncertainty { get; init; } = StandardUncertainty >= 0 && double.IsFinite(StandardUncertainty)
        ? StandardUncertainty
        : throw new ArgumentOutOfRangeException(nameof(StandardUncertainty), StandardUncertainty, "A standard uncertainty must be 0 or more, and finite.");

    /// <summary>An input without doubt.</summary>
    /// <param name="value">Best value, in the unit the model takes.</param>
    public static InputEstimate Exact(string source, double value) => new(source, value, 0);

    /// <summary>
    /// The doubt of a scale or display that shows steps: rectangular over one step, u = step / sqrt(12)
    /// (JCGM 100:2008, F.2.2.1).
    /// </summary>
    /// <param name="value">Best value, in the unit the model takes.</param>
    /// <param name="step">Smallest step shown, in the unit of the value, 0 or more.</param>
    public static InputEstimate FromResolution(string source, double value, double step) =>
        new(source, value, step / Math.Sqrt(12), Shape: InputShape.Rectangular, Kind: ContributionKind.Resolution);

    /// <summary>Limits plus and minus: u = a/sqrt(3), a/sqrt(6) or a/sqrt(2) by shape (JCGM 100:2008, 4.3.7 to 4.3.9).</summary>
    /// <param name="value">Best value, in the unit the model takes.</param>
    /// <param name="halfWidth">Half the distance of the limits, in the unit of the value, 0 or more.</param>
    /// <param name="shape">Any shape with limits.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom, above 0; infinite where taken as exact.</param>
    /// <exception cref="ArgumentOutOfRangeException">The shape is normal, which has no limits.</exception>
    public static InputEstimate FromHalfWidth(
        string source,
        double value,
        double halfWidth,
        InputShape shape = InputShape.Rectangular,
        ContributionKind kind = ContributionKind.Other,
        double degreesOfFreedom = double.PositiveInfinity) =>
        new(source, value, halfWidth / HalfWidthOverStandard(shape), degreesOfFreedom, shape, kind);

    /// <summary>A certificate that states an expanded uncertainty and its factor: u = U/k (JCGM 100:2008, 4.3.3).</summary>
    /// <param name="value">Best value, in the unit the model takes.</param>
    /// <param name="expanded">Expanded uncertainty, in the unit of the value, 0 or more.</param>
    /// <param name="coverageFactor">Above 0; 2 where a certificate is silent is common practice, no unit.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom, above 0; infinite where taken as exact.</param>
    /// <exception cref="ArgumentOutOfRangeException">The coverage factor is not above 0.</exception>
    public static InputEstimate FromExpanded(
        string source,
        double value,
        double expanded,
        double coverageFactor = 2,
        ContributionKind kind = ContributionKind.Calibration,
        double degreesOfFreedom = double.PositiveInfinity)
    {
        if (!(coverageFactor > 0))
            throw new ArgumentOutOfRangeException(nameof(coverageFactor), coverageFactor, "A coverage factor must be above 0.");
        return new(source, value, expanded / coverageFactor, degreesOfFreedom, Kind: kind);
    }

    /// <summary>Mean of repeats with their own scatter: u = s/sqrt(n), n - 1 degrees of freedom (JCGM 100:2008, 4.2.3).</summary>
    /// <param name="readings">Any one unit.</param>
    /// <exception cref="ArgumentException">Fewer than 2 readings: one reading shows no scatter; pool it instead.</exception>
    public static InputEstimate FromRepeats(string source, params ReadOnlySpan<double> readings)
    {
        var scatter = RepeatScatter.Of(readings);
        return new(source, RepeatScatter.Mean(readings), scatter.StandardDeviation / Math.Sqrt(readings.Length),
            scatter.DegreesOfFreedom, Kind: ContributionKind.Repeat, Readings: readings.Length);
    }

    /// <summary>Mean of one or more repeats with a scatter known from elsewhere: u = s_pooled/sqrt(n) (JCGM 100:2008, 4.2.4).</summary>
    /// <param name="readings">Any one unit.</param>
    /// <param name="pool">Identity of the pooled scatter, shared by all that use it.</param>
    /// <exception cref="ArgumentException">There is no reading.</exception>
    public static InputEstimate FromPooledRepeats(string source, ReadOnlySpan<double> readings, RepeatScatter scatter, string pool) =>
        new(source, RepeatScatter.Mean(readings), scatter.StandardDeviation / Math.Sqrt(readings.Length),
            scatter.DegreesOfFreedom, Kind: ContributionKind.Repeat, Pool: pool, Readings: readings.Length);

    /// <summary>The input itself as an estimate.</summary>
    public Estimate ToEstimate() => new(Value, ImmutableArray.Create(ToContribution(StandardUncertainty)));

    /// <summary>This cause with the amount by which it moves a result.</summary>
    internal Contribution ToContribution(double amount) => new(Source, amount, DegreesOfFreedom, Kind, Pool, Readings, Shape);

    internal static double HalfWidthOverStandard(InputShape shape) => shape switch
    {
        InputShape.Rectangular => Math.Sqrt(3),
        InputShape.Triangular => Math.Sqrt(6),
        InputShape.ArcSine => Math.Sqrt(2),
        _ => throw new ArgumentOutOfRangeException(nameof(shape), shape, "Limits need a rectangular, triangular or arc-sine shape."),
    };
}
