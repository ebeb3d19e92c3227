using System.Collections.Immutable;

namespace Portwright.Physics.Drag;

/// <summary>
/// The drag coefficient of a smooth sphere with the doubt that published correlations leave: each is asked only inside its stated range, and
/// their spread is the doubt of the figure.
/// </summary>
/// <param name="Smallest">Smallest of them, no unit.</param>
/// <param name="Largest">Largest of them, no unit.</param>
/// <remarks>
/// The correlations are fits to much the same measurements, so their number does not make the mean surer: largest and smallest are taken as the
/// limits of a rectangle, u = (largest - smallest)/sqrt(12) (JCGM 100:2008, 4.3.7). Smooth sphere, still and unbounded air, Mach number under
/// 0.4. Past a Reynolds number of 2e5 (<see cref="DragCrisis"/>) the correlations part by half and more; turbulent air, a rough or oily
/// ball and a stick on it bring the crisis on earlier.
/// </remarks>
/// <param name="Mean">Plain mean of the correlations valid there, no unit.</param>
/// <param name="StandardUncertainty">No unit.</param>
public readonly record struct SphereDragSpread(double Mean, double StandardUncertainty, double Smallest, double Largest, int Correlations)
{
    /// <summary>Above this Reynolds number the boundary layer turns turbulent in smooth air and drag falls to a fraction.</summary>
    public const double DragCrisis = 2e5;

    /// <summary>Above this no correlation speaks, no unit.</summary>
    public const double LargestReynolds = 1e6;

    private static readonly ImmutableArray<Fit> Fits =
    [
        new(SphereDrag.StandardCurve, LargestReynolds),
        new(SphereDrag.HaiderLevenspiel, 2.6e5),
        new(SphereDrag.Cheng, 2e5),
        new(SphereDrag.Almedeij, LargestReynolds),
        new(SphereDrag.MikhailovFreire, 118_300),
        new(SphereDrag.Barati, LargestReynolds),
        new(SphereDrag.Morrison, LargestReynolds),
        new(SphereDrag.Terfous, 5e4, 0.1),
    ];

    /// <summary>Largest less smallest over the mean, no unit.</summary>
    public double SpreadRelative => (Largest - Smallest) / Mean;

    /// <summary>Standard uncertainty over the mean, no unit.</summary>
    public double RelativeUncertainty => StandardUncertainty / Mean;

    /// <param name="reynolds">Speed times diameter over kinematic viscosity, above 0 to 1e6, no unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">The Reynolds number is not in that range.</exception>
    public static SphereDragSpread At(double reynolds) => Over(InRange(reynolds), fit => fit.Coefficient(reynolds));

    /// <summary>
    /// How the drag coefficient changes from one Reynolds number to another: the spread of the ratio is far smaller than that of the figure,
    /// and nothing where the two are alike. What a ball calibrated at one speed leaves in doubt at another.
    /// </summary>
    /// <param name="reynolds">Reynolds number of the sphere, above zero.</param>
    /// <param name="calibratedAt">Reynolds number of its calibration.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static SphereDragSpread Ratio(double reynolds, double calibratedAt)
    {
        InRange(calibratedAt);
        return Over(InRange(reynolds).Where(f => f.Holds(calibratedAt)), fit => fit.Coefficient(reynolds) / fit.Coefficient(calibratedAt));
    }

    private static IEnumerable<Fit> InRange(double reynolds)
    {
        if (!(reynolds > 0 && reynolds <= LargestReynolds)) Require.Refuse(reynolds, nameof(reynolds), "a Reynolds number above 0 and up to 1000000");
        return Fits.Where(f => f.Holds(reynolds));
    }

    private static SphereDragSpread Over(IEnumerable<Fit> fits, Func<Fit, double> of)
    {
        double sum = 0, low = double.PositiveInfinity, high = 0;
        var count = 0;
        foreach (var value in fits.Select(of))
        {
            sum += value;
            (low, high) = (Math.Min(low, value), Math.Max(high, value));
            count++;
        }
        return new(sum / count, (high - low) / Math.Sqrt(12), low, high, count);
    }

    private readonly record struct Fit(Func<double, double> Coefficient, double To, double From = 0)
    {
        public bool Holds(double reynolds) => reynolds >= From && reynolds <= To;
    }
}
