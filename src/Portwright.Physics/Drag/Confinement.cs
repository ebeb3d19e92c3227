namespace Portwright.Physics.Drag;

/// <summary>Drag of a sphere in a section over its drag in free air at the same approach speed, with the doubt four relations leave.</summary>
/// <remarks>
/// The four, as ratios of drag: solid and wake blockage of a closed tunnel, (1 + tau b^3)^2 times Maskell's; the dynamic pressure of the gap,
/// (1 - b^2)^-2; Newton's and Munroe's falling spheres, f^-2. The factor is their mean, largest and smallest the limits of a rectangle (JCGM
/// 100:2008, 4.3.7). All become 1 for a small ball. Range: diameter ratio 0 to 0.5.
/// </remarks>
/// <param name="Factor">1 or above, no unit.</param>
/// <param name="StandardUncertainty">Of the factor, no unit.</param>
public readonly record struct Confinement(double Factor, double StandardUncertainty)
{
    /// <summary>Ratio up to which the relations were tried.</summary>
    public const double LargestDiameterRatio = 0.5;

    /// <summary>Ratio of the standard uncertainty to the factor.</summary>
    public double RelativeUncertainty => StandardUncertainty / Factor;

    /// <param name="diameterRatio">Ratio of sphere to tube by diameter, 0 to below 1.</param>
    /// <param name="freeDrag">Drag coefficient in free air, for the wake.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static Confinement At(double diameterRatio, double freeDrag)
    {
        Span<double> ratios = stackalloc double[4];
        Ratios(diameterRatio, freeDrag, ratios);
        return Spread(ratios);
    }

    /// <summary>How the factor changes from one diameter ratio to another; without doubt where the two are alike.</summary>
    /// <param name="diameterRatio">Ratio of sphere to tube by diameter, 0 to below 1.</param>
    /// <param name="calibratedAt">Ratio of the ball to the pipe it was calibrated in, by diameter.</param>
    /// <param name="freeDrag">Drag coefficient in free air, zero or above.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static Confinement Ratio(double diameterRatio, double calibratedAt, double freeDrag)
    {
        Span<double> here = stackalloc double[4], there = stackalloc double[4];
        Ratios(diameterRatio, freeDrag, here);
        Ratios(calibratedAt, freeDrag, there);
        for (var i = 0; i < here.Length; i++) here[i] /= there[i];
        return Spread(here);
    }

    private static void Ratios(double diameterRatio, double freeDrag, Span<double> ratios)
    {
        Require.Between(diameterRatio, 0, LargestDiameterRatio, nameof(diameterRatio), "(ball diameter over the diameter of the round tube of the section's area)");
        var b = diameterRatio;
        var solid = 1 + Blockage.SolidSpeedIncrease(b);
        // Maskell's relation is for a separated wake, drag coefficient near one half; a creeping ball's 24/Re is no wake and must not enter.
        var wakeDrag = Math.Min(freeDrag, 1);
        var wake = wakeDrag > 0 ? Blockage.MaskellConfinedDrag(wakeDrag, b) / wakeDrag : 1;
        ratios[0] = solid * solid * wake;
        ratios[1] = Math.Pow(Blockage.GapSpeed(b), 2);
        ratios[2] = Math.Pow(Blockage.NewtonSpeedFactor(b), -2);
        ratios[3] = Math.Pow(Blockage.MunroeSpeedFactor(b), -2);
    }

    private static Confinement Spread(ReadOnlySpan<double> ratios)
    {
        double sum = 0, low = double.PositiveInfinity, high = 0;
        foreach (var r in ratios)
        {
            sum += r;
            (low, high) = (Math.Min(low, r), Math.Max(high, r));
        }
        return new(sum / ratios.Length, (high - low) / Math.Sqrt(12));
    }
}
